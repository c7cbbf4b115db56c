"""Which rows of a list repeat an earlier one."""

from collections.abc import Sequence


def repeated(names: Sequence[str]) -> list[int]:
    """The places, counted from 1, of names that stand earlier in the list too, in order."""
    return [place for place, name in enumerate(names, start=1) if name in names[: place - 1]]
