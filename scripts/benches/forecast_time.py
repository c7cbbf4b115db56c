"""How long the nitrogen forecast takes: 90 days of the demo tank, with 3 and with 12 plants.

``python -m scripts.benches.forecast_time``; the best of several runs, in milliseconds.
"""

from time import perf_counter

from calculators.core.run import run

FORECAST_RUNS = 7
DOUBLING_DAYS = (6, 8, 10, 12, 14, 18, 22, 28, 35, 45, 60, 90)
TWELVE = [
    {"name": f"plant {days}", "wet_g": 42.5, "doubling_days": days, "floating": days in (6, 8, 10)}
    for days in DOUBLING_DAYS
]
CASES: dict[str, dict[str, object]] = {
    "3 plants": {},
    "12 plants": {"plants": TWELVE},
    "3 plants, band": {"spread": "band"},
    "3 plants, target": {"target_nitrate_mg_l": 10.0},
    "3 plants, 365 days": {"days": 365},
}


def milliseconds(given: dict[str, object]) -> float:
    """The best time of some runs. In ms."""
    best = float("inf")
    for _ in range(FORECAST_RUNS):
        start = perf_counter()
        run("nitrogen-forecast", given)
        best = min(best, perf_counter() - start)
    return 1000 * best


def main() -> None:
    """Print one line a case."""
    for name, given in CASES.items():
        print(f"{name:20} {milliseconds(given):7.1f} ms")


if __name__ == "__main__":
    main()
