"""Pieces of HTML for the comparison, made by the macros that the plants' pages use."""

import math
from typing import Any

from markupsafe import Markup

from scripts.pages.escape import escape
from scripts.pages.plants.side_by_side import UNKNOWN, Cell, ComparedPlant
from scripts.pages.ranges import both_units
from scripts.pages.template import environment
from scripts.records.claim import Claim, Range, Statement

STEP = 1.1  # sizes within a tenth of each other count as one size class; our choice


def mark(claim: Claim, plant_shown: ComparedPlant) -> Markup:
    """How sure, and from where, as on every page."""
    module: Any = environment().get_template("parts.j2").module
    return Markup(module.mark(claim, plant_shown.cite, plant_shown.words))


def text(value: str) -> Markup:
    """A text of a record, escaped."""
    return Markup(escape(value))


def claim_html(claim: Statement, plant_shown: ComparedPlant) -> Cell:
    """A sentence with its mark."""
    return Cell(text(claim.text) + Markup("&nbsp;") + mark(claim, plant_shown))


def figure(quantity: Any, claim: Range | None, plant_shown: ComparedPlant) -> Cell:
    """A range in both systems of units, with its mark and note."""
    if claim is None:
        return Cell(UNKNOWN)
    note = f" {text(claim.note)}" if claim.note else ""
    html = Markup("<b>{}</b>&nbsp;{}").format(both_units(quantity, claim), mark(claim, plant_shown))
    return Cell(html + Markup(note), size_classes(claim.low, claim.high))


def size_classes(low: float, high: float) -> tuple[str, ...]:
    """Every size class that a range touches; ranges that share none are clearly apart.

    Both ``low`` and ``high`` are in the unit of the range.
    """
    first, last = (
        math.floor(math.log(max(end, 1e-3)) / math.log(STEP) + 1e-9) for end in (low, high)
    )
    return tuple(str(number) for number in range(first, last + 1))
