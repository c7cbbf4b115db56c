"""Reads the tables that ship with the calculators, also from inside a zip.

In the browser a large table that one calculator alone needs lies beside the zip, and comes later.
"""

import json
from pkgutil import get_data
from typing import Any

BESIDE = "/calculator-tables"  # in the browser's own file system


def read_table(name: str) -> dict[str, Any]:
    """One table of ``calculators/data`` by its name. Raises ``FileNotFoundError`` if there is none."""
    table: dict[str, Any] = json.loads(table_bytes(name))
    return table


def table_bytes(name: str) -> bytes:
    """The table's text, from the package or from the folder to which the page's worker wrote it."""
    try:
        data = get_data("calculators", f"data/{name}.json")
    except OSError:
        data = None
    if data is not None:
        return data
    with open(f"{BESIDE}/{name}.json", "rb") as file:
        return file.read()
