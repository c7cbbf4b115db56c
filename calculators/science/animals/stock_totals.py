"""Adds up what the animals of a tank weigh, eat, excrete and breathe."""

from collections.abc import Iterable
from typing import NamedTuple, Protocol

from calculators.science.animals.animal_table import ANIMALS
from calculators.science.animals.feeding import daily_feed_g, excreted_ammonia_n_g, living_mass_g
from calculators.science.animals.respiration import ACTIVE_PER_RESTING, resting_oxygen_mg_h
from calculators.science.conversions import MM_PER_CM


class Stocked(Protocol):
    """So many animals of one kind; ``kind`` is the key of its record."""

    @property
    def kind(self) -> str:
        """Key of the animal's record."""

    @property
    def count_(self) -> int:
        """How many; a tuple has a ``count`` of its own."""

    @property
    def mean_length_mm(self) -> float:
        """Mean length, mm."""


class Totals(NamedTuple):
    """Sums over all animals. The feed in the middle of its range makes the ammonia."""

    mass_g: float
    feed_low_g_day: float
    feed_high_g_day: float
    ammonia_n_g_day: float
    resting_oxygen_mg_h: float

    @property
    def feed_g_day(self) -> float:
        """The middle of the feed's range, g a day."""
        return (self.feed_low_g_day + self.feed_high_g_day) / 2

    @property
    def active_oxygen_mg_h(self) -> float:
        """Oxygen of all animals when they are driven hard, mg/h."""
        return ACTIVE_PER_RESTING * self.resting_oxygen_mg_h


def add_up(animals: Iterable[Stocked], temperature_c: float, protein_percent: float) -> Totals:
    """Sum mass, feed, ammonia nitrogen and oxygen over all animals."""
    mass = low = high = oxygen = 0.0
    for stocked in animals:
        kind = ANIMALS[stocked.kind]
        each_g = living_mass_g(stocked.mean_length_mm / MM_PER_CM, kind.a, kind.b)
        mass += stocked.count_ * each_g
        low += stocked.count_ * daily_feed_g(each_g, kind.feed_low)
        high += stocked.count_ * daily_feed_g(each_g, kind.feed_high)
        oxygen += stocked.count_ * resting_oxygen_mg_h(each_g, temperature_c)
    ammonia = excreted_ammonia_n_g((low + high) / 2, protein_percent)
    return Totals(mass, low, high, ammonia, oxygen)
