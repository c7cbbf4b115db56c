"""How a curve goes, in a few words: rising, falling, level, with a peak or a lowest place, up and down."""

from collections.abc import Sequence

LEVEL = 0.02  # of the highest value: a change that no one would call one
TURN = 0.1  # of the room between lowest and highest: a smaller turn is not spoken of
ABOUT_THE_SAME = 0.1  # of the same room, between the first value and the last

Point = tuple[float, float]


def turning_points(points: Sequence[Point], least: float) -> list[Point]:
    """Where a curve turns by at least so much, in order, without its two ends."""
    turns: list[Point] = []
    low = high = furthest = points[0]
    way = 0  # 1 while it rises, -1 while it falls, 0 until that shows
    for point in points[1:]:
        if way == 0:
            low, high = min(low, point, key=height), max(high, point, key=height)
            way = (height(point) - height(low) >= least) - (height(high) - height(point) >= least)
            furthest = point
        elif way * (height(point) - height(furthest)) >= 0:
            furthest = point
        elif way * (height(furthest) - height(point)) >= least:
            turns.append(furthest)
            way, furthest = -way, point
    return turns


def height(point: Point) -> float:
    """The value at a point."""
    return point[1]


def is_level(points: Sequence[Point]) -> bool:
    """Whether a curve stays nearly where it is."""
    values = [y for _, y in points]
    return max(values) - min(values) <= LEVEL * max(map(abs, values))


def turns_of(points: Sequence[Point]) -> list[Point]:
    """The turns worth a word; see ``turning_points``."""
    values = [y for _, y in points]
    return turning_points(points, TURN * (max(values) - min(values)))


def ends_word(points: Sequence[Point]) -> str:
    """How the last value of a restless curve stands to the first."""
    values = [y for _, y in points]
    change = values[-1] - values[0]
    if abs(change) <= ABOUT_THE_SAME * (max(values) - min(values)):
        return "as high at the end as at the start"
    return "higher at the end" if change > 0 else "lower at the end"
