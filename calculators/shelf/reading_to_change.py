"""Which reading of a tank a water change is worked out for: ammonia that harms, the worst, else nitrate."""

from typing import Any, NamedTuple

from calculators.science.conversions import UG_PER_MG
from calculators.science.shelf.harmful_readings import AMMONIA, NITRITE, harms
from calculators.science.shelf.latest import Latest
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

    The reading that harms most is taken, judged as the tank's standing is: by its pH and warmth, and old
    ones too. Of one that is too old only the name is filled in, so that it is read again first. Ammonia
    that harms goes before all: a change for something else may turn it toxic. The calculator then names
    no change by the total alone, and leads on. The tank knows its tap's nitrate alone.
    """
    found = [one for one in harms(filler.tank, filler.readings) if one.reading.what in CHANGED]
    ammonia = (one for one in found if one.reading.what == AMMONIA and not one.reading.is_old)
    worst = next(ammonia, next(iter(found), None))
    if worst is not None and worst.reading.is_old:
        return {"what": (CHANGED[worst.reading.what].substance, again(filler, worst.reading))}
    if worst is not None:
        why = "the one that harms most" if worst is found[0] else "which a change can turn toxic"
        return fields_of(filler, worst.reading, worst.value, f", {why}")
    nitrate = filler.readings.get(NITRATE)
    if nitrate is not None and not nitrate.is_old:
        return fields_of(filler, nitrate, nitrate.value)
    return {}


def again(filler: Filler, reading: Latest) -> str:
    """That an old reading harms most, and is to be read again before the water is changed for it."""
    read = f"{filler.tank.name}, {reading.when}"
    return f"{read}, the one that harms most: read it again"


def fields_of(
    filler: Filler, reading: Latest, value: float, why: str = ""
) -> dict[str, tuple[Any, str]]:
    """The fields for one reading of the ``value`` in its own unit."""
    changed = CHANGED[reading.what]
    read = f"{filler.tank.name}, {reading.when}"
    fields: dict[str, tuple[Any, str]] = {
        "what": (changed.substance, f"{read}{why}"),
        "now_mg_l": (value / changed.units_per_mg, read),
    }
    tap = filler.value(f"tank.tap.{NITRATE}")
    return {**fields, "tap_mg_l": tap} if tap and reading.what == NITRATE else fields
