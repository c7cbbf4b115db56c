"""The plants that live in a tank now: as listed, with those put in and taken out, and what was cut off.

A listed weight is what a cut leaves. Between cuts a plant grows at its own pace, so that a cut makes it
less only where it took more than had grown since. It then grows back to the listed weight and no further:
what is beyond that only a scale can tell. Where nobody knows the pace, cuts leave the weight as written.
"""

from datetime import time
from typing import NamedTuple

from calculators.core.dates import read_date
from calculators.science.shelf.learned import learned_of
from calculators.science.shelf.log import Dated, Log, days_of, days_on
from calculators.science.shelf.recorded_plants import plant_name, plants
from calculators.science.shelf.shelf_tank import PlantHeld, ShelfTank

CUTS = ("trim", "thin")
MOST_DOUBLINGS = 10.0  # after so many any cut has grown back
MASS_PLACES = 1
NOON = time(12)  # of the day of planting, whose hour nobody wrote down


class PlantsNow(NamedTuple):
    """The list of today (None where nothing was ever said), what a cut leaves of each in g, and doubts."""

    plants: list[PlantHeld] | None
    left_g: dict[str, float]
    doubts: list[str]


class PlantMass(NamedTuple):
    """One plant at a moment (in days): what a cut leaves and what stands, g wet; None is not known."""

    left_g: float | None
    now_g: float | None
    days: float
    doubt: str = ""


def plants_now(tank: ShelfTank, log: Log) -> PlantsNow:
    """The plants of today."""
    rows = {one.plant: one for one in tank.plants or []}
    logged = [one.entry.what for one in log.of("plant") if one.entry.what]
    held: list[PlantHeld] = []
    left: dict[str, float] = {}
    doubts: list[str] = []
    for key in dict.fromkeys([*rows, *logged]):
        row = rows.get(key) or PlantHeld(key, 0.0)
        stand = followed(row, log, is_only=len(rows) == 1)
        doubts += filter(None, [stand.doubt])
        # Of a listed plant that does not add up some may live still: its row stays, of unknown weight.
        if stand.left_g == 0 and not (stand.doubt and key in rows):
            continue
        now = None if not stand.now_g else round(stand.now_g, MASS_PLACES)
        held.append(PlantHeld(key, now, row.since, row.entered))
        left |= {key: stand.left_g} if stand.left_g else {}
    return PlantsNow(None if tank.plants is None and not held else held, left, doubts)


def followed(row: PlantHeld, log: Log, *, is_only: bool) -> PlantMass:
    """One plant through the log until its last day. A cut of no named plant is of the only one there is."""
    pace = pace_of_row(row, log)
    stand = PlantMass(row.wet_g, row.wet_g, begin(row, log))
    for one in log.of("plant", *CUTS):
        is_of_it = one.entry.what == row.plant or (is_only and one.entry.what is None)
        if is_of_it and counts(one, row):
            stand = (planted if one.entry.kind == "plant" else cut)(stand, one, row.plant, pace)
    return stand._replace(now_g=regrown(stand, log.end, pace))


def pace_of_row(row: PlantHeld, log: Log) -> float | None:
    """The days in which a plant doubles: as learned here, else as its record says; None where unknown."""
    facts = plants().get(row.plant)
    return learned_of(row, log).doubling_days or (facts.doubling_days if facts else None)


def begin(row: PlantHeld, log: Log) -> float:
    """The moment from which a row is followed, in days: its writing, its planting, or the log's beginning."""
    if row.entered:
        return days_of(row.entered)
    if row.since:
        return days_on(read_date(row.since), NOON)
    return log.entries[0].days if log.entries else log.end


def counts(one: Dated, row: PlantHeld) -> bool:
    """Whether an entry is later than the row; one of the planting's own day is the planting itself."""
    if row.entered:
        return one.is_after(row.entered)
    return row.since is None or one.day > read_date(row.since)


def grown(stand: PlantMass, days: float, pace: float | None) -> float:
    """What stands at a later moment with no cut, g; as it stood where the pace is not known."""
    doublings = max(0.0, days - stand.days) / pace if pace else 0.0
    return float((stand.now_g or 0.0) * 2 ** min(doublings, MOST_DOUBLINGS))


def regrown(stand: PlantMass, days: float, pace: float | None) -> float | None:
    """What is surely there at a later moment: grown, but to no more than a cut leaves.

    In g; the ``pace`` is in days for a doubling.
    """
    if stand.now_g is None or stand.left_g is None:
        return None
    return min(stand.left_g, grown(stand, days, pace))


def planted(stand: PlantMass, one: Dated, plant: str, pace: float | None) -> PlantMass:
    """After some were put in (above zero) or taken out; where no weight was said, none is known any more.

    The ``pace`` is in days for a doubling.
    """
    if one.entry.value is None or stand.left_g is None:
        return stand._replace(left_g=None, now_g=None)
    before = grown(stand, one.days, pace)
    left, after = stand.left_g + one.value, before + one.value
    if after < 0:
        doubt = (f"More {plant_name(plant)} was taken out by the log than was there: "
                 "weigh what is left, and write it in the tank.")  # fmt: skip
        return PlantMass(max(0.0, left), None, one.days, doubt)
    return PlantMass(max(0.0, left), min(max(0.0, left), after), one.days, stand.doubt)


def cut(stand: PlantMass, one: Dated, plant: str, pace: float | None) -> PlantMass:
    """After a cut; one that took more than there can have been leaves the weight as listed, and says so.

    The ``pace`` is in days for a doubling.
    """
    if stand.now_g is None or stand.left_g is None or pace is None:
        return stand
    after = grown(stand, one.days, pace) - one.value
    if after >= 0:
        return PlantMass(stand.left_g, min(stand.left_g, after), one.days, stand.doubt)
    doubt = (f"More was cut off {plant_name(plant)} at once than its listed weight and growth allow: "
             "weigh it after a cut, and write it in the tank.")  # fmt: skip
    return PlantMass(stand.left_g, stand.left_g, one.days, doubt)
