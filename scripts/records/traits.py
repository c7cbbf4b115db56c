"""What a plant looks like under water, in the words that the drawing understands."""

from collections.abc import Iterator, Mapping
from typing import Annotated, Any, Literal

from pydantic import Field
from pydantic_core import PydanticCustomError

from calculators.core import quantities as q
from calculators.identify.trait_table import (
    Arrangement,
    Colour,
    Draw,
    Flower,
    LeafShape,
    Margin,
    Smell,
    Stalk,
    Surface,
    Tip,
    Veins,
)
from scripts.records.claim import Claim, Range, Within
from scripts.records.record import Ruled, number

SpreadBy = Literal[
    "cuttings", "runners", "rhizome", "offsets", "plantlets-on-flower-stalk",
    "plantlets-on-leaves", "fragments", "budding", "tubers", "bulbs", "spores", "seed",
    "division",
]  # fmt: skip


class Whorl(Ruled):
    """How many leaves stand in a ring."""

    low: Annotated[int, Field(ge=2, le=40)]
    high: Annotated[int, Field(ge=2, le=40)]

    @classmethod
    def broken_rules(cls, raw: Mapping[str, Any]) -> Iterator[PydanticCustomError]:
        """Refuse a ring whose least number is above its greatest."""
        low, high = number(raw, "low"), number(raw, "high")
        if low is not None and high is not None and low > high:
            yield PydanticCustomError("range_order", "low must not be above high")


class Traits(Claim):
    """The submersed form of a grown plant; for a floating one what floats. Lengths of one leaf or frond."""

    draw: Draw
    leaf_shape: LeafShape
    arrangement: Arrangement
    whorl: Whorl | None = None  # only with arrangement whorled
    leaf_length_mm: Annotated[Range, Within(q.LeafSize)]
    leaf_width_mm: Annotated[Range, Within(q.LeafSize)]
    stalk: Stalk
    margin: Margin = "smooth"
    tip: Tip = "pointed"
    surface: Surface = "flat"
    veins: Veins | None = None  # as one sees them on the leaf held against the light
    smell: Smell | None = None  # of a leaf rubbed between the fingers
    flower: Flower | None = (
        None  # its colour, or a spathe; of the plant in air where it flowers there
    )
    colour: Colour
    colour_second: Colour | None = (
        None  # young leaves, underside, veins or stripe: say where in colour_where
    )
    colour_where: (
        Literal["young-leaves", "underside", "veins", "stripe", "edge", "stem", "old-leaves"] | None
    ) = None
    root_length_mm: Annotated[Range, Within(q.LeafSize)] | None = (
        None  # hanging roots of a floating plant
    )
    spread_by: list[SpreadBy] = []
    grows_from: Literal[
        "tip", "crown", "rhizome-tip", "frond", "bulb", "tuft"
    ]  # where new leaves are
