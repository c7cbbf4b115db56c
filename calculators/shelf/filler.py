"""What is known of one tank on one day, for the fields of calculators' forms."""

from typing import Any

from calculators.core.dates import read_date
from calculators.science.shelf.freshest import freshest
from calculators.science.shelf.latest import Latest, latest_readings, readings_ahead
from calculators.science.shelf.log import Log
from calculators.science.shelf.shelf_tank import ALSO_READ, ShelfTank
from calculators.science.shelf.tank_today import tank_today
from calculators.shelf.fills import FILLS


class Filler:
    """What is known of one tank on one day."""

    def __init__(self, tank: ShelfTank, log: Log) -> None:
        self.tank, self.log, _ = tank_today(tank, log)
        self.is_as_written = (tank.plants, tank.animals) == (self.tank.plants, self.tank.animals)
        # One that is dated later than today is the one that was entered last: it says its date.
        self.readings: dict[str, Latest] = latest_readings(log) | readings_ahead(log)

    def value(self, source: str) -> tuple[Any, str] | None:
        """What a source holds, and its origin in words; None where it holds nothing."""
        room, _, path = source.partition(".")
        if room == "reading":
            return self.reading(path)
        found = self.age(path) if room == "days_since" else self.field(path)
        return None if found is None else (found, f"from {self.tank.name}")

    def reading(self, what: str) -> tuple[float, str] | None:
        """A reading of use, or the fresher of it and the tank's own figure; None where neither is known."""
        latest = self.readings.get(what)
        if what in ALSO_READ and self.field(what) is not None:
            known = freshest(what, self.tank, self.readings)
            latest = known.reading if known else None
        elif latest is not None and latest.is_old:
            latest = None
        if latest is None:
            return None
        return latest.value, f"{self.tank.name}, {latest.when}"

    def field(self, path: str) -> Any:
        """A field of the tank; its litres also from its inside size."""
        if path == "net_l":
            return self.tank.volume_l
        found: Any = self.tank
        for part in path.split("."):
            found = getattr(found, part, None)
        return found

    def age(self, path: str) -> int | None:
        """The days since a day of the tank."""
        day = self.field(path)
        return None if day is None else self.log.days_ago(read_date(day))

    def fields(self, calculator: str) -> dict[str, tuple[Any, str]]:
        """The inputs that the table fills; a constant only beside something of the tank's."""
        found, constants = {}, {}
        for key, sources in FILLS.get(calculator, {}).items():
            if sources[0].startswith("="):
                constants[key] = sources[0][1:], f"goes with {self.tank.name}"
            elif held := next(filter(None, map(self.value, sources)), None):
                found[key] = held
        measured = any(", read " in words or ", dated " in words for _, words in found.values())
        return {**found, **constants} if measured else found
