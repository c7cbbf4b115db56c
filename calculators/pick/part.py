"""One criterion's part of the score."""

from collections.abc import Callable
from typing import Any, NamedTuple

from calculators.core.numbers import show_number
from calculators.core.quantity import Quantity
from calculators.core.shown_units import converted
from calculators.pick.plant_table import GUESS, RecordRange
from calculators.pick.tolerance import TRUSTED

NOT_KNOWN = 0.5  # a blank counts half: neither a fit nor a miss


class CriterionScore(NamedTuple):
    """How much a criterion weighs, how well it fits (1 to 0), and why; ``out`` is a hard reason.

    ``why`` is worded only for the plants that are shown: wording takes longer than judging.
    """

    weight: int
    share: float
    why: Callable[[], str]
    out: bool = False


def trusted(
    weight: int, share: float, why: Callable[[], str], out: bool, sure: int
) -> CriterionScore:
    """A part from a record's range: the less sure it is, the less a fit counts."""
    return CriterionScore(weight, share * TRUSTED[sure], why, out)


def unknown(weight: int, why: str) -> CriterionScore:
    """A part for a blank in the record, which is said and never counted as a fit."""
    return CriterionScore(weight, NOT_KNOWN, lambda: why)


def quantity_of(entry: Any) -> Quantity:
    """The quantity of an entry of the vocabulary."""
    quantity: Quantity = entry.__metadata__[0]
    return quantity


def figure(entry: Any, *ends: float) -> str:
    """One figure, or a range, with its unit, and in US units behind where they differ."""
    quantity = quantity_of(entry)
    metric = f"{dashed([show_number(end) for end in ends])} {quantity.unit}".rstrip()
    if quantity.us is None:
        return metric
    us = dashed([show_number(converted(quantity, end, "us"), 2) for end in ends])
    return f"{metric} ({us} {quantity.us.unit})"


def dashed(ends: list[str]) -> str:
    """The text of a range: both ends with a dash, or one where they are the same."""
    return ends[0] if len(set(ends)) == 1 else "–".join(ends)


def asks(entry: Any, span: RecordRange) -> str:
    """A record's range, and whether it is a guess."""
    return figure(entry, span.low, span.high) + (", a guess" if span.sure == GUESS else "")
