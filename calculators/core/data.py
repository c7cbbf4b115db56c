"""Reads the tables that ship with the calculators, also from inside a zip."""

import json
from pkgutil import get_data
from typing import Any


def read_table(name: str) -> dict[str, Any]:
    """One table of ``calculators/data`` by its name. Raises ``FileNotFoundError`` if there is none."""
    text = get_data("calculators", f"data/{name}.json")
    if text is None:
        raise FileNotFoundError(name)
    table: dict[str, Any] = json.loads(text)
    return table
