"""The worked example: an invented tank, after the demo library's Foyer, and its log of some weeks."""

from calculators.science.shelf.entries import Entry
from calculators.science.shelf.shelf_tank import (
    AnimalsHeld,
    ChangePlan,
    PlantHeld,
    ShelfTank,
    TapWater,
)

TODAY = "2026-11-28"
FOYER = ShelfTank(
    id="foyer", name="Foyer", demo=True, net_l=240, soil_area_cm2=4400, flooded_on="2024-01-20",
    light_hours=8, temperature_c=25, ph=7.5, gh_dh=12, kh_dh=7,
    tap=TapWater(nitrate_mg_l=10, gh_dh=12, kh_dh=7, ph=7.7), feed_g_week=12, protein_percent=46,
    change=ChangePlan(20, 10), plants=[PlantHeld("vallisneria-spiralis", 250, "2024-01-20")],
    animals=[AnimalsHeld("xiphophorus-maculatus", 30), AnimalsHeld("melanoides-tuberculata", 80)],
)  # fmt: skip
NITRATE = {
    "2026-10-17": 36, "2026-10-20": 40, "2026-10-26": 36, "2026-10-30": 40, "2026-11-02": 43,
    "2026-11-08": 38, "2026-11-12": 43, "2026-11-15": 45, "2026-11-21": 42, "2026-11-25": 48,
}  # fmt: skip
CHANGED = ("2026-10-21", "2026-11-03", "2026-11-16")


def log() -> list[Entry]:
    """The example's log."""
    made = [reading(day, "nitrate_mg_l", value) for day, value in NITRATE.items()]
    made += [reading("2026-11-15", "ammonia_mg_n_l", 0), reading("2026-11-25", "ph", 7.4)]
    made += [
        Entry(f"change-{day}", "foyer", f"{day}T19:00:00Z", "change", None, 20) for day in CHANGED
    ]
    return sorted(made, key=lambda entry: entry.at)


def reading(day: str, what: str, value: float) -> Entry:
    """One reading of the example. The ``value`` is in the unit of the shelf's readings."""
    return Entry(f"{what}-{day}", "foyer", f"{day}T18:00:00Z", "reading", what, value)


LOG = log()
