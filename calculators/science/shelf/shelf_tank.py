"""A tank of the shelf: each of its fields declared once, for the file, the forms and the formulas.

Every field but the name may stay empty: empty is said, never guessed.
"""

from typing import Annotated, Literal, NamedTuple

from calculators.core.dates import DAY, MOMENT
from calculators.core.quantities import (
    PH,
    Area,
    CarbonateHardness,
    Concentration,
    Count,
    DailyLight,
    FeedMass,
    GeneralHardness,
    Height,
    HoursADay,
    Interval,
    Length,
    Percent,
    Protein,
    Temperature,
    Volume,
    WetMass,
)
from calculators.core.quantity import Choices, FromFile, Help, IsDate, Label, Possible
from calculators.core.read_fields import read_input_row
from calculators.core.wording import PLACES
from calculators.science.conversions import CM3_PER_L
from calculators.science.shelf.text_forms import ID, RECORD, SHORT

MOST_TANKS = 500  # on one shelf
MOST_KINDS = 200  # plants, or animals, in one tank

EnteredAt = Annotated[str | None, Label("Written on"), MOMENT]

Place = Literal["us", "eu", "gb", "au", "nz", "other"]
PLACE_WORDS = Choices((*PLACES.values(), "another place"))


class TapWater(NamedTuple):
    """The water that changes are made with."""

    nitrate_mg_l: Annotated[
        Concentration | None, Label("Nitrate in the new water"), Possible(0, 1_000)
    ] = None
    gh_dh: Annotated[GeneralHardness | None, Label("GH of the new water")] = None
    kh_dh: Annotated[CarbonateHardness | None, Label("KH of the new water")] = None
    ph: Annotated[PH | None, Label("pH of the new water"), Possible(4, 11)] = None


class ChangePlan(NamedTuple):
    """How water is changed as a rule."""

    percent: Annotated[Percent | None, Label("Share changed")] = None
    every_days: Annotated[Interval | None, Label("Changed every"), Possible(1, 365)] = None


class PlantHeld(NamedTuple):
    """A kind of plant in the tank."""

    plant: Annotated[str, Label("Plant"), RECORD]
    wet_g: Annotated[WetMass | None, Label("Wet mass"), Help("Drained, as on a scale.")] = None
    since: Annotated[str | None, Label("In this tank since"), IsDate(), DAY] = None
    entered: EnteredAt = None


class AnimalsHeld(NamedTuple):
    """A kind of animal in the tank."""

    animal: Annotated[str, Label("Animal"), RECORD]
    count_: Annotated[Count | None, Label("How many"), Possible(0, 10_000)] = None
    entered: EnteredAt = None


class WaterEntered(NamedTuple):
    """When the figures of the water were entered that may be read as well; empty is not known."""

    temperature_c: EnteredAt = None
    ph: EnteredAt = None
    gh_dh: EnteredAt = None
    kh_dh: EnteredAt = None


class ShelfTank(NamedTuple):
    """One tank as its keeper filled it in."""

    id: Annotated[str, Label("Name in the file"), ID] = "tank"
    name: Annotated[str, Label("Name")] = "My tank"
    demo: Annotated[bool | None, Label("Invented, to try things on")] = None
    place: Annotated[
        Place | None, Label("Where you live"), PLACE_WORDS, Help("For the law lists.")
    ] = None
    length_cm: Annotated[Length | None, Label("Inner length")] = None
    width_cm: Annotated[Length | None, Label("Inner width")] = None
    water_cm: Annotated[
        Height | None, Label("Depth of water"), Help("From the top of the cap to the surface.")
    ] = None
    net_l: Annotated[
        Volume | None, Label("Water in the tank"), Help("Without soil and stones.")
    ] = None
    soil_area_cm2: Annotated[
        Area | None, Label("Soil area"), Help("Length times width of the bed; 0 for none.")
    ] = None
    soil_depth_cm: Annotated[
        Height | None, Label("Soil, depth"), Possible(0, 400), Help("0 for none.")
    ] = None
    cap_depth_cm: Annotated[
        Height | None, Label("Cap, depth"), Possible(0, 400), Help("0 for none.")
    ] = None
    flooded_on: Annotated[
        str | None, Label("Soil flooded on"), IsDate(), DAY, Help("The day it was first filled.")
    ] = None
    lamp: Annotated[
        str | None, Label("Lamp"), SHORT, Help("And how its daily light was measured or estimated.")
    ] = None
    light_hours: Annotated[HoursADay | None, Label("Light a day")] = None
    dli_mol: Annotated[DailyLight | None, Label("Daily light at the surface")] = None
    filter: Annotated[str | None, Label("Filter"), SHORT, Help("What moves and cleans it.")] = None
    temperature_c: Temperature | None = None
    ph: Annotated[PH | None, Possible(4, 11)] = None
    gh_dh: GeneralHardness | None = None
    kh_dh: CarbonateHardness | None = None
    tap: Annotated[TapWater | None, Label("New water"), FromFile()] = None
    feed_g_week: Annotated[
        FeedMass | None, Label("Feed a week"), Possible(0, 5_000), Help("Dry food.")
    ] = None
    protein_percent: Annotated[Protein | None, Help("From the label of the feed.")] = None
    change: Annotated[ChangePlan | None, Label("Change of water"), FromFile()] = None
    plants: Annotated[list[PlantHeld] | None, Label("Plants"), FromFile(MOST_KINDS)] = None
    animals: Annotated[list[AnimalsHeld] | None, Label("Animals"), FromFile(MOST_KINDS)] = None
    entered: Annotated[WaterEntered | None, Label("Figures entered on"), FromFile()] = None

    @property
    def volume_l(self) -> float | None:
        """Its water: as given, else by the inside size; None where neither is known."""
        if self.net_l is not None:
            return self.net_l
        sides = (self.length_cm, self.width_cm, self.water_cm)
        return None if None in sides else box_l(*(side for side in sides if side is not None))

    @property
    def surface_cm2(self) -> float | None:
        """Its surface by the inside size; None where that is not known."""
        if self.length_cm is None or self.width_cm is None:
            return None
        return self.length_cm * self.width_cm


def box_l(length_cm: float, width_cm: float, depth_cm: float) -> float:
    """The litres of a box."""
    return length_cm * width_cm * depth_cm / CM3_PER_L


MUST_HAVE = ("id", "name")
TANK_FIELDS = read_input_row(ShelfTank)
# Figures of the water that may be entered here and read with a kit as well: the fresher holds.
ALSO_READ = WaterEntered._fields
# What a new tank is asked for first; all else can wait.
FIRST_ASKED = ("name", "net_l", "flooded_on", "animals", "plants")
