"""The animals that live in a tank now: as listed, with those logged in, out and dead."""

from typing import NamedTuple

from calculators.core.numbers import show_number
from calculators.science.animals.animal_table import animal_name
from calculators.science.shelf.log import Dated, Log
from calculators.science.shelf.shelf_tank import AnimalsHeld, ShelfTank


class AnimalsNow(NamedTuple):
    """The list of today (None where nothing was ever said), and what does not add up, a sentence each."""

    animals: list[AnimalsHeld] | None
    doubts: list[str]


def animals_now(tank: ShelfTank, log: Log) -> AnimalsNow:
    """The animals of today. A number that nobody knows stays unknown, and none falls below zero."""
    rows = {one.animal: one for one in tank.animals or []}
    counts = {key: one.count_ for key, one in rows.items()}
    doubts: dict[str, str] = {}
    unnamed = 0
    for one in log.of("animal", "death"):
        key = one.entry.what or only_kind(counts)
        if key is None:
            unnamed += moved(one)
        elif key not in rows or one.is_after(rows[key].entered):
            before = counts.get(key, 0)
            counts[key] = None if before is None else max(0, before - moved(one))
            if before is not None and moved(one) > before:
                doubts[key] = (f"More of {animal_name(key)} died or left by the log than were there: "
                               "count them, and write the number in the tank.")  # fmt: skip
    if unnamed > 0:
        doubts[""] = (
            f"{show_number(unnamed)} died of no named kind: no kind's number is less for it."
        )
    if tank.animals is None and not counts:
        return AnimalsNow(None, list(doubts.values()))
    # Of a kind that does not add up some may live still: its row stays.
    kept = [AnimalsHeld(key, count) for key, count in counts.items() if count != 0 or key in doubts]
    return AnimalsNow(kept, list(doubts.values()))


def only_kind(counts: dict[str, int | None]) -> str | None:
    """The kind that an entry of no kind must mean: the only one there is."""
    there = [key for key, count in counts.items() if count != 0]
    return there[0] if len(there) == 1 else None


def moved(one: Dated) -> int:
    """How many are fewer by an entry; below zero for more. A death without a number counts as one."""
    if one.entry.kind == "death":
        return round(1 if one.entry.value is None else one.value)
    return -round(one.value)
