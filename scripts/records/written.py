"""Looks into records as they were written, where any part may lack or be of the wrong kind."""

from collections.abc import Iterator
from typing import Any

from scripts.records.parse import Place

FREE = ("inputs", "expect", "readings")  # below these keys a calculator's own keys stand


def mappings(value: Any, place: Place = ()) -> Iterator[tuple[Place, dict[str, Any]]]:
    """Every mapping inside a value, with its place; none below keys whose content is a calculator's."""
    if isinstance(value, dict):
        yield place, value
        for key, part in value.items():
            if key not in FREE:
                yield from mappings(part, (*place, key))
    elif isinstance(value, list):
        for number, part in enumerate(value):
            yield from mappings(part, (*place, number))


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
