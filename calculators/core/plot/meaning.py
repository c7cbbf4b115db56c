"""What a picture means, in one sentence: how its curves go, and how they stand to the named lines."""

from collections.abc import Callable, Sequence

from calculators.core.numbers import show_number as show
from calculators.core.plot.captions import place_word, points_of
from calculators.core.plot.crossings import line_words
from calculators.core.plot.curve_words import Point, ends_word, is_level, turns_of
from calculators.core.result import Line, Series

CLOCKS = {"Day": "day", "Week": "week", "Weeks from now": "week", "Hours without power": "hour"}
CLOCK_DIGITS = 2
PLURAL = ("Hours", "Minutes", "Plants", "Weeks")  # first words of a label that is no singular
KEPT = ("pH", "PPFD")  # no small letter in front


def meaning(
    curves: Sequence[Series], bands: Sequence[Sequence[Series]], lines: Sequence[Line]
) -> str:
    """The sentence: a clause for each curve."""
    edges = [edge for pair in bands for edge in pair] if len(bands) == 1 else []
    first, *more = (clause(curve, lines, edges) for curve in curves)
    return "; ".join([first, *map(lowered, more)]) + "."


def clause(curve: Series, lines: Sequence[Line], edges: Sequence[Series]) -> str:
    """One curve: its course, then how it stands to its lines."""
    points = points_of(curve)
    course = dots_words(curve, points) if curve.dots else course_words(curve, points)
    own = [line for line in lines if line in curve.lines]
    subject = curve.subject or curve.label
    return ", ".join([f"{subject} {course}", *line_words(curve, own, edges, place)])


def course_words(curve: Series, points: Sequence[Point]) -> str:
    """The course of a curve, with the verb."""
    verb = verbs(curve)
    if is_level(points):
        return f"{verb('stay')} about level"
    turns = turns_of(points)
    if len(turns) > 1:
        return f"{verb('go')} up and down, {ends_word(points)}"
    after_start = (turns or points)[-1][1]
    rising = after_start > points[0][1]
    first, second = ("rise", "fall") if rising else ("fall", "rise")
    if turns:
        extreme = "highest" if rising else "lowest"
        return f"{verb(first)} to the {extreme} at {place(curve, turns[0][0])}, then {verb(second)}"
    if curve.x_label in CLOCKS:
        return verb(first)
    return f"{verb(first)} with rising {place_word(curve)}"


def dots_words(curve: Series, points: Sequence[Point]) -> str:
    """Single readings: how far apart they lie."""
    values = sorted(y for _, y in points)
    low, high = show(values[0], curve.digits), show(values[-1], curve.digits)
    unit = f" {curve.unit}".rstrip()
    return f"is {low}{unit} each time" if low == high else f"lies between {low} and {high}{unit}"


def verbs(curve: Series) -> Callable[[str], str]:
    """The form of a verb that goes with what the curve is called."""
    plural = (curve.subject or curve.label).split(maxsplit=1)[0].rstrip(",") in PLURAL
    return lambda verb: verb if plural else {"go": "goes"}.get(verb, f"{verb}s")


def place(curve: Series, x: float) -> str:
    """A place along the axis, inside a sentence."""
    clock = CLOCKS.get(curve.x_label)
    if clock:
        return f"{clock} {show(x, CLOCK_DIGITS)}"
    return f"{place_word(curve)} {show(x, curve.x_digits)} {curve.x_unit}".rstrip()


def lowered(text: str) -> str:
    """A clause that follows another one."""
    return text if text.startswith(KEPT) else text[:1].lower() + text[1:]
