"""How a curve stands to the named lines of its picture: above, below, from where on, back and forth."""

from collections.abc import Callable, Sequence
from itertools import pairwise

from calculators.core.plot.captions import points_of
from calculators.core.result import Line, Series

Place = Callable[[Series, float], str]  # words for a place along the axis


def line_words(
    curve: Series, lines: Sequence[Line], edges: Sequence[Series], place: Place
) -> list[str]:
    """A phrase for each line; those on whose one side the curve stays are named together."""
    kept: dict[str, list[str]] = {}
    crossed: list[str] = []
    for line in lines:
        sides = [y > line.value for _, y in points_of(curve)]
        if len(set(sides)) > 1:
            crossed.append(crossing(curve, line, place))
        else:
            side = "above" if sides[0] else "below"
            kept.setdefault(side, []).append(reached(curve, line, side, edges))
    always = "each time" if curve.dots else "all along"
    return [*(f"{side} {' and '.join(names)} {always}" for side, names in kept.items()), *crossed]


def reached(curve: Series, line: Line, side: str, edges: Sequence[Series]) -> str:
    """A line that the curve does not cross; that it, or what is shaded, reaches it is not kept back."""
    if any(y == line.value for _, y in points_of(curve)):
        return f"{named(line)} (and reaches it)"
    beyond = any(
        (y < line.value) != (side == "below") for edge in edges for _, y in points_of(edge)
    )
    return f"{named(line)} (what is shaded reaches past it)" if beyond else named(line)


def crossing(curve: Series, line: Line, place: Place) -> str:
    """A line that the curve crosses: on which side it is from where on."""
    points = points_of(curve)
    sides = [y > line.value for _, y in points]
    if curve.dots:
        return f"{sum(sides)} of {len(sides)} above {named(line)}"
    changes = [at for at, (one, other) in enumerate(pairwise(sides), start=1) if one != other]
    side = "below" if sides[0] else "above"
    first, last = (place(curve, points[at][0]) for at in (changes[0], changes[-1]))
    if len(changes) == 1:
        return f"{side} {named(line)} from {first} on"
    if len(changes) == 2:
        return f"{side} {named(line)} from {first} to {last}"
    return f"now above, now below {named(line)}"


def named(line: Line) -> str:
    """The line's name, marked as one."""
    return f"“{line.label}”"
