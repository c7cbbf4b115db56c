"""The inputs that the weekly budget and the forecast share, worded once."""

from typing import Annotated

from calculators.core.quantities import Area as AnyArea
from calculators.core.quantities import (
    ArealNitrogenFlow,
    Concentration,
    DoublingTime,
    FeedMass,
    Interval,
    NitrogenFlow,
    Percent,
    Protein,
    Volume,
    WetMass,
)
from calculators.core.quantity import Help, Label, Possible

TankVolume = Annotated[Volume, Help("Water in the tank, without soil and stones.")]
Feed = Annotated[
    FeedMass,
    Label("Feed a week"),
    Possible(0, 5_000),
    Help(
        "Dry food. A level teaspoon of flakes is about 1 g, of fine granules 2 to 3 g: weigh yours."
    ),
]
FeedProtein = Annotated[Protein, Help("From the label of the feed.")]
PlantUptake = Annotated[
    NitrogenFlow | None, Label("Measured uptake of plants"), Possible(0, 100_000)
]
FloaterArea = Annotated[AnyArea, Label("Floating cover")]
FloaterDoubling = Annotated[
    DoublingTime,
    Label("Floating cover doubles in"),
    Help("Time it in your tank: how long half the cover takes to become all of it."),
]
Trimmings = Annotated[
    WetMass,
    Label("Trimmings a week, wet"),
    Help("What leaves the tank. Shake the water off, then weigh."),
]
SoilArea = Annotated[
    AnyArea, Label("Soil area"), Help("Length times width of the bed; 0 for none.")
]
Denitrification = Annotated[
    ArealNitrogenFlow,
    Label("Nitrogen the soil turns to gas"),
    Help("Nobody can measure it at home: 1 to 30, about 5 in planted basins."),
]
ChangeShare = Annotated[Percent, Label("Water changed each time")]
ChangeEvery = Annotated[Interval, Label("Changed every")]
TapNitrate = Annotated[
    Concentration,
    Label("Nitrate in the new water"),
    Possible(0, 1_000),
    Help("Test the tap. As nitrate, NO₃."),
]
Nitrate = Annotated[
    Concentration, Label("Nitrate now"), Possible(0, 1_000), Help("As nitrate, NO₃.")
]
