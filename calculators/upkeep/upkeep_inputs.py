"""What the upkeep calculator asks: the tanks, and what comes round in each."""

from typing import Annotated, NamedTuple

from calculators.core.form_hints import Preset, Presets, Step, Suggest
from calculators.core.quantities import Days, Interval, Minutes
from calculators.core.quantity import Assumed, Help, Label, Possible

EveryDays = Annotated[Interval, Possible(1, 365), Step(1)]
Since = Annotated[Days, Possible(0, 365), Step(1)]
MinutesEach = Annotated[Minutes, Step(5)]
NEW_PLANT = {"name": "New plant", "trim_every_days": 14.0, "minutes": 10.0}
NEW_TANK = {"name": "New tank", "change_every_days": 7.0, "change_minutes": 20.0}
ANOTHER_PLANT = Presets((Preset("Another plant", NEW_PLANT),))
ANOTHER_TANK = Presets((Preset("Another tank", NEW_TANK),))


class PlantRound(NamedTuple):
    """A plant that is trimmed again and again."""

    name: Annotated[str, Label("Plant"), Suggest("plants")]
    trim_every_days: Annotated[EveryDays, Label("Trim every")]
    minutes: Annotated[MinutesEach, Label("Minutes each time")]
    days_since_trim: Annotated[Since, Label("Last trimmed, days ago"), Assumed()] = 0.0


class TankRound(NamedTuple):
    """A tank and what comes round in it."""

    name: Annotated[str, Label("Tank")]
    plants: Annotated[list[PlantRound], Label("Plants to trim"), ANOTHER_PLANT] = []
    change_every_days: Annotated[
        EveryDays | None, Label("Change water every"), Help("Empty for no changes.")
    ] = None
    change_minutes: Annotated[MinutesEach, Label("Minutes for a change"), Assumed()] = 0.0
    floaters_minutes_week: Annotated[MinutesEach, Label("Floaters, minutes a week"), Assumed()] = (
        0.0
    )
    days_since_change: Annotated[Since, Label("Last changed, days ago"), Assumed()] = 0.0
