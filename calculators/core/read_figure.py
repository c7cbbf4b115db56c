"""Reads one number: as a person writes it, with its unit behind it or not, or as JSON has it."""

import math
import re
from typing import Any

from calculators.core.fields import InputField, Kind
from calculators.core.limits import allowed
from calculators.core.numbers import read_number, show_short
from calculators.core.read_keys import show_json
from calculators.core.shown_units import System, at_limit, from_shown
from calculators.core.written_units import to_metric, units_of

# A number, then something that begins like a unit: a letter, or one of the signs that stand for one.
WITH_UNIT = re.compile(
    r"\s*([+\-\u2212]?\s*[0-9.,][0-9.,\s]*(?:[eE][+-]?[0-9]{1,3}(?![0-9a-zA-Z]))?)"
    r"((?![eE][+-]?[0-9])[^\W\d_].*|[°º%'\"\u2032\u2033\u2019\u201d].*)"
)
MOST_WRITTEN = 60  # letters of a number with its unit


def read_figure(field: InputField, value: Any, typed: bool, system: System) -> float:
    """Read a number inside its possible range, whole where the field counts things. Raises ``ValueError``.

    A text is read where it was typed. In JSON only one with a unit written out is: "5 gal" cannot be
    meant otherwise, while "7" is a number sent as the wrong type, and a program wants to hear of it.
    """
    number, unit = parts(field, value, typed, system)
    try:
        metric = measured(field, number, unit, system)
    except ValueError as wrong:
        raise ValueError(f"{wrong}; {allowed(field, system)}") from None
    low, high = field.low, field.high
    if (low is not None and metric < low) or (high is not None and metric > high):
        shown = f"{show_short(number)} {unit}".strip()
        meant = other_degrees(field, number, unit, system)
        raise ValueError(f"{shown} is out of range; {allowed(field, system)}{meant}")
    if field.kind == Kind.INTEGER:
        if not metric.is_integer():
            raise ValueError(f"{show_short(number)} is not whole; {allowed(field, system)}")
        return int(metric)
    return metric


def parts(field: InputField, value: Any, typed: bool, system: System) -> tuple[float, str]:
    """A finite number and the unit written behind it, empty where there is none.

    Raises ``ValueError`` with what is allowed.
    """
    match = None
    if isinstance(value, str) and len(value) <= MOST_WRITTEN:
        match = WITH_UNIT.fullmatch(value)
    readable = (str, int, float) if typed or match else (int, float)
    long = isinstance(value, str) and len(value.strip()) > MOST_WRITTEN
    if long or isinstance(value, bool) or not isinstance(value, readable):
        raise ValueError(f"{show_json(value)} is not a number; {allowed(field, system)}")
    try:
        text = match[1] if match else value
        number = read_number(text) if isinstance(text, str) else float(text)
    except OverflowError:
        raise ValueError(f"the number is too large; {allowed(field, system)}") from None
    except ValueError as wrong:
        raise ValueError(f"{wrong}; {allowed(field, system)}") from None
    if not math.isfinite(number):
        raise ValueError(f"{number} is not a number; {allowed(field, system)}")
    return number, match[2].strip() if match else ""


def measured(field: InputField, number: float, unit: str, system: System) -> float:
    """The metric value of a number in a written unit, or else in the unit shown.

    Raises ``ValueError`` for a unit that will not do.
    """
    if not unit:
        return from_shown(field, number, system)
    if field.quantity is None:
        raise ValueError("write the number alone")
    return at_limit(field, to_metric(field.quantity, number, unit))


def other_degrees(field: InputField, number: float, unit: str, system: System) -> str:
    """Where a bare temperature would be possible on the other scale: how to write it.

    The ``number`` is in degrees of one scale or the other.
    """
    if unit or field.quantity is None or field.low is None or field.high is None:
        return ""
    scales = units_of(field.quantity)
    if len(scales) != 2 or not any(scale.offset for scale in scales):
        return ""
    other = next(scale for scale in scales if bool(scale.offset) == (system == "metric"))
    if field.low <= to_metric(field.quantity, number, other.shown) <= field.high:
        return f". If it is in {other.shown}, write {show_short(number)} {other.shown}"
    return ""
