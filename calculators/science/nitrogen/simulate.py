"""One run of a tank: solve from event to event, and keep the record and the ledger."""

from collections.abc import Sequence
from typing import NamedTuple

from calculators.science.nitrogen.budget import Ledger
from calculators.science.nitrogen.daily_record import DailyRecord, DayValues, line
from calculators.science.nitrogen.events import SAME_MOMENT_DAYS, Scene, apply, schedule
from calculators.science.nitrogen.forecast_tank import Event, Rates, Tank
from calculators.science.nitrogen.model import ALKALINITY, NITRIFIED, Model
from calculators.science.nitrogen.ode import Effort, solve
from calculators.science.nitrogen.right_side import right_side_and_sinks
from calculators.science.nitrogen.sinks import damping
from calculators.science.nitrogen.solver_parts import State, Tolerance
from calculators.science.nitrogen.start import build

RELATIVE = 2e-6  # a steep end of a nitrite peak is met to 0.1 %
COARSE = 1e-3  # for searches, where a tenth of a percent is enough
WATER_MG_L = 3e-6  # absolute tolerance of the water's nitrogen, mg N/L
LOAD_MG_L_DAY = 1e-5  # of the nitrifiers' capacity
ALKALINITY_MEQ_L = 1e-4
GROWTH = 1e-5  # of a growth integral
PLANT_MG = 1e-9  # of nitrogen in a cohort: none, since a few leaves left must not go below nothing
BELOW_ZERO_MG_L = -1e-9  # rounding is let pass


class Outcome(NamedTuple):
    """What a run came to."""

    record: DailyRecord
    last: DayValues
    balance_error_percent: float
    nitrified_mg: float
    model: Model
    state: State
    day: float  # that was reached: all of them, but where the effort was spent before


def simulate(
    tank: Tank,
    events: Sequence[Event],
    days: float,
    rates: Rates = Rates(),  # noqa: B008 - immutable
    *,
    relative: float = RELATIVE,
    daily: bool = True,
    effort: Effort | None = None,
) -> Outcome:
    """Run a tank for some days. Without ``daily`` only the last line is worked out.

    A run stops before the last day where its ``effort`` is spent, and says on which. The solver's error
    is ``relative``, a share of each state.
    """
    scene = Scene(*build(tank, rates))
    ledger = Ledger(*scene)
    record = DailyRecord(*scene, days, daily=daily)
    now, step, done = 0.0, 0.02, 0
    for event in [*schedule(tank, events, days), None]:
        until = days if event is None else event.day
        if until > now + SAME_MOMENT_DAYS:
            f, damp = right_side_and_sinks(scene.model), damping(scene.model)
            allowed = tolerance(scene.model, relative)  # plants that all die leave the states
            state, reached, step = solve(
                f, damp, now, until, scene.state, allowed, record.step, step, effort
            )
            ledger.feed(scene.model, reached - now)
            scene, now = Scene(scene.model, state), reached
            record.note(now, state)
            if effort:  # what is done takes about as long as a step, and all of one moment is done
                effort.left, done = effort.left - done, 0
            if reached < until or (effort and effort.is_spent(now)):
                break  # before what is done at that moment, as a run of so many days ends
        if event is not None:
            done += 1
            scene = apply(event, scene, tank, rates, ledger)
            record.model = scene.model
            record.look(now, scene.state)
            record.note(now, scene.state)
    return Outcome(
        record,
        line(now, *scene),
        ledger.error_percent(*scene),
        scene.state[NITRIFIED],
        scene.model,
        scene.state,
        now,
    )


def tolerance(model: Model, relative: float) -> Tolerance:
    """How close the solver stays to each state; what only adds up needs no watch of its own.

    The ``relative`` one is a share, the absolute ones are in the units of the states.
    """
    volume = model.volume
    absolute = (
        [WATER_MG_L * volume] * 7 + [LOAD_MG_L_DAY * volume] * 2 + [ALKALINITY_MEQ_L * volume]
    )
    absolute += [GROWTH, PLANT_MG] * len(model.cohorts)
    loose = max(
        1.0, relative / RELATIVE
    )  # a trace too small for any kit need not be followed, either
    return Tolerance(
        relative, [loose * one for one in absolute], ALKALINITY, BELOW_ZERO_MG_L * volume
    )
