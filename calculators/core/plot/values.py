"""The values of a picture by their places: in words for a finger or an arrow key, and as a table of text."""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from calculators.core.numbers import show_number, show_plain
from calculators.core.plot.captions import axis, points_of
from calculators.core.result import Mark, Series

FIGURES = 6  # significant, in the table of text
FORMULA = ("=", "+", "-", "@", "\t", "\r")  # a spreadsheet would take such a text for one


class Place(NamedTuple):
    """What stands at one place along the axis: the value of each curve, where it has one there."""

    x: float
    values: list[float | None]


def places(curves: Sequence[Series]) -> list[Place]:
    """All places in order. A place that a curve has twice, before and after a jump, stands twice."""
    found: dict[tuple[float, int], list[float | None]] = {}
    for number, curve in enumerate(curves):
        seen: dict[float, int] = {}
        for x, y in points_of(curve):
            seen[x] = seen.get(x, 0) + 1
            found.setdefault((x, seen[x]), [None] * len(curves))[number] = y
    return [Place(x, found[x, count]) for x, count in sorted(found)]


def spoken(place: Place, curves: Sequence[Series], marks: Sequence[Mark]) -> str:
    """A place in words: "Day 12: ammonia 0.3 mg N/L; nitrite 0.1 mg N/L; trim"."""
    first = curves[0]
    return f"{where(first, place.x)}: {'; '.join(spoken_values(place, curves, marks))}"


def spoken_values(place: Place, curves: Sequence[Series], marks: Sequence[Mark]) -> Iterator[str]:
    """Each value with its name, where there are several, and its unit; then what is done there."""
    for curve, value in zip(curves, place.values, strict=True):
        if value is not None:
            name = curve.short or curve.label if len(curves) > 1 else ""
            yield f"{name} {show_number(value, curve.digits)} {curve.unit}".strip()
    said = where(curves[0], place.x)
    at_place = dict.fromkeys(mark.label for mark in marks if mark.x == place.x)
    yield from (label for label in at_place if f"({label})" not in said)


def where(series: Series, x: float) -> str:
    """A place along the axis, with its unit unless the label says it; "Day 0 (today)" where today is 0."""
    text = f"{series.x_label} {show_number(x, series.x_digits)}"
    unit = series.x_unit
    if " is " in unit:
        named, _, at = unit.partition(" is ")
        return f"{text} ({named if show_number(x, series.x_digits) == at else unit})"
    said = unit.removesuffix("s") in series.x_label.lower()
    return text if not unit or said else f"{text} {unit}"


def table(curves: Sequence[Series]) -> str:
    """The values as separated text, as RFC 4180 has it: a column a curve, its unit in the head."""
    head = [
        axis(curves[0].x_label, curves[0].x_unit),
        *(axis(one.label, one.unit) for one in curves),
    ]
    rows = [
        [
            show_plain(value, FIGURES) if value is not None else ""
            for value in (place.x, *place.values)
        ]
        for place in places(curves)
    ]
    return "".join(",".join(row) + "\r\n" for row in [[quoted(cell) for cell in head], *rows])


def quoted(text: str) -> str:
    """A cell of text."""
    guarded = f"'{text}" if text.startswith(FORMULA) else text
    inner = guarded.replace('"', '""')
    return f'"{inner}"' if any(one in guarded for one in ',"\r\n') else guarded
