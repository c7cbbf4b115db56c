"""The check of a shelf file: every complaint names the field and the limit; nothing is changed.

``{"format": "mulmbook-tanks", "version": 1, "saved": ..., "tanks": [...], "entries": [...]}``. Keys
that are not known are let pass, since a later version may write them.
"""

from collections.abc import Mapping
from typing import Any

from calculators.core.dates import MOMENT, is_moment
from calculators.core.read_keys import show_json
from calculators.science.shelf.entries import ENTRY_FIELDS, ENTRY_MUST_HAVE, MOST_ENTRIES
from calculators.science.shelf.entry_faults import entry_faults
from calculators.science.shelf.shelf_tank import MOST_TANKS, MUST_HAVE, TANK_FIELDS
from calculators.shelf.json_text import BadText, read_json, structure_faults
from calculators.shelf.row_faults import Complaint, row_faults

FORMAT, VERSION = "mulmbook-tanks", 1
MOST_NAMED = 20
NOTHING = "has nothing in it"


def check_shelf_text(text: str) -> list[Complaint]:
    """The complaints about a file's text; none where it may be read."""
    try:
        data = read_json(text)
    except BadText as bad:
        return [Complaint(bad.field, str(bad))]
    return check_shelf_file(data)


def check_shelf_file(data: Any) -> list[Complaint]:
    """The complaints about a file as JSON has it; at most the first 20, then how many more."""
    found = [Complaint(*fault) for fault in structure_faults(data)] or head_faults(data)
    if not found:
        found = [*tank_faults(data["tanks"]), *log_faults(data)]
    more = len(found) - MOST_NAMED
    if more > 0:
        found = [*found[:MOST_NAMED], Complaint("file", f"{more} more fields are wrong")]
    return found


def head_faults(data: Any) -> list[Complaint]:
    """What is wrong with the file's own keys; where something is, the rest is not looked at."""
    if not isinstance(data, dict):
        return [Complaint("file", "must hold one JSON object with format, version, tanks, entries")]
    if data.get("format") != FORMAT:
        why = f"{show_json(data.get('format'))} is no shelf file; allowed is {FORMAT!r}"
        return [Complaint("format", why)]
    version = data.get("version")
    if isinstance(version, bool) or not isinstance(version, int) or version < 1:
        return [Complaint("version", f"{show_json(version)} is no version; allowed is {VERSION}")]
    if version > VERSION:
        why = (
            f"{version} is newer than this book reads; allowed is up to {VERSION}. Update the book."
        )
        return [Complaint("version", why)]
    found = []
    if not isinstance(data.get("saved"), str) or not is_moment(data["saved"]):
        found.append(
            Complaint("saved", f"{show_json(data.get('saved'))}; allowed is {MOMENT.words}")
        )
    for key, most in (("tanks", MOST_TANKS), ("entries", MOST_ENTRIES)):
        if not isinstance(data.get(key), list) or len(data[key]) > most:
            found.append(Complaint(key, f"allowed is a list of at most {most} rows"))
    return found


def tank_faults(tanks: list[Any]) -> list[Complaint]:
    """What is wrong with the tanks: fields, and ids that stand twice."""
    found, seen = [], dict[str, int]()
    for number, tank in enumerate(tanks, start=1):
        place = f"tanks[{number}]"
        found += row_faults(place, tank, TANK_FIELDS, MUST_HAVE)
        found += repeated(place, tank, seen, number)
    return found


def log_faults(data: Mapping[str, Any]) -> list[Complaint]:
    """What is wrong with the entries: fields, ids that stand twice, and tanks that are not there."""
    known = {tank.get("id") for tank in data["tanks"] if isinstance(tank, dict)
             and isinstance(tank.get("id"), str)}  # fmt: skip
    found, seen = [], dict[str, int]()
    for number, entry in enumerate(data["entries"], start=1):
        place = f"entries[{number}]"
        faults = row_faults(place, entry, ENTRY_FIELDS, ENTRY_MUST_HAVE)
        found += faults or [Complaint(f"{place}.{part}", why) for part, why in entry_faults(entry)]
        found += repeated(place, entry, seen, number)
        if not faults and entry["tank"] not in known:
            why = f"{show_json(entry['tank'])} is no tank of this file; allowed is the id of one"
            found.append(Complaint(f"{place}.tank", why))
    return found


def repeated(place: str, row: Any, seen: dict[str, int], number: int) -> list[Complaint]:
    """An id that an earlier row has already."""
    name = row.get("id") if isinstance(row, dict) else None
    if not isinstance(name, str):
        return []
    first = seen.setdefault(name, number)
    if first == number:
        return []
    list_name = place.partition("[")[0]
    why = f"{show_json(name)} is the id of {list_name}[{first}] already; each may stand once"
    return [Complaint(f"{place}.id", why)]
