"""Lists and sums of a tank for calculators' forms: what a plain table of fields cannot fill in."""

from typing import Any

from calculators.science.fitting.enough_readings import MOST_DAYS_BACK
from calculators.science.shelf.engine_tank import cut_a_week, floats
from calculators.science.shelf.learned import LEARNED_DIGITS
from calculators.science.shelf.recorded_plants import plants
from calculators.shelf.filler import Filler

TREND_READING = "nitrate_mg_l"
MOST_ROWS = 100
PERCENT = 100.0


def forecast_lists(filler: Filler) -> dict[str, Any]:
    """The plants of a tank as the forecast takes them, and the changes of water of the weeks before.

    Of plants those that are weighed and whose growth a record tells.
    """
    made = []
    for held in filler.tank.plants or []:
        facts = plants().get(held.plant)
        if facts and facts.doubling_days and held.wet_g is not None:
            made.append({"name": facts.name, "wet_g": held.wet_g,
                         "doubling_days": facts.doubling_days, "floating": facts.floating})  # fmt: skip
    log = filler.log
    changes = [
        {"day": round(min(0.0, one.days - log.end), 2), "percent": one.value}
        for one in log.of("change")
        if log.days_ago(one.day) <= MOST_DAYS_BACK
    ]
    return {"plants": made, "past_changes": changes[-MOST_ROWS:]}


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
        "floater_area_cm2": None if area is None else float(f"{area:.{LEARNED_DIGITS}g}"),
        "trimmings_g_week": None if cut is None else float(f"{cut:.{LEARNED_DIGITS}g}"),
    }


LISTS = {
    "nitrogen-balance": balance_figures,
    "nitrogen-forecast": forecast_lists,
    "stocking": stock_lists,
    "pick": pick_lists,
    "trend": trend_lists,
}
