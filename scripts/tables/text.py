"""A table as text: the same bytes from the same records, one entry a line, so that a change shows."""

import json
from typing import Any

from calculators.core.data import ABOUT

WRITTEN_BY = "Written by the build from the records in species/. Change the records, not this file."


def table_text(table: dict[str, Any]) -> str:
    """The text of a table, its first key saying who writes it. Raises ``ValueError`` for NaN or infinity."""
    return block({ABOUT: WRITTEN_BY, **table}) + "\n"


def is_ours(text: str | None) -> bool:
    """Whether a text is that of a table which the build wrote."""
    return text is not None and text.startswith(f"{{\n{compact(ABOUT)}:{compact(WRITTEN_BY)}")


def block(entries: dict[str, Any]) -> str:
    """One entry a line; an entry that is itself a collection of lists or mappings has a line for each."""
    lines = (f"{compact(key)}:{entry_text(entry)}" for key, entry in entries.items())
    return "{\n" + ",\n".join(lines) + "\n}"


def entry_text(entry: Any) -> str:
    """An entry in one line, or as a block of its own."""
    is_collection = isinstance(entry, dict) and all(
        isinstance(part, dict | list) for part in entry.values()
    )
    return block(entry) if entry and is_collection else compact(entry)


def compact(value: Any) -> str:
    """JSON without blanks."""
    return json.dumps(value, ensure_ascii=False, allow_nan=False, separators=(",", ":"))
