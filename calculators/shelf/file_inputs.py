"""A shelf file as the inputs of a calculator, for the command line: the same file gives the same answer."""

from collections.abc import Mapping
from datetime import date
from typing import Any

from calculators.core.result import BadInput
from calculators.shelf.fills import FILLS
from calculators.shelf.form_filling import fill
from calculators.shelf.shelf_file import FORMAT, check_shelf_file

WHOLE = "round"
ONE = "standing"


def is_shelf_file(data: Mapping[str, Any]) -> bool:
    """Whether a JSON object says that it is a file of the shelf."""
    return data.get("format") == FORMAT


def inputs_from_file(
    calculator: str, data: Mapping[str, Any], wanted: str | None
) -> dict[str, Any]:
    """The inputs of a calculator from a file; ``wanted`` names the tank by its id or name.

    ``round`` takes all tanks, ``standing`` one with its log; any other form is filled in from the tank,
    as the page does it. Raises ``BadInput`` for a file that does not hold, and where no tank is named.
    """
    if wrong := check_shelf_file(dict(data)):
        raise BadInput(*wrong)
    if calculator == WHOLE:
        return {"tanks": data["tanks"], "entries": data["entries"]}
    tank = tank_of(data["tanks"], wanted)
    entries = [entry for entry in data["entries"] if entry["tank"] == tank["id"]]
    if calculator == ONE:
        return {"tank": tank, "entries": entries}
    if calculator not in FILLS:
        raise BadInput(
            ("--input", "a tank fills in nothing here; allowed is a JSON object of inputs")
        )
    fields: dict[str, Any] = fill(calculator, tank, entries, date.today().isoformat())["fields"]
    return fields


def tank_of(tanks: list[dict[str, Any]], wanted: str | None) -> dict[str, Any]:
    """The tank of that id or name; the only one where none is named.

    Raises ``BadInput`` with those that there are.
    """
    found = [one for one in tanks if wanted is None or wanted in (one["id"], one["name"])]
    if len(found) == 1:
        return found[0]
    names = ", ".join(str(one["id"]) for one in tanks) or "none: the file holds no tank"
    said = "is not said" if wanted is None else f"{wanted[:40]!r} is no tank of the file"
    raise BadInput(("tank", f"{said}; allowed are {names}"))
