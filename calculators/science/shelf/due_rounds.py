"""What comes round in a tank: the change of water as the tank has it, trims, and thinning of what floats."""

from collections.abc import Iterable, Sequence
from datetime import date

from calculators.core.dates import read_date
from calculators.core.numbers import show_number
from calculators.science.conversions import DAYS_PER_WEEK
from calculators.science.growth.rounds import is_long_overdue
from calculators.science.growth.tasks import CHANGE, THIN
from calculators.science.shelf.due import ShelfRound
from calculators.science.shelf.harmful_readings import AMMONIA
from calculators.science.shelf.learned import learned_of
from calculators.science.shelf.log import Log
from calculators.science.shelf.recorded_plants import PlantFacts, plants
from calculators.science.shelf.shelf_tank import PlantHeld, ShelfTank
from calculators.science.shelf.tank_verdict import TankVerdict
from calculators.science.water.careful_change import NO_AMMONIA_MG_N_L

# Minutes that nobody gave: judgement. A change takes so long, and so long for each litre of it.
CHANGE_MINUTES, CHANGE_MINUTES_A_LITRE = 5.0, 0.7
COMMON_CHANGE_MINUTES = 20.0
TRIM_MINUTES, THIN_MINUTES = 10.0, 5.0
# What stands alone on a card or a ticked list must not send anybody to harm.
CHANGE_BY_FIRST_STEP = f"{CHANGE} only by the first step"
CHANGE_A_LITTLE = f"{CHANGE}, a little at a time"
SHOWS_AMMONIA = "Ammonia shows: see the first step before you change any water."
CAN_KILL = "A reading asks for more than the usual change, or for none: go by the first step."
UNREAD_AMMONIA = (
    "Ammonia may be the trouble, and nobody has read it: test it before you change any water."
)
LONG_OVERDUE = (
    "A round or more was missed, and old water may have drifted: test ammonia, nitrite, pH and KH first, "
    "and then change a little every day or two."
)


def rounds_of(tank: ShelfTank, log: Log, judged: TankVerdict) -> list[ShelfRound]:
    """What comes round in a tank."""
    found = [*change_round(tank, log, judged), *(plant_rounds(tank, log))]
    return sorted(found, key=lambda one: not one.is_change)


def change_round(tank: ShelfTank, log: Log, judged: TankVerdict) -> Iterable[ShelfRound]:
    """The change of water as the tank has it; none where it has none, or of nothing."""
    plan = tank.change
    if plan is None or not plan.every_days or plan.percent == 0:
        return
    done = [one.day for one in log.of("change") if one.value > 0]
    share = "" if plan.percent is None else f"{show_number(plan.percent)} % "
    why = f"{share}every {show_number(plan.every_days)} days, as this tank has it"
    task = CHANGE
    if not done:
        why += "; no change is in the log"
    elif is_long_overdue(plan.every_days, log.days_ago(done[-1])):
        task, why = CHANGE_A_LITTLE, f"{why}. {LONG_OVERDUE}"
    if reason := why_by_first_step(judged):
        task, why = CHANGE_BY_FIRST_STEP, reason
    last = done[-1] if done else None
    yield ShelfRound(task, plan.every_days, last, change_minutes(tank), why)


def why_by_first_step(judged: TankVerdict) -> str:
    """Why no usual change may be made now; empty where it may."""
    if any(value > NO_AMMONIA_MG_N_L for value in latest_values(judged, AMMONIA)):
        return SHOWS_AMMONIA
    if judged.verdict == "act" and any(harm.acts_at_once for harm in judged.harms):
        return CAN_KILL
    latest = judged.readings.get(AMMONIA)
    unread = latest is None or latest.is_old
    return UNREAD_AMMONIA if unread and (judged.deaths.asks or judged.young) else ""


def latest_values(judged: TankVerdict, what: str) -> tuple[float, ...]:
    """The latest readings of one thing, every one of that moment; empty where it was never read.

    They are in its unit.
    """
    latest = judged.readings.get(what)
    return latest.values if latest else ()


def change_minutes(tank: ShelfTank) -> float:
    """The minutes of one change, by the litres where they are known."""
    percent = tank.change.percent if tank.change else None
    if tank.volume_l is None or percent is None:
        return COMMON_CHANGE_MINUTES
    return CHANGE_MINUTES + CHANGE_MINUTES_A_LITRE * tank.volume_l * percent / 100


def plant_rounds(tank: ShelfTank, log: Log) -> Iterable[ShelfRound]:
    """Trims of the plants that stand, and one weekly thinning where any floats."""
    floating = []
    for held in tank.plants or []:
        facts = plants().get(held.plant)
        if facts and facts.floating:
            floating.append(held)
        elif made := trim_round(held, facts, log):
            yield made
    if floating:
        cuts = [learned_of(held, log) for held in floating]
        last = max((one.last.day for one in cuts if one.last), default=None)
        own = [one.every_days for one in cuts if one.every_days]
        every = max(1.0, min(own)) if own else DAYS_PER_WEEK
        why = (
            f"you thin them about every {show_number(every, 2)} days"
            if own
            else "weekly, as a rule"
        )
        yield ShelfRound(THIN, every, last or began(floating, log), THIN_MINUTES, why)


def began(held: Sequence[PlantHeld], log: Log) -> date | None:
    """From when on a cut would be in the log: since the plant is there, and the log; None without a log."""
    if not log.entries:
        return None
    since = [read_date(one.since) for one in held if one.since]
    return min(log.today, max([log.entries[0].day, *since]))


def trim_round(held: PlantHeld, facts: PlantFacts | None, log: Log) -> ShelfRound | None:
    """The trims of one plant: as often as it was really cut, else as its record says; None where unknown."""
    known = learned_of(held, log)
    by_record = facts.trim_every_days if facts else None
    every = known.every_days or by_record
    if every is None:
        return None
    name, days = facts.name if facts else held.plant, show_number(every, 2)
    whose = "you cut it about every" if known.every_days else "its record says about every"
    last = known.last.day if known.last else began([held], log)
    minutes = (facts.trim_minutes if facts else None) or TRIM_MINUTES
    return ShelfRound(f"trim {name}", max(1.0, every), last, minutes, f"{whose} {days} days")
