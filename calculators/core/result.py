"""What a calculator may return beside its figures: notes, and series to draw."""

from collections.abc import Sequence
from typing import Any, Literal, NamedTuple

from calculators.core.quantity import UsUnit

Level = Literal["info", "caution", "danger"]


class Link(NamedTuple):
    """A page that a note names, by its address below the site's root.

    ``given`` holds a calculator's inputs by key, metric: figures that the note itself worked out.
    What the answer hands on is a ``Lead``.
    """

    label: str
    page: str
    given: dict[str, float | str] = {}


class Note(NamedTuple):
    """A sentence for the keeper. ``danger`` is for harm to an animal or a person.

    ``first`` marks the answer in plain words, and what else must be read before the figures.
    ``leads`` names calculators of the declaration's ``leads_to`` whose links stand at this note, and
    not at the answer's end.
    """

    level: Level
    text: str
    first: bool = False
    links: tuple[Link, ...] = ()
    leads: tuple[str, ...] = ()


class Line(NamedTuple):
    """A named level across a picture, in the series' unit, such as the store at which leaves brown.

    It is drawn where the curves come near it; with ``always`` everywhere.
    """

    label: str
    value: float
    always: bool = False


class Mark(NamedTuple):
    """A moment worth a mark on a picture, such as the day of a trim; ``x`` as the series has it.

    ``is_now`` marks the moment that is asked about: what lies behind it was read, what follows is not.
    """

    x: float
    label: str
    is_now: bool = False


class Series(NamedTuple):
    """A curve: ``y`` in ``unit`` against ``x`` in ``x_unit``, both of the same length.

    The rest says how it is drawn. Series that name the same ``picture`` share one, and its unit.
    """

    label: str
    unit: str
    x_label: str
    x_unit: str
    x: Sequence[float]
    y: Sequence[float]
    picture: str = ""  # its title; a series without one has a picture of its own
    short: str = ""  # what stands at the end of the curve where several are drawn; else the label
    edge_of: str = ""  # the key of the series whose band it bounds: two edges are shaded between
    dots: bool = False  # single readings, with nothing known between them
    lines: tuple[Line, ...] = ()
    marks: tuple[Mark, ...] = ()
    us: UsUnit | None = (
        None  # the customary unit of ``y``, and of ``x``, where a person may choose one
    )
    x_us: UsUnit | None = None
    digits: int = 3  # significant figures of ``y`` in the caption, as in the table
    x_digits: int = 3
    subject: str = ""  # what the caption calls it, where the label is no subject of a sentence
    step: float = 0.0  # of the instrument that read the dots: half of it is drawn to either side
    caption: str = (
        ""  # the picture's meaning in whole sentences, where more is known than its course
    )
    fold: str = ""  # the heading that says the result, and under which the picture is folded


class BadInput(ValueError):
    """Inputs that cannot be used: every bad field at once, as (key, what is wrong)."""

    def __init__(self, *problems: tuple[str, str]) -> None:
        super().__init__("; ".join(f"{key}: {message}" for key, message in problems))
        self.problems = problems


class StillNeeded(BadInput):
    """Inputs that a keeper has yet to give, as (key, label), and with them whatever is wrong.

    ``values`` holds the inputs that could be read.
    """

    def __init__(
        self,
        needed: Sequence[tuple[str, str]],
        problems: Sequence[tuple[str, str]],
        values: dict[str, Any],
    ) -> None:
        super().__init__(*problems)
        self.needed = tuple(needed)
        self.values = values


class Refusal(NamedTuple):
    """One input that does not go with another: what is wrong, and what would be allowed (metric)."""

    key: str
    why: str
    low: float | None = None
    high: float | None = None
    choices: Sequence[str] = ()


class Refused(ValueError):
    """Raised by a formula for inputs that do not go together; the runner words the limits."""

    def __init__(self, *refusals: Refusal) -> None:
        super().__init__("; ".join(f"{refusal.key}: {refusal.why}" for refusal in refusals))
        self.refusals = refusals


def plain(value: Any) -> Any:
    """The same value with every ``NamedTuple`` as a dict, by its keys, and every tuple as a list."""
    if hasattr(value, "_asdict"):
        return {key.rstrip("_"): plain(part) for key, part in value._asdict().items()}
    if isinstance(value, dict):
        return {key: plain(part) for key, part in value.items()}
    if isinstance(value, list | tuple):
        return [plain(part) for part in value]
    return value
