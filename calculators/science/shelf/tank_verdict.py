"""How a tank stands in one word and one sentence: animals first, and never calm where nothing was read."""

from typing import Literal, NamedTuple, get_args

from calculators.core.dates import read_date
from calculators.core.quantity import Choices
from calculators.core.result import Level
from calculators.core.wording import upper
from calculators.science.shelf.closed_cover import closed_cover
from calculators.science.shelf.contradictions import contradiction_words, contradictions
from calculators.science.shelf.deaths import LATELY_DAYS, LONGER_DAYS, Deaths, deaths
from calculators.science.shelf.entries import READINGS
from calculators.science.shelf.freshest import figure_now
from calculators.science.shelf.harmful_readings import (
    AMMONIA,
    OXYGEN,
    ReadingOutside,
    ammonia_water,
    harms,
    worst_first,
)
from calculators.science.shelf.latest import (
    READ_WITHIN_DAYS,
    USE_DAYS,
    Latest,
    ago,
    dated,
    latest_readings,
)
from calculators.science.shelf.log import Dated, Log
from calculators.science.shelf.shelf_tank import ShelfTank
from calculators.science.water.air_and_ammonia import BIND_BEFORE_AIR, air_kills
from calculators.science.water.careful_change import NO_AMMONIA_MG_N_L

Verdict = Literal["calm", "watch", "act", "unknown"]
WORST_FIRST: tuple[Verdict, ...] = ("act", "watch", "unknown", "calm")
LEVEL: dict[Verdict, Level] = {
    "calm": "info", "watch": "caution", "act": "danger", "unknown": "caution",
}  # fmt: skip
VERDICT_WORDS = Choices(("calm", "watch", "act now", "not known"), tuple(LEVEL.values()))
assert tuple(LEVEL) == get_args(Verdict)
# How long new soil may give off ammonia: common practice, no source, and the model's own soil.
YOUNG_SOIL_DAYS = 42
# The first steps of the page for animals in danger, in its own words; a test holds the two together.
FIRST_HOUR = ("Make the water move.", "Stop feeding.")
FIRST_TESTS = "ammonia, nitrite, pH, temperature"


class TankVerdict(NamedTuple):
    """A verdict with its sentence and what it rests on."""

    verdict: Verdict
    sentence: str
    readings: dict[str, Latest]
    harms: list[ReadingOutside]
    deaths: Deaths
    young: bool  # animals over young soil whose ammonia was not read lately
    torn: list[Latest]  # readings that contradict themselves
    first_hour: tuple[str, ...] = FIRST_HOUR  # what comes before all else where it acts


def judge(tank: ShelfTank, log: Log) -> TankVerdict:
    """Judge a tank by its latest readings, its deaths and the age of its soil.

    Where entries are of a later day, the clock is behind or a date is wrong, and nobody knows which: the
    worse counts of what holds today and of what holds on the day of the newest entry, and nothing is calm.
    """
    today = judge_by_day(tank, log)
    if log.newest is None:
        return today
    return worse_of(judge_by_day(tank, log.up_to_newest()), today, clock_words(log.newest))


def judge_by_day(tank: ShelfTank, log: Log) -> TankVerdict:
    """Judge a tank as on the day of its log."""
    readings = latest_readings(log)
    found, died = harms(tank, readings), deaths(tank, log)
    torn = contradictions(readings, ammonia_water(tank, readings), found)
    young = is_untested_young(tank, log, readings)
    recent = any(one.age_days <= READ_WITHIN_DAYS for one in readings.values())
    first = first_hour(tank, readings, found, died)
    counted = found if recent else []
    closed = closed_cover(tank, log, readings)
    verdict, sentence = first_that_holds(readings, counted, died, young, closed, recent, first)
    if verdict == "unknown" and found:
        sentence = f"{sentence[:-1]}, and then {found[0].words()}."
    if torn:
        said = contradiction_words(torn[0])
        verdict, sentence = (
            ("watch", said) if verdict == "calm" else (verdict, f"{sentence} {said}")
        )
    return TankVerdict(verdict, sentence, readings, found, died, young, torn, first)


def first_hour(
    tank: ShelfTank, readings: dict[str, Latest], found: list[ReadingOutside], died: Deaths
) -> tuple[str, ...]:
    """The first steps: air, but where air alone frees ammonia that kills, and nobody is short of oxygen."""
    if died.asks or any(harm.reading.what == OXYGEN for harm in found) or AMMONIA not in readings:
        return FIRST_HOUR
    water, kh = ammonia_water(tank, readings), figure_now("kh_dh", tank, readings)
    if not air_kills(readings[AMMONIA].value, water.ph, kh, water.temperature_c):
        return FIRST_HOUR
    return (BIND_BEFORE_AIR, *FIRST_HOUR[1:])


def worse_of(then: TankVerdict, today: TankVerdict, clock: str) -> TankVerdict:
    """The worse of two days' verdicts with all that harms on either; ``clock`` says why there are two."""
    worse = min(then, today, key=lambda one: WORST_FIRST.index(one.verdict))
    named = {one.reading.what for one in then.harms}
    both = [*then.harms, *(one for one in today.harms if one.reading.what not in named)]
    known = {
        what: one._replace(values=one.values + today.readings[what].values)
        if what in today.readings
        else one
        for what, one in then.readings.items()
    }
    found = worse._replace(
        readings=known,
        harms=worst_first(both),
        deaths=then.deaths if then.deaths.asks else today.deaths,
        young=then.young or today.young,
    )
    if worse.verdict in ("unknown", "calm"):
        return found._replace(verdict="unknown", sentence=f"Not known: {clock}.")
    return found._replace(sentence=f"{worse.sentence} {upper(clock)}.")


def clock_words(newest: Dated) -> str:
    """That the newest entry is dated later than today, and what to do, without a full stop."""
    named = "reading" if newest.entry.kind == "reading" else "entry of the log"
    return (
        f"the newest {named} is dated {dated(newest.day)}, "
        "later than this device's clock: check the clock"
    )


def first_that_holds(
    readings: dict[str, Latest],
    found: list[ReadingOutside],
    died: Deaths,
    young: bool,
    closed: str,
    recent: bool,
    first: tuple[str, ...] = FIRST_HOUR,
) -> tuple[Verdict, str]:
    """The worst that is to be said of a tank; ``closed`` are the words on a closed surface, if it is one."""
    at_once = next((harm for harm in found if harm.acts_at_once), None)
    if at_once is not None:
        between = "; " if any("," in step for step in first) else ", "
        steps = between.join(f"{step[0].lower()}{step[1:-1]}" for step in first)
        return "act", f"{upper(at_once.words())}: {steps}."
    if died.asks == "act":
        return "act", f"{upper(died_words(died))}: look at the others, and test {FIRST_TESTS} now."
    if found:
        return "watch", f"{upper(found[0].words())}."
    if died.asks == "watch":
        return (
            "watch",
            f"{upper(died_words(died))}: look at the others, and test ammonia and nitrite.",
        )
    if shown := shown_ammonia(readings):
        return (
            "watch",
            f"{upper(shown)}, where a settled tank reads none: little of it is toxic now, and a change of "
            "water may alter that. Look for what rots, feed less, and test daily.",
        )
    if young:
        return "watch", f"The soil is young and {unread(readings)}: test ammonia today."
    if closed:
        return "watch", f"{upper(closed)}."
    if not recent:
        return "unknown", f"Not known: {nothing_lately(readings)}."
    return "calm", f"Calm: no reading harms. {upper(last_read(readings))}."


def shown_ammonia(readings: dict[str, Latest]) -> str:
    """The ammonia that shows and harms nobody yet, with when it was read; empty where none does."""
    latest = readings.get(AMMONIA)
    if latest is None or latest.is_old or max(latest.values) <= NO_AMMONIA_MG_N_L:
        return ""
    one = READINGS[AMMONIA]
    return f"{one.name} of {one.words(max(latest.values))}, {latest.when}"


def died_words(died: Deaths) -> str:
    """How many died, and within how long."""
    number, days = (died.lately, LATELY_DAYS) if died.lately else (died.longer, LONGER_DAYS)
    animals = "one animal" if number == 1 else f"{number} animals"
    return f"{animals} died in the last {days} days"


def nothing_lately(readings: dict[str, Latest]) -> str:
    """That nothing was read for long, or ever."""
    if not readings:
        return "nothing was ever read"
    least = min(one.age_days for one in readings.values())
    return (
        f"nothing was read in the last {READ_WITHIN_DAYS} days; the last reading was {ago(least)}"
    )


def unread(readings: dict[str, Latest]) -> str:
    """How long ammonia has not been read."""
    latest = readings.get(AMMONIA)
    return "ammonia was never read" if latest is None else f"ammonia was last {latest.when}"


def last_read(readings: dict[str, Latest]) -> str:
    """When the tank was last read, and what the animals' own tests say of it."""
    least = min(one.age_days for one in readings.values())
    latest = readings.get(AMMONIA)
    if latest is not None and not latest.is_old:
        return f"last read {ago(least)}"
    return f"last read {ago(least)}; {unread(readings)}"


def is_untested_young(tank: ShelfTank, log: Log, readings: dict[str, Latest]) -> bool:
    """Whether animals may live over new soil that nobody tested for ammonia within its use."""
    if tank.flooded_on is None or tank.animals == []:
        return False
    flooded = read_date(tank.flooded_on)
    if flooded > log.today or log.days_ago(flooded) > YOUNG_SOIL_DAYS:
        return False
    latest = readings.get(AMMONIA)
    return latest is None or latest.age_days > USE_DAYS[AMMONIA]
