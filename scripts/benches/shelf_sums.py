"""How long the shelf takes over a season of ten tanks and 2,000 entries, in ms on this machine."""

import json
from collections.abc import Callable
from time import perf_counter

from calculators.bridge import answer
from calculators.core.run import run
from calculators.shelf.shelf_file import check_shelf_text
from scripts.benches.season import TODAY, season_file

RUNS = 3
MS_PER_S = 1_000


def shelf() -> None:
    """Print the time of each thing that the shelf's pages ask."""
    file = season_file()
    tanks, entries = file["tanks"], file["entries"]
    text = json.dumps(file)
    own = [entry for entry in entries if entry["tank"] == tanks[0]["id"]]
    one = {"tank": tanks[0], "entries": own, "today": TODAY}
    painted = json.dumps({"calculator": "standing", "given": one, "own": True})
    report("standing of one tank, 200 entries", lambda: run("standing", one))
    report("the same, painted for the page", lambda: answer(painted))
    whole = {"tanks": tanks, "entries": entries, "today": TODAY}
    report("round of ten tanks, 2,000 entries", lambda: run("round", whole))
    report("check of the file", lambda: check_shelf_text(text))


def report(name: str, work: Callable[[], object]) -> None:
    """Print the best of some runs, after one that warms up."""
    work()
    best = min(timed(work) for _ in range(RUNS))
    print(f"{name}: {best * MS_PER_S:.0f} ms")


def timed(work: Callable[[], object]) -> float:
    """Seconds that a piece of work takes."""
    start = perf_counter()
    work()
    return perf_counter() - start
