"""The table of all plants: one row each, with the figures by which the page's script sorts."""

from collections.abc import Sequence
from typing import Any, NamedTuple

from calculators.core import quantities as q
from calculators.science.law.restricted import Restricted, once_a_place, place_in_words
from scripts.pages.ranges import both_systems
from scripts.pages.template import render
from scripts.records.claim import Range
from scripts.records.growth_forms import GROWTH_FORMS, growth_form
from scripts.records.law_matches import listings, restricted_at
from scripts.records.load import Library
from scripts.records.plant import Plant

LIGHTS = {
    "weak": (0.0, 1.0, "lives with less than 1 mol/m²/d"),
    "modest": (1.0, 2.0, "from 1 to under 2 mol/m²/d"),
    "bright": (2.0, float("inf"), "needs 2 mol/m²/d or more"),
    "not-known": (0.0, 0.0, "not known"),
}  # bounds of the low end of the daily light; our choice, so that each third is of use
NEVER_PLANTED = "never planted from this book"
NEVER_PLANTED_SHORT = "never planted"
PART = "*"  # behind a place of which single states alone restrict a plant
ROLE_ORDER = ("slow", "steady", "fast")


class Column(NamedTuple):
    """A column: what its sort button says, and whether it holds figures."""

    key: str
    label: str
    unit: str = ""


class TableCell(NamedTuple):
    """A cell: what it shows, and what it sorts by; None, not known, comes last.

    ``us`` is what it shows in US units, where that differs; ``whole`` is what a short word of the
    law stands for.
    """

    shown: str
    sorts: float | str | None
    us: str = ""
    whole: str = ""


class PlantRow(NamedTuple):
    """One plant's row, and the words it is filtered by."""

    slug: str
    plant: Plant
    growth_form: str
    light: str
    cells: list[TableCell]


COLUMNS = (
    Column("habit", "Habit"),
    Column("look", "Look"),
    Column("light", "Light", "daily, DLI"),
    Column("height", "Height"),
    Column("trim", "Trimmed every"),
    Column("doubling", "Doubles in"),
    Column("nitrogen", "Nitrogen"),
    Column("temperature", "Temperature"),
    Column("law", "Law"),
)


def table_page(library: Library) -> str:
    """The table as Markdown, in the order of the names."""
    ordered = sorted(library.plants.items(), key=lambda item: item[1].name)
    lines = [line(slug, plant, library) for slug, plant in ordered]
    return render(
        "table.md.j2",
        columns=COLUMNS,
        lines=lines,
        habits=[(key, word["label"]) for key, word in library.vocabulary["habit"].items()],
        looks=list(GROWTH_FORMS.items()),
        lights=[(key, label) for key, (_, _, label) in LIGHTS.items()],
        places=[
            (place_code(key), word["label"]) for key, word in library.vocabulary["place"].items()
        ],
        never=(NEVER_PLANTED_SHORT, NEVER_PLANTED),
        part=PART,
    )


def line(slug: str, plant: Plant, library: Library) -> PlantRow:
    """One row."""
    words, shown = library.vocabulary, growth_form(plant)
    light, growth = plant.needs.dli_mol, plant.growth
    where = [restricted_at(listing) for listing in listings(plant, library.rules)]
    cells = [
        TableCell(words["habit"][plant.habit]["label"], words["habit"][plant.habit]["label"]),
        TableCell(
            GROWTH_FORMS[shown] if shown else "not known", GROWTH_FORMS[shown] if shown else None
        ),
        figure(q.DailyLight, light),
        figure(q.Height, plant.size.height_cm),
        figure(q.Interval, growth.trim_every_days),
        figure(q.DoublingTime, growth.doubling_days),
        role_cell(plant, words["nitrogen_role"]),
        figure(q.Temperature, plant.needs.temperature_c),
        law_cell(where, plant),
    ]
    return PlantRow(slug, plant, shown or "", light_class(light), cells)


def figure(quantity: Any, claim: Range | None) -> TableCell:
    """A range, sorted by its middle; its sureness stands on the plant's page."""
    if claim is None:
        return TableCell("not known", None)
    metric, us = both_systems(quantity, claim)
    return TableCell(metric, claim.middle, us=us if us != metric else "")


def role_cell(plant: Plant, words: dict[str, dict[str, str]]) -> TableCell:
    """Its part in the nitrogen balance, sorted from slow to fast."""
    if plant.nitrogen is None:
        return TableCell("not known", None)
    role = plant.nitrogen.role.value
    return TableCell(words[role]["label"], float(ROLE_ORDER.index(role)))


def law_cell(where: Sequence[Restricted], plant: Plant) -> TableCell:
    """Where a list names it, in the places' codes; the words carry the meaning, not their colour."""
    named, never = once_a_place(where), not plant.offered
    if not named and not never:
        return TableCell("none found", 0.0)
    codes = " ".join(place_code(part.place) + (PART if part.states else "") for part in named)
    return TableCell(
        ", ".join(filter(None, (codes, NEVER_PLANTED_SHORT if never else ""))),
        float(len(where)),
        whole=", ".join([*map(place_in_words, named), *[NEVER_PLANTED] * never]),
    )


def place_code(place: str) -> str:
    """The short word for a place in the column of law; the page's first lines say what it means."""
    return place.upper()


def light_class(claim: Range | None) -> str:
    """Which band of light the low end of the need falls in."""
    if claim is None:
        return "not-known"
    return next(key for key, (low, high, _) in LIGHTS.items() if low <= claim.low < high)
