"""What is written down on the way: a line a day, peaks, and the plants' hunger."""

import math
from typing import NamedTuple

from calculators.science.conversions import PERCENT_TO_MG_PER_G
from calculators.science.nitrogen.constants import NITRATE_PER_N
from calculators.science.nitrogen.events import (
    SAME_MOMENT_DAYS,
    floating_layers,
    held_of,
    masses_of,
    wet_mass,
)
from calculators.science.nitrogen.hunger import Hunger, per_gram
from calculators.science.nitrogen.model import (
    ALKALINITY,
    AMMONIUM,
    NITRATE,
    NITRITE,
    Model,
)
from calculators.science.nitrogen.ode import SolverStep
from calculators.science.nitrogen.plant_rates import floater_light
from calculators.science.nitrogen.solver_parts import State

NOTHING = float("nan")  # shown as a gap: there are no plants to speak of


class DayValues(NamedTuple):
    """The tank at one moment, in the units of the contract."""

    day: float
    ammonia: float
    nitrite: float
    nitrate: float
    plant_nitrogen_percent: float
    plant_mass: float
    light_below_floaters: float
    floating_cover: float
    kh_drift: float
    kh: float
    plant_nitrogen_mg: float


class Peak(NamedTuple):
    """A largest value and its day."""

    value: float
    day: float


class DailyRecord:
    """Fills up as a run goes on. ``model`` is the one in force; set it after each event."""

    def __init__(self, model: Model, state: State, days: float, *, daily: bool = True) -> None:
        self.model = model
        self.days = days
        self.daily = daily
        self.lines: list[DayValues] = []
        self.ammonia = Peak(0.0, 0.0)
        self.nitrite = Peak(0.0, 0.0)
        self.hunger = Hunger()
        self._next = 1.0
        self.look(0.0, state)
        self.note(0.0, state)

    def step(self, step: SolverStep) -> None:
        """Take note of one step of the solver."""
        end = step.start + step.width
        while self.daily and self._next < end - SAME_MOMENT_DAYS:
            self.note(self._next, step.at(self._next))
        self.look(end, step.after)

    def look(self, day: float, state: State) -> None:
        """Keep the peaks, and look at the plants."""
        volume = self.model.volume
        if state[AMMONIUM] > self.ammonia.value * volume:
            self.ammonia = Peak(state[AMMONIUM] / volume, day)
        if state[NITRITE] > self.nitrite.value * volume:
            self.nitrite = Peak(state[NITRITE] / volume, day)
        self.hunger.look(day, self.model, state)

    def note(self, day: float, state: State) -> None:
        """Write one line; a day that is written now is not written again."""
        if self.daily:
            self.lines.append(line(day, self.model, state))
        if self._next <= day + SAME_MOMENT_DAYS:
            self._next += 1.0


def line(day: float, model: Model, state: State) -> DayValues:
    """The tank at one moment; a trace below zero, within the solver's tolerance, reads zero."""
    volume = model.volume
    masses = masses_of(model, state)
    layers = floating_layers(model, masses)
    held = held_of(model, state)
    least = min(per_gram(held, masses), default=math.inf)
    hardness, start = model.hardness(state[ALKALINITY]), model.tap_kh
    if model.start_kh is not None:
        hardness, start = max(0.0, hardness), model.start_kh
    return DayValues(
        day=day,
        ammonia=max(0.0, state[AMMONIUM]) / volume,
        nitrite=max(0.0, state[NITRITE]) / volume,
        nitrate=max(0.0, state[NITRATE]) / volume * NITRATE_PER_N,
        plant_nitrogen_percent=least / PERCENT_TO_MG_PER_G if least < math.inf else NOTHING,
        plant_mass=wet_mass(model, masses),
        light_below_floaters=100 * floater_light(layers),
        floating_cover=100 * min(1.0, layers),
        kh_drift=hardness - start,
        kh=hardness if model.start_kh is not None else NOTHING,
        plant_nitrogen_mg=max(0.0, sum(held)),
    )
