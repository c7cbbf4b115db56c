"""Plants for a tank, with reasons, and a set that meets a nitrogen demand."""

from typing import Annotated, Literal

from calculators.core.declare import calculator
from calculators.core.form_hints import FINER, InRow, Part
from calculators.core.leads import Lead, OnlyBeside, Rows
from calculators.core.quantities import (
    PH,
    Area,
    Count,
    DailyLight,
    GeneralHardness,
    Height,
    MinutesAWeek,
    NitrogenFlow,
    Temperature,
    Volume,
)
from calculators.core.quantity import Assumed, Choices, Help, Keys, Label, Possible
from calculators.pick.outputs import Pick
from calculators.pick.picking import answer, surface_of
from calculators.pick.wishes import Role, Wishes, light_of
from calculators.pick.words import light_notes
from calculators.science.animals.animal_table import ANIMALS
from calculators.science.light.lamps import LightClass

HABITS = Keys(
    ("stem", "rosette", "epiphyte", "carpet", "floater", "moss", "marginal"),
    (
        "stem plant", "rosette", "on wood or stone (epiphyte)", "carpet", "floating plant",
        "moss or liverwort", "leaves above the water (marginal)",
    ),
)  # fmt: skip
LOOKS = Keys(
    ("upright", "sprawling", "carpet", "floating"), ("upright", "sprawling", "carpet", "floating")
)
ANIMAL_KEYS = Keys(
    tuple(ANIMALS), tuple(animal.common or animal.name for animal in ANIMALS.values())
)
PLACES = Choices(
    (
        "United States", "European Union", "Great Britain", "Australia", "New Zealand",
        "elsewhere, or not named",
    )
)  # fmt: skip
WISH = Part("What you look for")
TANK = Part("The tank")
EXAMPLE_ANIMALS = ["neocaridina-davidi"]

CARE_ROW = "What the plants get"
ROOM_ROW = "Room in the tank"


@calculator(
    "Choose plants",
    sources=(
        "cfr-7-360-200", "eu-2016-1141", "gb-2016-1141-retained", "au-wons-2012", "nz-nppa-2012",
        "reddy-debusk-1985", "gerloff-krombholz-1966", "driever-2005",
    ),
    tables=("plants",),
leads_to=(
        Lead(
            "planting-plan", "Plan a bed",
            {
                "spacing_cm": "ranked.0.spacing_cm",
                "doubling_days": OnlyBeside("ranked.0.spacing_cm", "ranked.0.doubling_days"),
            },
        ),
        Lead(
            "nitrogen-forecast", "Forecast the tank with this set",
            {
                "plants": Rows(
                    {key: key for key in ("name", "wet_g", "doubling_days", "floating")}, "together"
                ),
                "volume_l": "volume_l", "ph": "ph", "temperature_c": "temperature_c",
            },
            needs=("together",),
        ),
    ),
)  # fmt: skip
def pick(
    light_class: Annotated[
        LightClass | None,
        Label("Light"),
        Choices(("low", "medium", "high")),
        WISH,
        InRow(CARE_ROW),
    ] = "low",
    minutes_week: Annotated[
        MinutesAWeek | None,
        Label("Minutes you have for trimming"),
        Help("For this tank."),
        WISH,
        InRow(CARE_ROW),
    ] = 15.0,
    habits: Annotated[
        list[str] | None,
        Label("Kinds of plants"),
        HABITS,
        Help("None tapped means any kind."),
        WISH,
    ] = None,
    place: Annotated[
        Literal["us", "eu", "gb", "au", "nz", "other"] | None, Label("Where you live"), PLACES, WISH
    ] = "other",
    height_cm: Annotated[
        Height | None,
        Label("Water above the soil"),
        Help("From the cap to the surface."),
        TANK,
        InRow(ROOM_ROW, "Above the soil"),
    ] = 30.0,
    temperature_c: Annotated[Temperature | None, FINER] = 24.0,
    ph: Annotated[PH | None, FINER] = 7.2,
    gh_dh: Annotated[GeneralHardness | None, FINER] = 8.0,
    count: Annotated[
        Count,
        Label("How many plants to list"),
        Possible(1, 40),
        Help("The best of each kind you tapped comes before a second of any."),
        Assumed(),
        FINER,
    ] = 6,
    demand_mg_n_day: Annotated[
        NitrogenFlow | None,
        Label("Nitrogen for the plants to take"),
        Possible(0, 10_000),
        Help("From the nitrogen balance: what the animals excrete, less what leaves otherwise."),
        FINER,
    ] = 4.0,
    volume_l: Annotated[
        Volume | None, Help("For the room that a set of plants has."), TANK, InRow(ROOM_ROW)
    ] = 54.0,
    animals: Annotated[
        list[str] | None,
        Label("Animals in the tank"),
        ANIMAL_KEYS,
        Help("Tap all that you keep."),
        Part("Who lives in it"),
    ] = EXAMPLE_ANIMALS,
    surface_cm2: Annotated[
        Area | None,
        Label("Water surface"),
        Possible(1, 1_000_000),
        Help("Empty: taken as that of a common tank of this volume."),
        FINER,
    ] = None,
    dli_mol: Annotated[
        DailyLight | None,
        Label("Or the daily light on the soil"),
        Help("From the light calculator. It goes before the class."),
        FINER,
    ] = None,
    dli_surface_mol: Annotated[
        DailyLight | None,
        Label("Daily light at the surface"),
        Help("For floating plants. Empty: worked out from the light on the soil and the depth."),
        FINER,
    ] = None,
    looks: Annotated[
        list[str] | None, Label("Look"), LOOKS, Help("None tapped means any look."), FINER
    ] = None,
    nitrogen_role: Annotated[
        Role | None,
        Label("Part in the nitrogen balance"),
        Choices(("fast taker", "steady taker", "slow keeper")),
        Help("Empty: any. The set below mixes fast and slower ones by itself."),
        FINER,
    ] = None,
) -> Pick:
    """Rank plants for a tank, with the reason for each place, what was left out, and a set for the nitrogen.

    Each plant gets a score: the sum of weight times share over the criteria that you gave, divided by the
    sum of their weights. Weights: light 30, minutes 25, temperature 15, height 10, pH 10, hardness 5,
    animals 10, part in the nitrogen balance 10 (where you ask for one). A share is 1 inside the plant's
    range, and falls to 0 outside it: evenly over 1 to 3 °C, 0.3 to 0.8 pH or 2 to 6 °dH, for light with
    the logarithm down to 1/1.4 to 1/2 of the least it needs, the wider the less sure the range is. Light
    suits fully from 1.5 times the least, which itself counts 0.85; above its light a plant loses a tenth
    for each doubling. A temperature suits fully from 2 °C inside the range, and its end counts 0.8. Up
    to a third of your minutes costs nothing; all of them leave no share. For height the share is how
    much of the plant's range has room; a stem, which is cut at the surface anyway, needs only its least.
    Each of these counts 0.95 of that where the range is reported, and 0.9 where it is a guess. For
    animals the share is a half where one of yours nips the plant; for the part in the balance it loses a
    half for each step off. A figure that nobody knows counts half and is said. Of equal scores, what
    lives under water comes first, then the surest figures, then the least work. Weights and slacks are
    our judgement.

    Left out is what a law list of your place names, what your animals eat or dig out, and what lies
    beyond those limits: too tall even at its least height, far too dark, too warm or cold, trimming far
    over your minutes. pH and hardness leave a plant out only at twice the slack. What you leave empty
    leaves nothing out. Plants with leaves in the air are not judged by the tank's light and height.

    The set tries every one to three of the best of each role, at least one fast taker and one slower
    plant that keeps standing when the fast one is cut, one kind of floater at most, within your minutes.
    Floaters may cover half of the surface, beds seven tenths of the floor, in steps of a tenth; beds
    grow in the shade of the floaters. A plant takes its dry mass times its nitrogen times its growth,
    ln 2 over the doubling time, which is the slow one in weak light; a rooted plant takes only a part of
    it from the water. The set of the best mean score wins, less a point for each tenth of the tank it
    fills and three for each plant.
    """
    at_plants, at_surface, worked_out = light_of(dli_mol, light_class, dli_surface_mol, height_cm)
    wishes = Wishes(
        at_plants, at_surface, worked_out, height_cm, temperature_c, ph, gh_dh, minutes_week,
        place or "other", tuple(sorted(animals or ())), tuple(sorted(habits or ())),
        tuple(sorted(looks or ())), nitrogen_role, demand_mg_n_day, count,
        surface_of(volume_l, surface_cm2),
    )  # fmt: skip
    return answer(wishes, light_notes(wishes, dli_mol, light_class))
