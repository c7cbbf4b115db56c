"""Fills a calculator's form from a tank: by the table of fills, and by formula where a list is wanted."""

from collections.abc import Mapping, Sequence
from typing import Any

from calculators.science.shelf.log import log_of
from calculators.science.shelf.log_and_day import day_asked
from calculators.science.shelf.reading import read_entries, read_tank
from calculators.shelf.again import chosen_again
from calculators.shelf.fill_lists import LISTS
from calculators.shelf.filler import Filler
from calculators.shelf.reading_to_change import change_fields


def fill(
    calculator: str,
    raw_tank: dict[str, Any],
    raw_entries: Sequence[dict[str, Any]],
    today: str | None,
    again: Mapping[str, Any] | None = None,
) -> dict[str, Any]:
    """``{"fields": {input: value}, "from": {input: words}}`` for a calculator's form, metric.

    ``again``: what was chosen in that form for this tank the last time, by input.
    Raises ``BadInput`` for a tank or entries that cannot be read.
    """
    tank = read_tank(raw_tank)
    filler = Filler(tank, log_of(tank.id, read_entries(raw_entries), day_asked(today)))
    found = filler.fields(calculator)
    if calculator in LISTS:
        words = f"from {tank.name}" + ("" if filler.is_as_written else " and its log")
        made = LISTS[calculator](filler)
        found |= {key: (value, words) for key, value in made.items() if value not in (None, [])}
    if calculator == "water-change":
        found |= change_fields(filler)
    found = {**chosen_again(calculator, again or {}, filler), **found}
    return {
        "fields": {key: value for key, (value, _) in found.items()},
        "from": {key: words for key, (_, words) in found.items()},
    }
