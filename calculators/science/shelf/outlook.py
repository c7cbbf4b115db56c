"""A short forecast of a tank's nitrate, fitted to its readings: the one door to the nitrogen engine.

The growth of the plants is what nobody knows well, so the runs differ by it: each starts where the
readings of the last weeks start, and those that meet the readings are run on.
"""

from typing import Annotated, NamedTuple

from calculators.core.quantities import DaysAhead, LevelAhead
from calculators.core.quantity import Label
from calculators.science.conversions import DAYS_PER_WEEK
from calculators.science.nitrogen.constants import DENITRIFICATION_MG_M2_DAY
from calculators.science.nitrogen.simulate import COARSE, Outcome, simulate
from calculators.science.nitrogen.tank import Event, Plant, Rates, Tank
from calculators.science.shelf.entries import READINGS
from calculators.science.shelf.latest import USE_DAYS, Latest
from calculators.science.shelf.learned import learned_of
from calculators.science.shelf.log import Dated, Log
from calculators.science.shelf.plants import plant_name, plants
from calculators.science.shelf.tank import PlantHeld, ShelfTank

NITRATE = "nitrate_mg_l"
AHEAD_DAYS = 28
FIT_DAYS = 28  # of readings
CUT_DAYS = 42  # of what was cut
LEAST_READINGS, LEAST_SPAN_DAYS = 3, 10.0
PACES = (0.25, 0.5, 1.0, 1.6, 2.5)  # times what records or the log say of growth; judgement
NO_FEED_PROTEIN = 1.0  # percent; of no feed it is nothing
BETWEEN = 1.25  # how far a pace may lie from the next of the list that fits as well
NEAR_STEPS = 0.5  # of the kit's step: runs that miss by so much more than the best fit as well


class Outlook(NamedTuple):
    """Nitrate in four weeks, as NO3, from low to high, and the day on which plants run short (or None)."""

    days_to_shortage: Annotated[DaysAhead | None, Label("Plants run short in")]
    nitrate_in_28_days_mg_l: Annotated[LevelAhead, Label("Nitrate in 28 days")]
    low: Annotated[LevelAhead, Label("At least")]
    high: Annotated[LevelAhead, Label("At most")]
    fitted: Annotated[bool, Label("Fitted to the readings")]


class NoOutlook(NamedTuple):
    """Why there is no forecast: what is missing, in words."""

    missing: list[str]


def outlook(tank: ShelfTank, log: Log, readings: dict[str, Latest]) -> Outlook | NoOutlook:
    """The forecast, or what it lacks: nothing is guessed that the tank does not say."""
    missing = lacks(tank, log, readings)
    if missing:
        return NoOutlook(missing)
    now = model_tank(tank, log, readings)
    paces, fitted = fitting_paces(now, log)
    ahead = [run(now, [], AHEAD_DAYS, pace) for pace in paces]
    ends = [outcome.last.nitrate for outcome in ahead]
    short = ahead[0].record.hunger.first_day
    unread = NEAR_STEPS * READINGS[NITRATE].step  # the first reading itself is no surer
    return Outlook(short, ends[0], max(0.0, min(ends) - unread), max(ends) + unread, fitted)


def lacks(tank: ShelfTank, log: Log, readings: dict[str, Latest]) -> list[str]:
    """What the tank does not say that the forecast needs."""
    latest = readings.get(NITRATE)
    wanted = [
        ("its litres", tank.volume_l),
        ("the feed a week", tank.feed_g_week),
        ("the feed's protein", tank.protein_percent if tank.feed_g_week else 0.0),
        ("its change of water", tank.change and tank.change.percent),
        ("the nitrate of the new water", tank.tap and tank.tap.nitrate_mg_l),
        ("its plants", tank.plants),
        ("a temperature", warmth(tank, readings)),
        ("a pH", acidity(tank, readings)),
        ("a reading of nitrate of the last two weeks",
         latest if latest and latest.age_days <= USE_DAYS[NITRATE] else None),
    ]  # fmt: skip
    missing = [words for words, value in wanted if value is None]
    for held in tank.plants or []:
        if held.wet_g is None:
            missing.append(f"the weight of {plant_name(held.plant)}")
        elif pace_of(held, log) is None:
            missing.append(f"how fast {plant_name(held.plant)} grows")
    return missing


def warmth(tank: ShelfTank, readings: dict[str, Latest]) -> float | None:
    """The tank's temperature, as entered or as last read."""
    latest = readings.get("temperature_c")
    return latest.value if tank.temperature_c is None and latest else tank.temperature_c


def acidity(tank: ShelfTank, readings: dict[str, Latest]) -> float | None:
    """The tank's pH, as entered or as last read."""
    latest = readings.get("ph")
    return latest.value if tank.ph is None and latest else tank.ph


def pace_of(held: PlantHeld, log: Log) -> float | None:
    """The days in which a plant doubles: as learned here, else as its record says."""
    facts = plants().get(held.plant)
    return learned_of(held, log).doubling_days or (facts.doubling_days if facts else None)


def model_tank(tank: ShelfTank, log: Log, readings: dict[str, Latest]) -> Tank:
    """The tank as the engine takes it. Call only where nothing is missing."""
    assert tank.change is not None
    assert tank.tap is not None
    return Tank(
        volume_l=tank.volume_l or 0.0,
        feed_g_week=tank.feed_g_week or 0.0,
        protein_percent=tank.protein_percent or NO_FEED_PROTEIN,
        plants=tuple(
            Plant(held.plant, held.wet_g or 0.0, pace_of(held, log) or 1.0, floats(held))
            for held in tank.plants or []
        ),
        soil_area_cm2=tank.soil_area_cm2 or 0.0,
        denitrification_mg_n_m2_day=DENITRIFICATION_MG_M2_DAY,
        trimmings_g_week=cut_a_week(log),
        change_percent=tank.change.percent or 0.0,
        change_every_days=tank.change.every_days or DAYS_PER_WEEK,
        tap_nitrate_mg_l=tank.tap.nitrate_mg_l or 0.0,
        nitrate_mg_l=readings[NITRATE].value,
        ph=acidity(tank, readings) or 7.0,
        temperature_c=warmth(tank, readings) or 0.0,
        surface_cm2=tank.surface_cm2,
    )


def floats(held: PlantHeld) -> bool:
    """Whether a plant floats, by its record."""
    facts = plants().get(held.plant)
    return bool(facts and facts.floating)


def cut_a_week(log: Log) -> float:
    """What was cut and thinned a week of late, g wet."""
    lately = [one for one in log.of("trim", "thin") if log.days_ago(one.day) <= CUT_DAYS]
    return sum(one.value for one in lately) * DAYS_PER_WEEK / CUT_DAYS


def fitting_paces(now: Tank, log: Log) -> tuple[list[float], bool]:
    """The paces of growth whose runs meet the readings, the best first; without readings all of them."""
    lately = [one for one in log.readings(NITRATE) if log.days_ago(one.day) <= FIT_DAYS]
    if len(lately) < LEAST_READINGS or lately[-1].days - lately[0].days < LEAST_SPAN_DAYS:
        return sorted(PACES, key=lambda pace: abs(pace - 1)), False
    misses = {pace: miss(now, lately, log, pace) for pace in PACES}
    best = min(PACES, key=lambda pace: (misses[pace], abs(pace - 1)))
    allowed = misses[best] + NEAR_STEPS * READINGS[NITRATE].step
    others = [pace for pace in PACES if pace != best and misses[pace] <= allowed]
    return [best, *(others or (best / BETWEEN, best * BETWEEN))], True


def miss(now: Tank, lately: list[Dated], log: Log, pace: float) -> float:
    """By how much a run from the first reading on misses the others, the mean in mg/L."""
    start, span = lately[0].days, lately[-1].days - lately[0].days
    changes = [
        Event(one.days - start, "change", one.value)
        for one in log.of("change")
        if 0 <= one.days - start <= span
    ]
    past = now._replace(nitrate_mg_l=lately[0].value, change_percent=0.0)
    lines = run(past, changes, span, pace).record.lines
    return sum(
        abs(one.value - nearest(lines, one.days - start)) for one in lately[1:]
    ) / (len(lately) - 1)  # fmt: skip


def nearest(lines: list, day: float) -> float:  # type: ignore[type-arg]
    """Nitrate on the line nearest to a day."""
    found: float = min(lines, key=lambda line: abs(line.day - day)).nitrate
    return found


def run(tank: Tank, events: list[Event], days: float, pace: float) -> Outcome:
    """One run of the engine."""
    return simulate(tank, events, days, Rates(growth=pace), relative=COARSE)
