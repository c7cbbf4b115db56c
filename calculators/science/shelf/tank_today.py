"""What lives in a tank now: its lists, with what was logged in, out, dead and cut since they were written.

Everyone who asks what lives in a tank asks here. A row is as its keeper wrote it until an entry of the log
is later than its writing; where nobody knows when it was written, every entry counts.
"""

from typing import NamedTuple

from calculators.science.shelf.living_animals import animals_now
from calculators.science.shelf.living_plants import plants_now
from calculators.science.shelf.log import Log
from calculators.science.shelf.shelf_tank import ShelfTank


class TankToday(NamedTuple):
    """A tank with its lists of today, its log, and what of the two does not add up, a sentence each."""

    tank: ShelfTank
    log: Log
    doubts: tuple[str, ...]


def tank_today(tank: ShelfTank, log: Log) -> TankToday:
    """The tank as it lives on the log's day."""
    plants, animals = plants_now(tank, log), animals_now(tank, log)
    return TankToday(
        tank._replace(plants=plants.plants, animals=animals.animals),
        log._replace(left_g=plants.left_g),
        (*animals.doubts, *plants.doubts),
    )
