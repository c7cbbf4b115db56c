"""What a calculator may return beside its figures: notes, and series to draw."""

from collections.abc import Sequence
from typing import Any, Literal, NamedTuple

Level = Literal["info", "caution", "danger"]


class Note(NamedTuple):
    """A sentence for the keeper. ``danger`` is for harm to an animal or a person."""

    level: Level
    text: str


class Series(NamedTuple):
    """A curve: ``y`` in ``unit`` against ``x`` in ``x_unit``, both of the same length."""

    label: str
    unit: str
    x_label: str
    x_unit: str
    x: Sequence[float]
    y: Sequence[float]


class BadInput(ValueError):
    """Inputs that cannot be used: every bad field at once, as (key, what is wrong)."""

    def __init__(self, *problems: tuple[str, str]) -> None:
        super().__init__("; ".join(f"{key}: {message}" for key, message in problems))
        self.problems = problems


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
        super().__init__("; ".join(f"{one.key}: {one.why}" for one in refusals))
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
