"""Fills a calculator's form from a tank: by the table of fills, and by formula where a list is wanted."""

from collections.abc import Sequence
from typing import Any

from calculators.core.dates import read_date
from calculators.science.shelf.asked import day_asked
from calculators.science.shelf.engine_tank import cut_a_week, floats
from calculators.science.shelf.fills import FILLS
from calculators.science.shelf.latest import Latest, ago, latest_readings
from calculators.science.shelf.learned import DIGITS
from calculators.science.shelf.log import Log, log_of
from calculators.science.shelf.plants import plants
from calculators.science.shelf.reading import read_entries, read_tank
from calculators.science.shelf.tank import ShelfTank

TREND_READING = "nitrate_mg_l"
MOST_ROWS = 100
PERCENT = 100.0


class Filler:
    """What is known of one tank on one day."""

    def __init__(self, tank: ShelfTank, log: Log) -> None:
        self.tank, self.log = tank, log
        self.readings: dict[str, Latest] = latest_readings(log)

    def value(self, source: str) -> tuple[Any, str] | None:
        """What a source holds, and its origin in words; None where it holds nothing."""
        room, _, path = source.partition(".")
        if room == "reading":
            reading = self.readings.get(path)
            if reading is None or reading.is_old:
                return None
            return reading.value, f"{self.tank.name}, read {ago(reading.age_days)}"
        found = self.age(path) if room == "days_since" else self.field(path)
        return None if found is None else (found, f"from {self.tank.name}")

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
        measured = any("read" in words for _, words in found.values())
        return {**found, **constants} if measured else found


def fill(
    calculator: str,
    raw_tank: dict[str, Any],
    raw_entries: Sequence[dict[str, Any]],
    today: str | None,
) -> dict[str, Any]:
    """``{"fields": {input: value}, "from": {input: words}}`` for a calculator's form, metric.

    Raises ``BadInput`` for a tank or entries that cannot be read.
    """
    tank = read_tank(raw_tank)
    filler = Filler(tank, log_of(tank.id, read_entries(raw_entries), day_asked(today)))
    found = filler.fields(calculator)
    if calculator in LISTS:
        words = f"from {tank.name}"
        made = LISTS[calculator](filler)
        found |= {key: (value, words) for key, value in made.items() if value not in (None, [])}
    return {
        "fields": {key: value for key, (value, _) in found.items()},
        "from": {key: words for key, (_, words) in found.items()},
    }


def forecast_lists(filler: Filler) -> dict[str, Any]:
    """The plants of a tank as the forecast takes them: those weighed whose growth a record tells."""
    made = []
    for held in filler.tank.plants or []:
        facts = plants().get(held.plant)
        if facts and facts.doubling_days and held.wet_g is not None:
            made.append({"name": facts.name, "wet_g": held.wet_g,
                         "doubling_days": facts.doubling_days, "floating": facts.floating})  # fmt: skip
    return {"plants": made}


def stock_lists(filler: Filler) -> dict[str, Any]:
    """The animals of a tank as stocking takes them; their length is the keeper's to give."""
    held = filler.tank.animals or []
    return {"animals": [{"kind": one.animal, "count": one.count_} for one in held if one.count_]}


def pick_lists(filler: Filler) -> dict[str, Any]:
    """The kinds of animals of a tank."""
    return {"animals": [one.animal for one in filler.tank.animals or []]}


def trend_lists(filler: Filler) -> dict[str, Any]:
    """The latest readings of nitrate and the changes between them, by days from the first."""
    readings = filler.log.readings(TREND_READING)[-MOST_ROWS:]
    if not readings:
        return {}
    start = readings[0].days
    changes = [one for one in filler.log.of("change") if one.days >= start]
    return {
        "readings": [{"day": round(one.days - start, 2), "value": one.value} for one in readings],
        "changes": [{"day": round(one.days - start, 2), "percent": one.value} for one in changes],
    }


def balance_figures(filler: Filler) -> dict[str, Any]:
    """What floats and what is cut: the cover last read on the tank's surface, and the log's own trims.

    Where no cut was ever logged, nobody knows how much is cut, and none is filled in.
    """
    held, surface = filler.tank.plants or [], filler.tank.surface_cm2
    cover = filler.value("reading.cover_percent")
    area = surface * cover[0] / PERCENT if surface and cover else None
    if area is None and held and not any(map(floats, held)):
        area = 0.0
    # What floats is thinned, and counted by its area.
    cut = cut_a_week(filler.log, "trim") if filler.log.of("trim") else None
    return {
        "floater_area_cm2": None if area is None else float(f"{area:.{DIGITS}g}"),
        "trimmings_g_week": None if cut is None else float(f"{cut:.{DIGITS}g}"),
    }


LISTS = {
    "nitrogen-balance": balance_figures,
    "nitrogen-forecast": forecast_lists,
    "stocking": stock_lists,
    "pick": pick_lists,
    "trend": trend_lists,
}
