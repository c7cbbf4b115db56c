"""How much water to change where ammonia shows, and in what way, by what the mix would hold."""

from typing import Literal, NamedTuple

from calculators.science.animals.reading_lines import standing
from calculators.science.water.ammonia import (
    ACT_NH3_MG_N_L,
    WATCH_NH3_MG_N_L,
    chronic_limit_mg_n_l,
    free_kills,
    rate,
)
from calculators.science.water.gentle import STEP_DH_A_DAY
from calculators.science.water.hardness_gap import bearable_percent, gaps_between, widest_dh
from calculators.science.water.readings_fit import fit_together
from calculators.science.water.water_mix import (
    Dissolved,
    State,
    Water,
    aired_state,
    closed_state,
    dissolved,
    mix,
)

Way = Literal[
    "change-now", "change-slowly", "match-first", "bind-first", "nothing", "read-again"
]  # fmt: skip

CHANGING: tuple[Way, ...] = ("change-now", "change-slowly")
WAITING: tuple[Way, ...] = ("match-first", "bind-first")

# At most 90 %: animals keep some of their own water.
STEP_PERCENT = 5.0
PERCENTS = tuple(STEP_PERCENT * step for step in range(19))
HALF_PERCENT = 50.0
# A model is right within a few per cent, a kit is not: what is below the act line must stay clear of it.
CLEAR_OF_ACT = 0.9 * ACT_NH3_MG_N_L
# Beyond it half of the water moves the hardness further than animals bear in a day.
KH_JUMP_DH = 100 / HALF_PERCENT * STEP_DH_A_DAY
MOST_PH_STEP = 1.0  # common practice, no source: beyond it fish are taken by the jump alone
ACID_PERCENT = (
    10.0  # common practice, no source: in water so acid that a quick rise harms by itself
)


class ChangeOutcome(NamedTuple):
    """What a change of so many per cent leads to: mixed with its gas, and once the gas has left."""

    percent: float
    at_once: State
    later: State
    total_mg_n_l: float


class Choice(NamedTuple):
    """The way, the change to make now (0: none yet), and what the choice rests on.

    ``best_percent`` has the lowest free ammonia later; ``largest_percent`` is the largest of which
    no smaller one is worse than no change, 0 where something else comes first.
    """

    way: Way
    percent: float
    best_percent: float
    largest_percent: float
    now: State
    aired: State


def outcome(tank: Water, tap: Water, percent: float) -> ChangeOutcome:
    """What a change of so many per cent leads to."""
    return outcomes(tank, tap, (percent,))[0]


def outcomes(
    tank: Water, tap: Water, percents: tuple[float, ...] = PERCENTS
) -> list[ChangeOutcome]:
    """What each change leads to; where no ``percents`` (of the tank, %) are named, every step of them."""
    ours, theirs = dissolved(tank), dissolved(tap)
    return [mixed_outcome(tank, tap, ours, theirs, percent) for percent in percents]


def mixed_outcome(
    tank: Water, tap: Water, ours: Dissolved, theirs: Dissolved, percent: float
) -> ChangeOutcome:
    """What a change of so many per cent leads to; ``ours`` and ``theirs`` are what the waters hold."""
    share = percent / 100
    mixed = mix(ours, theirs, share)
    total = tank.ammonia_mg_n_l + share * (tap.ammonia_mg_n_l - tank.ammonia_mg_n_l)
    return ChangeOutcome(percent, closed_state(mixed), aired_state(mixed), total)


def choose(tank: Water, tap: Water, steps: list[ChangeOutcome]) -> Choice:
    """Choose the way, so that no advised change takes free ammonia to the act line from below it.

    ``steps`` are the ``outcomes`` of the two waters.
    """
    allowed = [step for step in steps[1:] if is_allowed(step, steps) and is_gentle(step, steps)]
    best = min([steps[0], *allowed], key=lambda step: step.later.nh3_mg_n_l)
    percent = single_change([step.percent for step in allowed], steps[0], tank, tap)
    way = way_of(percent, steps[0], tank, tap)
    largest = unbroken([step.percent for step in steps[1:] if is_no_worse(step, steps)])
    return Choice(
        way,
        percent if way in CHANGING else 0.0,
        best.percent,
        0.0 if way in WAITING else largest,
        steps[0].at_once,
        steps[0].later,
    )


def choose_by_readings(tank: Water, tap: Water, steps: list[ChangeOutcome]) -> Choice:
    """The same by the keeper's own readings: none of the ways where those of one water do not fit.

    ``steps`` are the ``outcomes`` of the two waters.
    """
    choice = choose(tank, tap, steps)
    if misfits(tank, tap) and tank.ammonia_mg_n_l > 0:
        return choice._replace(way="read-again", percent=0.0, best_percent=0.0, largest_percent=0.0)
    return choice


def misfits(*waters: Water) -> list[Water]:
    """The waters whose pH and KH cannot both be right."""
    return [one for one in waters if not fit_together(one.ph, one.kh_dh, one.temperature_c)]


def is_allowed(step: ChangeOutcome, steps: list[ChangeOutcome]) -> bool:
    """Whether a change is no worse than none, and brings nothing to the act line from below it.

    One that raises the ammonia altogether is worse, however little of it is free today: less carbonate
    hardness frees less of it, and holds the pH less.
    """
    now, later = steps[0].at_once.nh3_mg_n_l, step.later.nh3_mg_n_l
    stays = later <= now or later < CLEAR_OF_ACT or free_kills(now)
    return stays and step.total_mg_n_l <= steps[0].total_mg_n_l and is_no_worse(step, steps)


def is_gentle(step: ChangeOutcome, steps: list[ChangeOutcome]) -> bool:
    """Whether a change leaves the pH where animals follow it at once; where free ammonia kills, that is the
    lesser harm.
    """
    now = steps[0].at_once
    return free_kills(now.nh3_mg_n_l) or abs(step.at_once.ph - now.ph) <= MOST_PH_STEP


def is_no_worse(step: ChangeOutcome, steps: list[ChangeOutcome]) -> bool:
    """Whether a change is no worse than none, on the way through every smaller share too.

    While a tank fills, its water passes through every smaller share of new water before gas can
    leave. Later it is set beside the same tank without a change, once its own gas has left.
    """
    now, still = steps[0].at_once.nh3_mg_n_l, steps[0].later.nh3_mg_n_l
    passed = max(smaller.at_once.nh3_mg_n_l for smaller in steps if smaller.percent <= step.percent)
    return passed <= max(now, WATCH_NH3_MG_N_L) and step.later.nh3_mg_n_l <= max(now, still)


def single_change(percents: list[float], none: ChangeOutcome, tank: Water, tap: Water) -> float:
    """The change to make now, %: half where it may be, a gentle one where hardness differs; 0 if none.

    In water so acid that it harms only a little is changed, unless free ammonia kills already. So it is
    where new water has far other hardness, carbonate or general; where free ammonia kills, no more than
    the least that helps soon. Those that may be made are ``percents``.
    """
    kills = free_kills(none.at_once.nh3_mg_n_l)
    if not kills and standing("ph", tank.ph).side == "low":
        return max((percent for percent in percents if percent <= ACID_PERCENT), default=0.0)
    large = [percent for percent in percents if 25 <= percent <= 75]
    gaps = gaps_between(tank, tap)
    far, most = widest_dh(gaps) > KH_JUMP_DH, bearable_percent(gaps)
    if large and not far:
        return min(large, key=lambda percent: abs(percent - HALF_PERCENT))
    if large and kills:
        return max((percent for percent in large if percent <= most), default=min(large))
    most = most if far and not kills else 25
    return max((percent for percent in percents if percent < 25 and percent <= most), default=0.0)


def way_of(percent: float, none: ChangeOutcome, tank: Water, tap: Water) -> Way:
    """Name the way for that change."""
    if is_low(tank.ammonia_mg_n_l, tank, none.at_once) and is_low(
        tank.ammonia_mg_n_l, tank, none.later
    ):
        return "nothing"
    if percent:
        return "change-now" if percent >= 25 else "change-slowly"
    own_gas = none.later.nh3_mg_n_l > max(none.at_once.nh3_mg_n_l, WATCH_NH3_MG_N_L)
    return "bind-first" if own_gas or tap.ammonia_mg_n_l > 0 else "match-first"


def is_low(total_mg_n_l: float, tank: Water, state: State) -> bool:
    """Whether ammonia rates low in a state, by its free part and by the criterion for 30 days."""
    chronic = chronic_limit_mg_n_l(state.ph, tank.temperature_c)
    return rate(total_mg_n_l / chronic, state.nh3_mg_n_l) == "low"


def unbroken(percents: list[float]) -> float:
    """The largest change of which every smaller step may be made too.

    It is in percent, as are those that may be made, ``percents``.
    """
    largest = 0.0
    while largest + STEP_PERCENT in percents:
        largest += STEP_PERCENT
    return largest
