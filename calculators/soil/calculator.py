"""Soil and cap to buy, and the nitrogen in them."""

import math
from typing import Annotated

from calculators.core.declare import calculator
from calculators.core.form_hints import FINER, InRow
from calculators.core.leads import Lead
from calculators.core.quantities import (
    FeedMass,
    Height,
    Length,
    Litres,
    PackedDensity,
    Protein,
)
from calculators.core.quantity import Assumed, Help, Label, Possible, Quantity
from calculators.science.conversions import CM2_PER_M2, CM3_PER_L, DAYS_PER_WEEK, MG_PER_G
from calculators.science.nitrogen.feed_fate import feed_nitrogen_mg_day
from calculators.soil.outputs import BagKg, Soil
from calculators.soil.words import notes

# A millionth of a bag is no reason to buy another: 40 L are two bags of 20, whatever the rounding.
HARDLY_MORE = 1e-6
SoilNitrogen = Annotated[float, Quantity("Nitrogen of dry soil", "%", (0, 20))]

SIZE_ROW = "The bed"
LAYERS_ROW = "Depth"


@calculator(
    "Soil and cap to buy",
    sources=("soil-bulk-density", "brady-weil-2008"),
    leads_to=(Lead("free-ammonia", "New soil gives off ammonia: how toxic a reading is", {}),),
)
def soil(
    length_cm: Annotated[Length, Label("Floor length, inside"), InRow(SIZE_ROW, "Length")] = 80.0,
    width_cm: Annotated[Length, Label("Floor width, inside"), InRow(SIZE_ROW, "Width")] = 35.0,
    soil_depth_cm: Annotated[
        Height,
        Label("Soil, depth"),
        Possible(0, 400),
        Help("2 to 3 cm are common."),
        InRow(LAYERS_ROW, "Soil"),
    ] = 3.0,
    cap_depth_cm: Annotated[
        Height,
        Label("Cap, depth"),
        Possible(0, 400),
        Help("2.5 to 4 cm are common."),
        InRow(LAYERS_ROW, "Cap"),
    ] = 3.0,
    soil_bag_l: Annotated[
        Litres, Label("A bag of soil"), Possible(0.1, 2_000), FINER, Assumed()
    ] = 20.0,
    cap_bag_kg: Annotated[BagKg, Label("A bag of cap"), FINER, Assumed()] = 10.0,
    cap_dry_g_ml: Annotated[
        PackedDensity,
        Label("Dry cap, density as it lies"),
        Help("Sand and fine gravel 1.5 to 1.7."),
        FINER,
        Assumed(),
    ] = 1.6,
    soil_dry_g_ml: Annotated[
        PackedDensity,
        Label("Dry soil, density as it lies"),
        Help("Loam 1.2 to 1.5, peaty soil under 1."),
        FINER,
        Assumed(),
    ] = 1.2,
    soil_n_percent: Annotated[
        SoilNitrogen,
        Help("Of dry mass. Plain topsoil 0.1 to 0.3, compost 1 to 2."),
        FINER,
        Assumed(),
    ] = 0.2,
    feed_g_week: Annotated[
        FeedMass | None,
        Label("Feed a week"),
        Help("To compare with; left empty, it is left out."),
        FINER,
    ] = None,
    protein_percent: Annotated[Protein, FINER, Assumed()] = 42.0,
) -> Soil:
    """Find how many litres and bags of soil and cap a floor takes, and how much nitrogen comes with it.

    Volumes are as the layers lie. Soil is sold by the litre as it fell into the bag and settles by a
    tenth or more when it is wet, so buy the next bag where the figures are close. Sand is sold dry,
    by weight.

    Nitrogen is that of the whole soil. Nearly all of it is bound in humus: a field's soil sets free
    one to four hundredths of it in a year. What harms in the first weeks is the small part that
    is free already, and what fertiliser or manure add.
    """
    floor_cm2 = length_cm * width_cm
    soil_l = floor_cm2 * soil_depth_cm / CM3_PER_L
    cap_l = floor_cm2 * cap_depth_cm / CM3_PER_L
    cap_kg = cap_l * cap_dry_g_ml
    nitrogen_g = soil_l * soil_dry_g_ml * 1000 * soil_n_percent / 100
    layers = Soil(
        soil_l=soil_l,
        soil_bags=bags(soil_l, soil_bag_l),
        soil_kg=soil_l * soil_dry_g_ml,
        cap_l=cap_l,
        cap_kg=cap_kg,
        cap_bags=bags(cap_kg, cap_bag_kg),
        soil_n_g=nitrogen_g,
        soil_n_g_m2=nitrogen_g / (floor_cm2 / CM2_PER_M2),
        feed_weeks=weeks_of_feed(nitrogen_g, feed_g_week, protein_percent),
        notes=(),
    )
    return layers._replace(
        notes=notes(layers, soil_depth_cm, cap_depth_cm, soil_n_percent, soil_bag_l, cap_bag_kg)
    )


def bags(amount: float, bag: float) -> int:
    """How many whole bags, rounded up.

    The ``amount`` needed and what a ``bag`` holds are in one unit, litres or kg.
    """
    return math.ceil(amount / bag - HARDLY_MORE)


def weeks_of_feed(
    nitrogen_g: float, feed_g_week: float | None, protein_percent: float
) -> float | None:
    """The weeks in which the feed brings as much nitrogen; None without feed."""
    if not feed_g_week:
        return None
    fed_mg_week = feed_nitrogen_mg_day(feed_g_week, protein_percent) * DAYS_PER_WEEK
    return nitrogen_g * MG_PER_G / fed_mg_week
