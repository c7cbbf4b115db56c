"""Prints how the house stands: circles, rooms, sizes, names that stand twice, seconds of ``load()``
and of the last run of the tests.

``python3 scripts/bench.py structure``
"""

from collections.abc import Iterable
from time import perf_counter

from scripts.benches.suite import last_suite
from scripts.records.load import load
from scripts.setup.paths import DOCS
from scripts.structure.circles import circles
from scripts.structure.modules import graph, read_modules
from scripts.structure.rooms import across, backwards, calculator_rooms, serving_one, stray
from scripts.structure.script_imports import script_graph
from scripts.structure.sizes import (
    LONGEST_FUNCTION_LINES,
    LONGEST_MODULE_LINES,
    classes_named_twice,
    figures_declared_twice,
    files_named_twice,
    long_functions,
    long_modules,
)

LOADS = 3


def structure() -> None:
    """Print a count a line, and under it what was counted."""
    modules = read_modules()
    print(f"{len(modules)} modules, {len(calculator_rooms(modules))} calculators")
    show("circles of imports", map(" <-> ".join, circles(graph(modules))))
    scripts = script_graph(DOCS / "assets")
    show("circles among the browser's scripts", map(" <-> ".join, circles(scripts)))
    show("imports into the room of a calculator or of the shelf", map(" -> ".join, across(modules)))
    show("imports against the flow of data", map(" -> ".join, backwards(modules)))
    show("modules of no calculator, outside core, science and shelf", stray(modules))
    show(
        "modules of science that one room or none reaches",
        (f"{name}: {', '.join(by) or 'none'}" for name, by in serving_one(modules).items()),
    )
    show(f"modules over {LONGEST_MODULE_LINES} lines", map(worded, long_modules(modules)))
    show(f"functions over {LONGEST_FUNCTION_LINES} lines", map(worded, long_functions(modules)))
    show("class names that stand twice", map(worded, classes_named_twice(modules).items()))
    show("file names that stand twice", map(worded, files_named_twice(modules).items()))
    show("figures declared twice", map(worded, figures_declared_twice(modules).items()))
    print(f"{seconds_of_load():.2f} s to load the records, best of {LOADS}")
    print(last_suite())


def show(title: str, items: Iterable[str]) -> None:
    """The count, then one indented line each."""
    listed = list(items)
    print(f"{len(listed)} {title}")
    for item in listed:
        print(f"    {item}")


def worded(pair: tuple[str, int | list[str]]) -> str:
    """A name and its number, or its places."""
    name, value = pair
    return f"{name}: {value if isinstance(value, int) else ', '.join(value)}"


def seconds_of_load() -> float:
    """The best time in which all records were read and checked.

    Raises ``BadRecords`` where they do not hold.
    """
    best = float("inf")
    for _ in range(LOADS):
        start = perf_counter()
        load()
        best = min(best, perf_counter() - start)
    return best
