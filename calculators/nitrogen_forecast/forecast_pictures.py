"""The curves of a forecast, and how they are drawn: what stands together, lines, bands, marks."""

from collections.abc import Sequence

from calculators.core.quantities import OUNCE
from calculators.core.result import Line, Mark, Series
from calculators.nitrogen_forecast.ensemble import Band
from calculators.nitrogen_forecast.outlook import NITRITE_ACT_MG_N_L, NITRITE_WATCH_MG_N_L
from calculators.science.animals.line_words import CAN_KILL, HARMS
from calculators.science.animals.reading_lines import LINES
from calculators.science.animals.toxic_lines import (
    least_deadly_ammonia_mg_n_l,
    least_harmful_ammonia_mg_n_l,
)
from calculators.science.nitrogen.daily_record import DayValues as Moment
from calculators.science.nitrogen.forecast_tank import Event, Tank
from calculators.science.nitrogen.plant_constants import CRITICAL_N_PERCENT

TOXIC = "Ammonia and nitrite"
COVER = "Floaters: cover, and the light below"
WORDS = {
    "change": "change",
    "trim": "trim",
    "feed": "feed",
    "dose": "dose",
    "dark": "no light",
    "die-off": "die-off",
}


def drawn(
    moments: Sequence[Moment], around: Band | None, tank: Tank, events: Sequence[Event]
) -> dict[str, Series]:
    """The curves; a day on which something is done has a point before and one after it."""
    days = [moment.day for moment in moments]
    done = tuple(
        Mark(moment.day, WORDS[moment.kind]) for moment in events if moment.day <= days[-1]
    )

    def curve(label: str, unit: str, values: list[float]) -> Series:
        return Series(label, unit, "Day", "days", days, values)

    curves = {
        "ammonia": curve(
            "Total ammonia nitrogen", "mg N/L", [moment.ammonia for moment in moments]
        )._replace(picture=TOXIC, short="ammonia", lines=ammonia_lines(tank)),
        "nitrite": curve(
            "Nitrite nitrogen", "mg N/L", [moment.nitrite for moment in moments]
        )._replace(picture=TOXIC, short="nitrite", lines=NITRITE_LINES),
        "nitrate": curve("Nitrate", "mg/L", [moment.nitrate for moment in moments])._replace(
            picture="Nitrate, as NO₃",
            lines=NITRATE_LINES,
            marks=done,
        ),
        "plant_nitrogen_percent": curve(
            "Nitrogen in the hungriest plant",
            "% of dry mass",
            [moment.plant_nitrogen_percent for moment in moments],
        )._replace(lines=(BROWNING,), marks=done),
        "plant_mass": curve("Plants, wet", "g", [moment.plant_mass for moment in moments])._replace(
            us=OUNCE, subject="The plants' wet weight"
        ),
        "light_below_floaters": curve(
            "Light below the floaters", "%", [moment.light_below_floaters for moment in moments]
        )._replace(picture=COVER, short="light"),
        "floating_cover": curve(
            "Floating cover", "%", [moment.floating_cover for moment in moments]
        )._replace(picture=COVER, short="cover"),
        "kh_drift": curve(
            "Drift of carbonate hardness", "°dH", [moment.kh_drift for moment in moments]
        ),
        "kh": curve("Carbonate hardness (KH)", "°dH", [moment.kh for moment in moments]),
        "plant_nitrogen_taken": curve(
            "Nitrogen that the plants hold", "mg", [moment.plant_nitrogen_mg for moment in moments]
        ),
    }
    if around:
        curves |= edges(curves, "nitrate", around.low, around.high)
        curves |= edges(curves, "plant_nitrogen_percent", around.store_low, around.store_high)
    return curves


def edges(
    curves: dict[str, Series], key: str, low: list[float], high: list[float]
) -> dict[str, Series]:
    """The edges of the band around a curve.

    Both ``low`` and ``high`` hold as many values as the curve, in its unit. The two come back by the
    curve's key and which edge it is.
    """
    middle = curves[key]._replace(edge_of=key, lines=(), marks=())
    return {
        f"{key}_low": middle._replace(label=f"{middle.label}, at least", y=low),
        f"{key}_high": middle._replace(label=f"{middle.label}, at most", y=high),
    }


BROWNING = Line("leaves brown below this", CRITICAL_N_PERCENT, always=True)
NITRATE_LINES = (
    Line(HARMS, LINES["nitrate_mg_l"].harmful_high or 0.0),
    Line(CAN_KILL, LINES["nitrate_mg_l"].deadly_high or 0.0),
)
NITRITE_LINES = (
    Line(f"nitrite: {HARMS}", NITRITE_WATCH_MG_N_L, always=True),
    Line(f"nitrite: {CAN_KILL}", NITRITE_ACT_MG_N_L),
)


def ammonia_lines(tank: Tank) -> tuple[Line, ...]:
    """From how much total ammonia nitrogen on it harms and can kill, at this tank's pH and warmth.

    The line that harms is the one that the page of a kept tank draws.
    """
    return (
        Line(f"ammonia: {HARMS}", least_harmful_ammonia_mg_n_l(tank.ph, tank.temperature_c)),
        Line(f"ammonia: {CAN_KILL}", least_deadly_ammonia_mg_n_l(tank.ph, tank.temperature_c)),
    )
