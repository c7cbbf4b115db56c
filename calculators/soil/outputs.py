"""What the soil calculator gives: what to buy, and the nitrogen in it."""

from typing import Annotated, NamedTuple

from calculators.core.quantities import Count, HeavyMass, Litres
from calculators.core.quantity import AnswersTo, Digits, Help, Label, Quantity
from calculators.core.result import Note

NitrogenMass = Annotated[float, Quantity("Nitrogen", "g", (0, 1e9), digits=2)]
NitrogenPerArea = Annotated[float, Quantity("Nitrogen", "g/m²", (0, 1e6), digits=2)]
WeeksOfFeed = Annotated[float, Quantity("Weeks", "weeks", (0, 1e12), digits=2)]
BagKg = Annotated[float, Quantity("Bag", "kg", (0.1, 2_000))]
BagLitres = Annotated[Litres, Digits(3)]


class Soil(NamedTuple):
    """What to buy, and what it holds."""

    soil_l: Annotated[Litres, Label("Soil, as it lies")]
    soil_bags: Annotated[Count, Label("Bags of soil"), Help("Rounded up to whole bags.")]
    soil_kg: Annotated[HeavyMass, Label("Soil, dry")]
    cap_l: Annotated[Litres, Label("Cap, as it lies")]
    cap_kg: Annotated[HeavyMass, Label("Cap, dry")]
    cap_bags: Annotated[Count, Label("Bags of cap"), Help("Rounded up to whole bags.")]
    soil_n_g: Annotated[
        NitrogenMass, Label("Nitrogen in the soil"), Help("Nearly all of it bound in humus.")
    ]
    soil_n_g_m2: Annotated[NitrogenPerArea, Label("The same for each square metre of floor")]
    feed_weeks: Annotated[
        WeeksOfFeed | None,
        Label("As much as in so many weeks of feed"),
        AnswersTo(("feed_g_week",)),
    ]
    notes: tuple[Note, ...]
