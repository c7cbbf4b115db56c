"""Looks into records as they were written, where any part may lack or be of the wrong kind."""

from collections.abc import Iterable, Iterator
from typing import Any

from scripts.records.parse import Place

FREE = ("inputs", "expect", "readings")  # below these keys a calculator's own keys stand


def mappings(value: Any, place: Place = ()) -> Iterator[tuple[Place, dict[str, Any]]]:
    """Every mapping inside a value, with its place; none below keys whose content is a calculator's."""
    waiting: list[tuple[Place, Any]] = [(place, value)]  # the next one last
    while waiting:
        here, part = waiting.pop()
        inside: Iterable[tuple[str | int, Any]] = ()
        if isinstance(part, dict):
            yield here, part
            inside = ((key, below) for key, below in part.items() if key not in FREE)
        elif isinstance(part, list):
            inside = enumerate(part)
        held = [((*here, step), below) for step, below in inside if isinstance(below, (dict, list))]
        waiting += reversed(held)


def every_mapping(value: Any) -> Iterator[dict[str, Any]]:
    """The mappings of ``mappings``, in any order and without their places, in half the time."""
    waiting = [value]
    for part in waiting:  # which grows on the way
        below: Iterable[Any] = ()
        if isinstance(part, dict):
            yield part
            below = (one for key, one in part.items() if key not in FREE)
        elif isinstance(part, list):
            below = part
        waiting.extend(one for one in below if isinstance(one, (dict, list)))


def inside(value: Any, *steps: str) -> Any:
    """What stands below keys, None where nothing does."""
    for step in steps:
        value = value.get(step) if isinstance(value, dict) else None
    return value


def listed(value: Any, *steps: str) -> list[Any]:
    """The list below keys, empty where none stands there."""
    content = inside(value, *steps)
    return content if isinstance(content, list) else []


def texts(value: Any, *steps: str) -> Iterator[tuple[int, str]]:
    """The texts of the list below keys, each with its place in the list."""
    for number, part in enumerate(listed(value, *steps)):
        if isinstance(part, str):
            yield number, part


def source_keys(part: dict[str, Any]) -> list[str]:
    """The source keys of a claim, however it writes them."""
    own = part.get("source")
    keys = own if isinstance(own, list) else [own]
    return [key for key in keys if isinstance(key, str)]
