"""What is wrong or missing inside a row, by its path from outside."""

from collections.abc import Sequence

from calculators.core.result import BadInput, StillNeeded


def needed_of(bad: BadInput) -> Sequence[tuple[str, str]]:
    """What a keeper has yet to give, if that is what is wrong."""
    return bad.needed if isinstance(bad, StillNeeded) else ()


def under(place: str, problems: Sequence[tuple[str, str]]) -> list[tuple[str, str]]:
    """What was found inside a row, by its path from outside."""
    return [(f"{place}.{key}", text) for key, text in problems]


def labelled(name: str, problems: Sequence[tuple[str, str]]) -> list[tuple[str, str]]:
    """The same with the row's name before each label."""
    return [(path, f"{name}: {label}") for path, label in problems]
