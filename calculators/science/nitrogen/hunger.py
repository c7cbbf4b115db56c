"""When the plants run short, when they have enough again, and when new growth is healthy."""

import math
from collections.abc import Sequence
from typing import NamedTuple

from calculators.science.nitrogen.events import held_of, masses_of
from calculators.science.nitrogen.model import Model
from calculators.science.nitrogen.plant_constants import CRITICAL_N, GONE_DRY_G, NEW_GROWTH_SHARE
from calculators.science.nitrogen.plant_rates import store_growth
from calculators.science.nitrogen.solver_parts import State

# Shade is left out: a lit tip is what one judges new growth by.
ONE_SPELL_DAYS = 4.0  # hunger that comes back within so long never ended; judgement
NEW_GROWTH = -math.log(1 - NEW_GROWTH_SHARE)  # growth after which that share of the stand is new


def stores(model: Model, state: State) -> list[float]:
    """Nitrogen in each cohort, mg a g dry mass."""
    return per_gram(held_of(model, state), masses_of(model, state))


def per_gram(held: Sequence[float], masses: Sequence[float]) -> list[float]:
    """Nitrogen in each cohort, mg a g dry mass: ``held`` is what each holds, mg, ``masses`` are dry, g.

    A cohort of which nothing to speak of is left is never the hungriest: its store is infinite.
    """
    return [
        nitrogen / mass if mass >= GONE_DRY_G else math.inf
        for nitrogen, mass in zip(held, masses, strict=True)
    ]


class Spell(NamedTuple):
    """A time during which the hungriest plants lie below the critical store.

    ``end`` is the day on which they had enough again, None where that is not within the run.
    """

    start: float
    end: float | None
    names: tuple[str, ...]


class Hunger:
    """Follows the hungriest plants through a run."""

    def __init__(self) -> None:
        self.first_day: float | None = None
        self.recovery_day: float | None = None
        self.healthy_day: float | None = None
        self.names: tuple[str, ...] = ()
        self.spells: list[Spell] = []
        self._cohort = 0
        self._growth = 0.0  # of the hungry plants since they recovered
        self._before: tuple[float, float] | None = None  # day and store of the last look

    def look(self, day: float, model: Model, state: State) -> None:
        """Take note of the stores at a moment; call in order of time."""
        if not model.cohorts:
            return
        stores_now = stores(model, state)
        least = min(stores_now)
        if least == math.inf:
            return
        self._spell(day, least, model.cohorts[stores_now.index(least)].names)
        if self.first_day is None:
            if least < CRITICAL_N:
                self._cohort = stores_now.index(least)
                self.names = model.cohorts[self._cohort].names
                self.first_day = self._crossing(day, least)
        elif least < CRITICAL_N:
            self.recovery_day = self.healthy_day = None
        else:
            if self.recovery_day is None:
                self.recovery_day, self._growth = self._crossing(day, least), 0.0
            elif self._before is not None:
                cohort, store = model.cohorts[self._cohort], stores_now[self._cohort]
                pace = cohort.members[0][1] * store_growth(store, cohort.full)
                self._growth += pace * (day - self._before[0]) if store < math.inf else 0.0
            if self.healthy_day is None and self._growth >= NEW_GROWTH:
                self.healthy_day = day
        self._before = day, least

    def _spell(self, day: float, least: float, names: tuple[str, ...]) -> None:
        """Open a spell where the store passes the line downwards, close it where it comes back."""
        hungry = bool(self.spells) and self.spells[-1].end is None
        if least < CRITICAL_N and not hungry:
            crossed = self._crossing(day, least)
            ended = self.spells[-1].end if self.spells else None
            if ended is not None and crossed - ended < ONE_SPELL_DAYS:
                self.spells[-1] = self.spells[-1]._replace(end=None)
            else:
                self.spells.append(Spell(crossed, None, names))
        elif least >= CRITICAL_N and hungry:
            self.spells[-1] = self.spells[-1]._replace(end=self._crossing(day, least))

    def _crossing(self, day: float, least: float) -> float:
        """The day on which the store passed the critical line, on a straight line between looks."""
        if self._before is None or self._before[1] == least:
            return day
        then, store = self._before
        return then + (day - then) * (store - CRITICAL_N) / (store - least)
