"""Floaters by doubling time: the days until the cover reaches its upper limit."""

from calculators.core.numbers import show_number
from scripts.pages.calculators.ready.table import (
    ReadyRow,
    ReadyTable,
    ReadyValues,
    WorkedCell,
    cell,
    heading,
    said_of_all,
)

NAME = "floaters"
DOUBLING_DAYS = (2.0, 3.0, 4.0, 5.0, 7.0, 10.0, 14.0)
COVER_PERCENT = (10.0, 20.0, 30.0, 40.0, 50.0)
FIRST = (
    "A closed mat keeps air from the water. Animals that gasp, or a surface that is closed: take out half "
    "of the floaters now and move the surface; this table can wait.",
    "Between two values take the shorter doubling time and the larger cover.",
)


def floaters_values() -> ReadyValues:
    """Days until it is time to thin, from the cover now."""
    return ReadyValues("Floaters by doubling time", FIRST, (until_thinning(),), after())


def until_thinning() -> ReadyTable:
    """By doubling time down and cover across."""
    high = cell(NAME).answer["inputs"]["high_percent"]
    return ReadyTable(
        f"Days until {show_number(high)} % of the surface is covered",
        "Doubles in",
        tuple(f"covered now {heading(NAME, 'cover_percent', cover)}" for cover in COVER_PERCENT),
        tuple(
            ReadyRow(
                heading(NAME, "doubling_days", days),
                tuple(answer_at(days, cover).shown("days_to_high") for cover in COVER_PERCENT),
            )
            for days in DOUBLING_DAYS
        ),
    )


def after() -> tuple[str, ...]:
    """How to thin, and what the calculator says in every case."""
    example = cell(NAME).answer["inputs"]
    thin = (
        f"Thin down to {show_number(example['low_percent'])} % then, in two steps two or three days "
        "apart where animals and plants are used to shade."
    )
    said = said_of_all(answer_at(days, cover) for days in DOUBLING_DAYS for cover in COVER_PERCENT)
    return (thin, *said)


def answer_at(days: float, cover: float) -> WorkedCell:
    """The calculator's answer for one cell. The ``cover`` is in percent."""
    return cell(NAME, plant=None, wet_g_m2=2300.0, doubling_days=days, cover_percent=cover)
