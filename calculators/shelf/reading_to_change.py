"""Which reading of a tank a water change is worked out for: the one that harms most, else nitrate."""

from typing import Any, NamedTuple

from calculators.science.conversions import UG_PER_MG
from calculators.science.shelf.harmful_readings import AMMONIA, NITRITE, harms
from calculators.science.shelf.latest import Latest, ago
from calculators.shelf.filler import Filler

NITRATE = "nitrate_mg_l"
COPPER = "copper_ug_l"


class Changed(NamedTuple):
    """What the calculator calls a reading of the log, and how many of its units are 1 mg/L."""

    substance: str
    units_per_mg: float = 1


# What water changes bring down and a kit reads. Phosphate has no line that harms.
CHANGED = {
    NITRITE: Changed("nitrite"), AMMONIA: Changed("ammonia"), COPPER: Changed("copper", UG_PER_MG),
    NITRATE: Changed("nitrate"),
}  # fmt: skip


def change_fields(filler: Filler) -> dict[str, tuple[Any, str]]:
    """What is measured, its reading in mg/L and that of the tap, each with its origin in words.

    Of readings that are not too old the one that harms most is taken. For ammonia the calculator
    then names no change by the total alone, and leads on. The tank knows its tap's nitrate alone.
    """
    fresh = {
        what: one for what, one in filler.readings.items() if what in CHANGED and not one.is_old
    }
    worst = next(iter(harms(filler.tank, fresh)), None)
    if worst is not None:
        return fields_of(filler, worst.reading, worst.value, ", the one that harms most")
    if NITRATE in fresh:
        return fields_of(filler, fresh[NITRATE], fresh[NITRATE].value)
    return {}


def fields_of(
    filler: Filler, reading: Latest, value: float, why: str = ""
) -> dict[str, tuple[Any, str]]:
    """The fields for one reading of the ``value`` in its own unit."""
    changed = CHANGED[reading.what]
    read = f"{filler.tank.name}, read {ago(reading.age_days)}"
    fields: dict[str, tuple[Any, str]] = {
        "what": (changed.substance, f"{read}{why}"),
        "now_mg_l": (value / changed.units_per_mg, read),
    }
    tap = filler.value(f"tank.tap.{NITRATE}")
    return {**fields, "tap_mg_l": tap} if tap and reading.what == NITRATE else fields
