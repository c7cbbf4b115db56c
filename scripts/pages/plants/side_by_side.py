"""What stands side by side when plants are compared: rows of cells, ready to place.

A cell is a piece of HTML, escaped here, and the words by which two plants can be seen to differ.
"""

from collections.abc import Callable, Iterable, Mapping
from typing import NamedTuple

from markupsafe import Markup

from scripts.pages.cite import Citations
from scripts.records.plant import Plant
from scripts.records.rule import Rule

Words = Mapping[str, Mapping[str, Mapping[str, str]]]
UNKNOWN = Markup('<span class="unknown">not known</span>')


class Cell(NamedTuple):
    """``words`` are None where the row does not sort plants, or nobody knows."""

    html: Markup
    words: tuple[str, ...] | None = None


class ComparedPlant(NamedTuple):
    """What a cell is made with: the plant, and what every page of records needs."""

    slug: str
    plant: Plant
    cite: Citations
    words: Words
    rules: Mapping[str, Rule]


class ComparisonRow(NamedTuple):
    """A row of the comparison, under a heading."""

    group: str
    key: str
    label: str
    cell: Callable[[ComparedPlant], Cell]


def differ(cells: Iterable[Cell]) -> bool:
    """Whether a row tells plants apart: all are known, and no word fits every one."""
    sets = [set(cell.words) for cell in cells if cell.words is not None]
    return len(sets) > 1 and not set.intersection(*sets)
