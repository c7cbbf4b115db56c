"""Reads the tables that ship with the calculators, also from inside a zip.

The build writes them from the records. In the browser a large table that one calculator alone needs
lies beside the zip, and comes later.
"""

import json
from pkgutil import get_data
from typing import Any

ABOUT = "about"  # the first key of every table says who writes it; readers do not see it
BESIDE = "/calculator-tables"  # in the browser's own file system
ADVICE = "the build writes it from the records: python3 scripts/serve.py --build-only"

_read: set[str] = set()


class MissingTable(FileNotFoundError):
    """A table that did not come along, or holds no table; the message says how to get it."""


def read_table(name: str) -> dict[str, Any]:
    """One table of ``calculators/data`` by its name. Raises ``MissingTable``."""
    try:
        table = json.loads(table_bytes(name))
    except ValueError:
        table = None
    if not isinstance(table, dict):
        raise MissingTable(f"{name}.json holds no table; {ADVICE}")
    _read.add(name)
    table.pop(ABOUT, None)
    return table


def table_bytes(name: str) -> bytes:
    """The table's text, from the package or from the folder to which the page's worker wrote it.

    Raises ``MissingTable``.
    """
    try:
        data = get_data("calculators", f"data/{name}.json")
    except OSError:
        data = None
    if data is not None:
        return data
    try:
        with open(f"{BESIDE}/{name}.json", "rb") as file:
            return file.read()
    except OSError:
        raise MissingTable(f"the table {name}.json is missing; {ADVICE}") from None


def tables_read() -> frozenset[str]:
    """The tables that this process has read so far."""
    return frozenset(_read)
