"""What a keeper sees of a plant; what was not looked at stays empty."""

from typing import Annotated, Any, Literal, NamedTuple, get_args

from calculators.core.quantities import Height, LeafSize
from calculators.core.quantity import Choices, Help, Label, Quantity
from calculators.identify.trait_table import (
    Arrangement,
    Colour,
    Draw,
    Floats,
    Flower,
    LeafShape,
    Margin,
    Roots,
    Smell,
    Stalk,
    Surface,
    Tip,
    Veins,
)
from calculators.identify.trait_words import TRAITS

LeavesIn = Literal["water", "air"]
LeafAge = Literal["grown", "young"]
MOST_IN_A_RING = 40


def trait_label(trait: str) -> Label:
    """The name of a trait."""
    return Label(TRAITS[trait].label)


def shown(trait: str, choices: Any) -> Choices:
    """The words for a trait's values, in the order of its ``Literal``."""
    return Choices(tuple(TRAITS[trait].values[choice] for choice in get_args(choices)))


class SeenTraits(NamedTuple):
    """Any part of it may be empty: what was not looked at says nothing."""

    form: Annotated[Draw | None, trait_label("form"), shown("form", Draw)] = None
    floats: Annotated[Floats | None, trait_label("floats"), shown("floats", Floats)] = None
    roots: Annotated[Roots | None, trait_label("roots"), shown("roots", Roots)] = None
    arrangement: Annotated[
        Arrangement | None, trait_label("arrangement"), shown("arrangement", Arrangement)
    ] = None
    whorl_count: Annotated[
        int | None, Quantity("Leaves", "", (1, MOST_IN_A_RING)), trait_label("whorl_count")
    ] = None
    shape: Annotated[LeafShape | None, trait_label("shape"), shown("shape", LeafShape)] = None
    margin: Annotated[Margin | None, trait_label("margin"), shown("margin", Margin)] = None
    tip: Annotated[Tip | None, trait_label("tip"), shown("tip", Tip)] = None
    surface: Annotated[Surface | None, trait_label("surface"), shown("surface", Surface)] = None
    stalk: Annotated[Stalk | None, trait_label("stalk"), shown("stalk", Stalk)] = None
    veins: Annotated[Veins | None, trait_label("veins"), shown("veins", Veins)] = None
    length_mm: Annotated[LeafSize | None, trait_label("length_mm")] = None
    width_mm: Annotated[LeafSize | None, trait_label("width_mm")] = None
    colour_above: Annotated[
        Colour | None, trait_label("colour_above"), shown("colour_above", Colour)
    ] = None
    colour_below: Annotated[
        Colour | None, trait_label("colour_below"), shown("colour_below", Colour)
    ] = None
    smell: Annotated[Smell | None, trait_label("smell"), shown("smell", Smell)] = None
    height_cm: Annotated[Height | None, trait_label("height_cm")] = None
    root_length_mm: Annotated[LeafSize | None, trait_label("root_length_mm")] = None
    flower: Annotated[Flower | None, trait_label("flower"), shown("flower", Flower)] = None
    leaf_age: Annotated[
        LeafAge | None, Label("The leaf looked at is"), Choices(("grown", "young"))
    ] = None
    leaves_in: Annotated[
        LeavesIn | None,
        Label("The leaves grew"),
        Choices(("under water", "in the air")),
        Help("Leaves of pots from a shop mostly grew in the air."),
    ] = None
    by_eye: Annotated[
        bool | None, Label("Sizes are by eye"), Help("Yes where no rule was held to the leaf.")
    ] = None
