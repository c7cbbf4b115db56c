"""A tank and its log as JSON has them, read into what the formulas take."""

from collections.abc import Sequence
from typing import Any

from calculators.core.problem_paths import under
from calculators.core.read import read_inputs
from calculators.core.result import BadInput
from calculators.core.run import as_rows
from calculators.science.shelf.entries import ENTRY_FIELDS, Entry
from calculators.science.shelf.entry_faults import entry_faults
from calculators.science.shelf.shelf_tank import TANK_FIELDS, ShelfTank


def read_tank(raw: dict[str, Any]) -> ShelfTank:
    """A tank; keys that are not known are let pass. Raises ``BadInput`` with every bad field."""
    keys = {field.key for field in TANK_FIELDS}
    try:
        values = read_inputs(
            TANK_FIELDS, {key: raw[key] for key in raw if key in keys}, typed=False
        )
    except BadInput as bad:
        raise BadInput(*under("tank", bad.problems)) from None
    return ShelfTank(*(as_rows(field, values[field.key]) for field in TANK_FIELDS))


def read_entries(raw: Sequence[dict[str, Any]]) -> list[Entry]:
    """The entries of a log. Raises ``BadInput`` with every bad field of every row."""
    keys = {field.key for field in ENTRY_FIELDS}
    made, problems = [], []
    for number, row in enumerate(raw, start=1):
        try:
            values = read_inputs(
                ENTRY_FIELDS, {key: row[key] for key in row if key in keys}, typed=False
            )
        except BadInput as bad:
            problems += under(f"entries[{number}]", bad.problems)
            continue
        problems += under(f"entries[{number}]", entry_faults(values))
        made.append(Entry(**values))
    if problems:
        raise BadInput(*problems)
    return made


def check_entries(entries: Sequence[Entry]) -> None:
    """Refuse entries whose parts do not go together. Raises ``BadInput`` that names each row and part."""
    wrong = [
        (f"entries[{number}].{part}", why)
        for number, entry in enumerate(entries, start=1)
        for part, why in entry_faults(entry._asdict())
    ]
    if wrong:
        raise BadInput(*wrong)
