"""Low, middle and high of the rates that nobody knows well, run side by side."""

import math
from collections.abc import Sequence
from typing import NamedTuple

from calculators.science.animals.reading_lines import edge_of
from calculators.science.animals.toxic_lines import least_urgent_ammonia_mg_n_l
from calculators.science.nitrogen.constants import AMMONIA_LEFT_MG_L, SOIL_RELEASE_HALVES_DAYS
from calculators.science.nitrogen.daily_record import DailyRecord, DayValues
from calculators.science.nitrogen.edges import HIGH_LEFT_MG_L, edges
from calculators.science.nitrogen.events import schedule
from calculators.science.nitrogen.forecast_tank import Event, Rates, Tank
from calculators.science.nitrogen.ode import Effort
from calculators.science.nitrogen.simulate import COARSE, RELATIVE, Outcome, simulate


class Band(NamedTuple):
    """Nitrate and the plants' store below and above the middle run, at the moments of its lines.

    ``edges`` are the records of the two runs at the edges.
    """

    low: list[float]
    high: list[float]
    earliest_shortage: float | None
    store_low: list[float]
    store_high: list[float]
    edges: list[DailyRecord]


# Of the solver in one answer, which so takes about a second; two thirds more where edges follow the middle.
MOST_STEPS = 3_900
TO_WHOLE_DAY = 100  # more for each run, so that one cut short ends with a day
MANY_EVENTS = 100  # each costs steps: from here on they are taken less closely
EDGE_RELATIVE = (
    1e-4  # half the time of the middle's; peaks within a few percent, nothing to a guess
)
UNSETTLING = ("feed", "dark", "die-off")
YOUNG_SOIL_DAYS = 3 * SOIL_RELEASE_HALVES_DAYS  # an eighth of its release is left; judgement
# Judgement, tried on 292 random tanks with a mature filter: an edge harmed in 35, and these lines had it
# run for 34 of them; what they left out did not kill.
TIMES_LEFT = 2.0
HUNGRY_TIMES, FED_AGAIN_TIMES = 1.5, 2.2
NEAR_DEADLY = 0.5


def is_unsettled(tank: Tank, events: Sequence[Event]) -> bool:
    """Whether ammonia or nitrite can rise: then the middle run alone could calm where an edge kills.

    Either edge can: the one that leaves most in the water, and the one whose nitrifiers of ammonia
    outrun those of nitrite. In warm alkaline water what a mature film leaves at the upper edge harms.
    """
    return (
        tank.filter_maturity_percent < 100
        or tank.ammonia_mg_n_l > 0
        or tank.nitrite_mg_n_l > 0
        or tank.kh_dh is not None
        or tank.usual_ph is not None
        or any(event.kind in UNSETTLING for event in events)
        or (tank.soil_area_cm2 > 0 and tank.soil_age < YOUNG_SOIL_DAYS)
        or least_urgent_ammonia_mg_n_l(tank.ph, tank.temperature_c) < TIMES_LEFT * HIGH_LEFT_MG_L
    )


def is_stirred(lines: Sequence[DayValues]) -> bool:
    """Whether the middle run of a settled tank shows what an edge could turn to harm.

    Plants starve the filter and then leave it far more, when at an edge it may have died off; or nitrate
    comes near to what kills.
    """
    least = math.inf
    for line in lines:
        if line.day < 1:
            continue  # the first hours only find their level
        if least < HUNGRY_TIMES * AMMONIA_LEFT_MG_L and line.ammonia > FED_AGAIN_TIMES * least:
            return True
        least = min(least, line.ammonia)
    return max(line.nitrate for line in lines) > NEAR_DEADLY * edge_of(
        "nitrate_mg_l", "deadly_high"
    )


class Runs(NamedTuple):
    """The middle run and those at the edges that were asked for, over the same days.

    ``days`` are as many as all of them reach: fewer than asked for where one would take too long.
    """

    middle: Outcome
    at_edges: tuple[Outcome, ...]
    days: float


def run_all(
    tank: Tank, events: Sequence[Event], days: float, rates: Rates, with_edges: bool
) -> Runs:
    """Run the middle, and both edges where they are asked for, or where the middle shows that they may harm.

    The edges are guesses, and are followed less closely; they leave the steps that they do not need to
    the middle.

    Bounded: where the solver needs too many steps, all runs end on the day that all can reach.
    """
    wanted = [rates, *(edges(rates) if with_edges else ())]
    many = len(schedule(tank, events, days)) > MANY_EVENTS

    def run(one: Rates, until: float, effort: Effort | None) -> Outcome:
        close = COARSE if many else RELATIVE if one is rates else EDGE_RELATIVE
        return simulate(tank, events, until, one, relative=close, effort=effort)

    reached, left, outcomes = days, float(MOST_STEPS), list[Outcome]()
    for runs_left in range(len(wanted), 0, -1):  # no run need go further than those before it
        share = max(MOST_STEPS / len(wanted), left / runs_left)
        effort = Effort(share, TO_WHOLE_DAY)
        outcomes.insert(0, run(wanted[runs_left - 1], reached, effort))
        reached, left = outcomes[0].day, left - share + effort.left
    if not with_edges and is_stirred(outcomes[0].record.lines):
        for one in edges(rates):
            wanted.append(one)
            outcomes.append(run(one, reached, Effort(MOST_STEPS / 3, TO_WHOLE_DAY)))
            reached = outcomes[-1].day
    outcomes = [
        run(one, reached, None) if outcome.day > reached else outcome
        for one, outcome in zip(wanted, outcomes, strict=True)
    ]
    return Runs(outcomes[0], tuple(outcomes[1:]), reached)


def band(middle: Outcome, at_edges: Sequence[Outcome]) -> Band:
    """The lowest and highest of the three runs at each moment."""
    runs = [middle, *at_edges]
    lines = list(zip(*(run.record.lines for run in runs), strict=True))
    nitrate = [[line.nitrate for line in row] for row in lines]
    store = [[line.plant_nitrogen_percent for line in row] for row in lines]
    shortages = [
        run.record.hunger.first_day for run in runs if run.record.hunger.first_day is not None
    ]
    return Band(
        [min(row) for row in nitrate],
        [max(row) for row in nitrate],
        min(shortages, default=None),
        [min(row) for row in store],
        [max(row) for row in store],
        [run.record for run in runs[1:]],
    )
