"""What the animals eat, excrete and breathe."""

from typing import Annotated, NamedTuple

from calculators.core.declare import calculator
from calculators.core.form_hints import FINER
from calculators.core.leads import Lead
from calculators.core.quantities import (
    PH,
    BodyLength,
    BodyMass,
    Concentration,
    Count,
    ElementMass,
    FeedMass,
    HoursAhead,
    NitrogenLoad,
    OxygenAhead,
    OxygenDemand,
    Protein,
    Temperature,
    Volume,
)
from calculators.core.quantity import Assumed, Choices, Help, Keys, Label, Possible, WhenNone
from calculators.core.result import Note
from calculators.science.animals.animal_table import ANIMALS, shown_name
from calculators.science.animals.burden import Burden, burdens, judge
from calculators.science.animals.stock_totals import add_up
from calculators.science.animals.stock_words import notes
from calculators.science.conversions import DAYS_PER_WEEK, MG_PER_G
from calculators.science.water import chemistry
from calculators.science.water.unread import HIGH_PH


class Stock(NamedTuple):
    """One kind of animal in the tank."""

    kind: Annotated[
        str, Label("Kind"), Keys(tuple(ANIMALS), tuple(shown_name(key) for key in ANIMALS))
    ]
    count_: Annotated[Count, Label("How many"), Possible(0, 10_000)]
    mean_length_mm: Annotated[
        BodyLength,
        Label("Mean length"),
        Help("Fish and shrimp nose to tail, snails across or along the shell as the record says."),
    ]


# Invented stock of the demo library's Reading Room tank.
EXAMPLE = [
    Stock("paracheirodon-innesi", 20, 30.0),
    Stock("neocaridina-davidi", 30, 20.0),
    Stock("planorbella-duryi", 10, 12.0),
]


class Stocking(NamedTuple):
    """Mass, feed, nitrogen and oxygen of all the animals together."""

    burden: Annotated[
        Burden,
        Label("Load on this water"),
        Choices(("no line of ours reached", "heavy", "overstocked", "wrong temperature")),
        Help("By oxygen, ammonia and warmth; never by length a litre."),
    ]
    biomass_g: Annotated[BodyMass, Label("Living mass"), Help("Snails without their shells.")]
    feed_g_week: Annotated[
        FeedMass, Label("Feed a week"), Help("The middle of the range below; dry feed.")
    ]
    ammonia_n_mg_day: Annotated[ElementMass, Label("Nitrogen given off as ammonia, a day")]
    load_mg_n_l_day: Annotated[NitrogenLoad, Label("The same in this tank's water")]
    oxygen_mg_h: Annotated[
        OxygenDemand, Label("Oxygen at rest"), Help("Animals only: plants and bacteria need more.")
    ]
    feed_low_g_week: Annotated[FeedMass, Label("Feed a week, at least")]
    feed_high_g_week: Annotated[FeedMass, Label("Feed a week, at most")]
    oxygen_active_mg_h: Annotated[
        OxygenDemand, Label("Oxygen when driven hard"), Help("About 3.4 times the rest.")
    ]
    nitrate_rise_mg_l_week: Annotated[
        Concentration,
        Label("Nitrate this could make in a week"),
        Help("If filter bacteria turn all of that ammonia into nitrate and nothing takes it up."),
    ]
    hours_to_low_oxygen: Annotated[
        HoursAhead | None,
        Label("Saturated water lasts them, no air coming in"),
        Help("At rest, until oxygen is where harm begins. Plants and bacteria make it sooner."),
        WhenNone("no animals"),
    ]
    hours_to_no_oxygen: Annotated[
        HoursAhead | None, Label("And until it is empty"), WhenNone("no animals")
    ]
    oxygen_still_mg_l: Annotated[
        OxygenAhead, Label("Oxygen settles at, with a still surface"), Help("As in a power cut.")
    ]
    oxygen_moved_mg_l: Annotated[OxygenAhead, Label("Oxygen settles at, with a moving surface")]
    hours_to_harmful_ammonia: Annotated[
        HoursAhead | None,
        Label("Ammonia harms without a filter after"),
        Help("From none, at the pH given."),
        WhenNone("no animals"),
    ]
    notes: tuple[Note, ...]


@calculator(
    "Stocking",
    sources=(
        "timmons-ebeling",
        "clarke-johnston-1999",
        "lucas-priede-1992",
        "ciaaw-2021",
        "benson-krause-1984",
        "boreal-lake-gas-2014",
        "epa-2013-ammonia",
        "nitrification-biofilm",
    ),
    leads_to=(
        Lead(
            "nitrogen-balance",
            "Where the nitrogen of this feed goes",
            {
                "volume_l": "volume_l",
                "feed_g_week": "feed_g_week",
                "protein_percent": "protein_percent",
                "ph": "ph",
                "temperature_c": "temperature_c",
            },
            needs=("volume_l",),
        ),
    ),
)
def stocking(
    animals: Annotated[list[Stock], Label("Animals")] = EXAMPLE,
    volume_l: Annotated[Volume, Help("Water in the tank, without soil and stones.")] = 120.0,
    protein_percent: Annotated[
        Protein, Help("From the label of the feed."), Assumed(), FINER
    ] = 45.0,
    temperature_c: Annotated[Temperature, Possible(0, 40)] = 24.0,
    ph: Annotated[PH, Possible(4, 11), FINER, Assumed()] = HIGH_PH,
) -> Stocking:
    """Find the feed that the animals need, and the nitrogen and oxygen that follow from it.

    Each animal's mass comes from its length, its feed from its mass, and the ammonia from the feed's
    protein: 0.092 g of nitrogen for each gram of protein eaten (Timmons and Ebeling). Oxygen at
    rest is a curve through 69 species of bony fish (Clarke and Johnston); shrimp and snails are
    treated as fish of their mass, for want of better.

    Most masses and all feeding rates here are estimates, right within a factor of two. If you weigh
    the feed you give, use that figure in the nitrogen calculators instead.

    The load is judged by three things: where oxygen settles when what comes in through a still or a
    moving surface meets the animals' need, how soon ammonia harms when the filter stops, and each
    kind's own range of warmth. Plants, bacteria and rot use oxygen at night besides. This says what the
    animals bring, not how many a tank may hold: room to swim and company matter as much.
    """
    total = add_up(animals, temperature_c, protein_percent)
    loads = burdens(total, volume_l, ph, temperature_c)
    load = total.ammonia_n_g_day * MG_PER_G / volume_l
    return Stocking(
        burden=judge(loads, animals, temperature_c),
        biomass_g=total.mass_g,
        feed_g_week=DAYS_PER_WEEK * total.feed_g_day,
        ammonia_n_mg_day=total.ammonia_n_g_day * MG_PER_G,
        load_mg_n_l_day=load,
        oxygen_mg_h=total.resting_oxygen_mg_h,
        feed_low_g_week=DAYS_PER_WEEK * total.feed_low_g_day,
        feed_high_g_week=DAYS_PER_WEEK * total.feed_high_g_day,
        oxygen_active_mg_h=total.active_oxygen_mg_h,
        nitrate_rise_mg_l_week=DAYS_PER_WEEK * load * chemistry.NITRATE_PER_N,
        hours_to_low_oxygen=loads.hours_to_harm,
        hours_to_no_oxygen=loads.hours_to_empty,
        oxygen_still_mg_l=loads.air.still,
        oxygen_moved_mg_l=loads.air.moved,
        hours_to_harmful_ammonia=loads.ammonia.hours_to_harm,
        notes=tuple(notes(animals, loads, volume_l, temperature_c, ph)),
    )
