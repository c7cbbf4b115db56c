"""What to do first when ammonia or nitrite harms: words, and where to go on."""

from collections.abc import Sequence

from calculators.core.result import Link, Note
from calculators.core.wording import DANGER_PAGE
from calculators.nitrogen_forecast.outlook import NITRITE_WATCH_MG_N_L
from calculators.nitrogen_forecast.run_harm import HarmfulReading
from calculators.nitrogen_forecast.water_advice import (
    A_QUARTER_DAILY,
    A_THIRD,
    hardness_known,
    how_to_change,
)
from calculators.science.animals.reading_steps import NITRATE, NITRITE, asked_beside_ammonia
from calculators.science.nitrogen.forecast_tank import Tank
from calculators.science.water.air_and_ammonia import BIND_BEFORE_AIR, air_kills

MOST_READ_MG_L = 50.0  # the most that the ammonia calculators take
LARGEST_CHANGE_PERCENT = 33.0  # "a third", as the words say


def next_hour(harms: Sequence[HarmfulReading], tank: Tank, nitrate_kills: bool = False) -> Note:
    """What to do against the ammonia and nitrite found, at once where they are read now.

    Where ``nitrate_kills`` too, water is changed in the smaller parts that it asks for.
    """
    now = any(harm.is_now for harm in harms)
    when = "Now, within the hour" if now else "When a test shows it, within the hour"
    # where nitrite alone harms, a change must still not free the ammonia that stands beside it
    ammonia = largest(harms, "ammonia") or tank.ammonia_mg_n_l
    asking = [NITRITE] if largest(harms, "nitrite") > 0 else []
    kills = [NITRITE[0]] if any(kills_by_nitrite(harm) for harm in harms) else []
    asked = asked_beside_ammonia([*asking, NITRATE] if nitrate_kills else asking, kills)
    usual = A_QUARTER_DAILY if nitrate_kills else A_THIRD
    binds = air_kills(ammonia, tank.ph, tank.kh_dh, tank.temperature_c)
    air, before = ("", f" {BIND_BEFORE_AIR}") if binds else (", add air", "")
    text = (
        f"{when}: take out leftovers and anything dead, stop feeding{air}, and leave the filter "
        f"running and unwashed.{before} {how_to_change(ammonia, tank, usual, asked)} Test again in the "
        "evening and each morning."
    )
    return Note("danger", text, links=links(ammonia, largest(harms, "nitrite"), tank))


def kills_by_nitrite(harm: HarmfulReading) -> bool:
    """Whether nitrite that is read now kills, so that its change does not wait for matched water."""
    return harm.reading == "nitrite" and harm.is_now and harm.band == "deadly"


def largest(harms: Sequence[HarmfulReading], reading: str) -> float:
    """The largest value of one reading among the harms; 0 where it is none of them.

    It is in the unit of its line, mg N/L for ammonia and nitrite.
    """
    return max((harm.value for harm in harms if harm.reading == reading), default=0.0)


def links(ammonia: float, nitrite: float, tank: Tank) -> tuple[Link, ...]:
    """The page for the first hour, and calculators filled in with the largest figures.

    Both ``ammonia`` and ``nitrite`` are in mg N/L.
    """
    ways = [DANGER_PAGE]
    if ammonia > 0:
        ways += ammonia_links(min(ammonia, MOST_READ_MG_L), tank)
    if nitrite > NITRITE_WATCH_MG_N_L:
        change: dict[str, float | str] = {
            "what": "nitrite",
            "now_mg_l": nitrite,
            "tap_mg_l": 0.0,
            "target_mg_l": NITRITE_WATCH_MG_N_L,
            "max_change_percent": LARGEST_CHANGE_PERCENT,
            "volume_l": tank.volume_l,
            **hardness_known(tank),
        }
        ways.append(
            Link("How large a change for this nitrite", "calculators/water-change/", change)
        )
    return tuple(ways)


def ammonia_links(ammonia: float, tank: Tank) -> list[Link]:
    """How toxic it is, and how to change water with it; what is not known is left to be filled in.

    The ``ammonia`` is in mg N/L, ionised and not.
    """
    toxic: dict[str, float | str] = {
        "ammonia_mg_l": ammonia,
        "reported_as": "nitrogen",
        "ph": tank.ph,
        "temperature_c": tank.temperature_c,
    }
    change = toxic | {"volume_l": tank.volume_l} | hardness_known(tank)
    if tank.tap_ph is not None:
        change["tap_ph"] = tank.tap_ph
    return [
        Link("How toxic this ammonia is", "calculators/free-ammonia/", toxic),
        Link("How to change water with this ammonia", "calculators/ammonia-change/", change),
    ]
