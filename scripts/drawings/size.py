"""The lengths a drawing needs, from a record's ranges; where a record is silent, a plain guess."""

import random
from typing import NamedTuple

from scripts.records.plant import Plant
from scripts.records.traits import Traits

TANK_HEIGHT_CM = 36.0  # the chosen tank; a common size
TALLEST_MM = 600.0  # a taller marginal plant is cut off here, so that the tank stays readable


class TankFrame(NamedTuple):
    """The tank: lengths in mm from the top of the cap, which is height 0."""

    tank: float  # outer height, floor to rim
    soil: float
    cap: float
    gap: float  # water surface below the rim

    @property
    def rim(self) -> float:
        """Height of the rim above the cap."""
        return self.tank - self.soil - self.cap

    @property
    def surface(self) -> float:
        """Height of the water surface above the cap."""
        return self.rim - self.gap

    @property
    def width(self) -> float:
        """As wide as it is high."""
        return self.tank


def frame(tank_height_cm: float) -> TankFrame:
    """A tank with 3 cm of soil, 2 cm of cap and 2 cm of air: common practice, no source."""
    return TankFrame(tank_height_cm * 10, 30.0, 20.0, 20.0)


class Subject(NamedTuple):
    """A plant ready to draw: lengths in mm, and chance that is the same in each build."""

    slug: str
    plant: Plant
    traits: Traits
    height: float
    spread: float
    leaf: float
    width: float
    chance: random.Random

    def about(self, value: float, share: float = 0.1) -> float:
        """The value, give or take a share of it."""
        return value * (1 + self.chance.uniform(-share, share))


def subject(slug: str, plant: Plant, traits: Traits) -> Subject:
    """What the record says of a grown plant: its greatest height, its middling leaf."""
    leaf, width = traits.leaf_length_mm.middle, traits.leaf_width_mm.middle
    tall, wide = plant.size.height_cm, plant.size.spread_cm
    return Subject(
        slug,
        plant,
        traits,
        tall.high * 10 if tall else max(traits.leaf_length_mm.high * 1.2, 20),
        wide.high * 10 if wide else max(traits.leaf_length_mm.high * 1.6, 20),
        leaf,
        width,
        random.Random(slug),
    )
