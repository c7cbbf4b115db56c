"""Conditioner for new water: its dose, and what chloramine leaves behind."""

from typing import Annotated, Literal

from calculators.conditioner import chlorine, words
from calculators.conditioner.ammonia_words import Treated
from calculators.conditioner.outputs import Conditioner
from calculators.core.declare import calculator
from calculators.core.form_hints import FINER
from calculators.core.leads import Lead
from calculators.core.quantities import (
    PH,
    Concentration,
    Millilitres,
    Temperature,
)
from calculators.core.quantities import Volume as WaterVolume
from calculators.core.quantity import Assumed, Choices, Help, Label, Possible, Valid
from calculators.core.result import Refusal, Refused
from calculators.science.water.ammonia import unionised_share

Kind = Literal["chlorine", "chloramine", "unknown"]
KINDS = Choices(("chlorine", "chloramine", "I don't know"))


@calculator(
    "Conditioner for new water",
    sources=(
        "ciaaw-2021",
        "piper-1982",
        "standard-methods-thiosulfate",
        "awwa-disinfection-field-guide",
        "nhmrc-chloramines",
        "wef-mop-8",
        "farrell-2001",
        "emerson-1975",
    ),
    leads_to=(
        Lead(
            "ammonia-change",
            "How to change water with ammonia in the tap",
            {
                "tap_ammonia_mg_n_l": "most_ammonia_mg_n_l",
                "volume_l": "tank_l",
                "temperature_c": "temperature_c",
            },  # no pH: here it is the higher of tank and tap, there the tank's own
            needs=("most_ammonia_mg_n_l",),
        ),
    ),
)
def conditioner(
    water_l: Annotated[
        WaterVolume, Label("New water to treat"), Help("What goes in, all buckets together.")
    ] = 40.0,
    label_ml: Annotated[
        Millilitres,
        Label("The label says: so many mL"),
        Possible(0.001, 10_000),
        Help("Its dose for chloramine, where it names one."),
    ] = 10.0,
    label_treats_l: Annotated[WaterVolume, Label("The label says: for so much water")] = 40.0,
    kind: Annotated[
        Kind,
        Label("What the supplier uses"),
        KINDS,
        Help("Ask the supplier; chloramine also shows as ammonia in a test of treated tap water."),
    ] = "chloramine",
    chlorine_mg_l: Annotated[
        Concentration,
        Label("Total chlorine of the tap, as Cl₂"),
        Possible(0, 20),
        Help("From a test of total chlorine, or the supplier's report."),
        Assumed(),
    ] = 4.0,
    tank_l: Annotated[
        WaterVolume | None,
        Label("Water in the tank once it is full"),
        Help("To dose for the whole tank, and for the ammonia once it is mixed."),
        FINER,
    ] = 120.0,
    ph: Annotated[
        PH | None,
        Label("pH, of tank or tap, the higher"),
        Possible(4, 11),
        Help("It decides how much of the ammonia is toxic."),
        FINER,
    ] = 7.6,
    temperature_c: Annotated[
        Temperature,
        Label("Temperature of the tank"),
        Possible(0, 40),
        Valid(0, 30),
        FINER,
        Assumed(),
    ] = 25.0,
) -> Conditioner:
    """Find the dose of conditioner for new tap water, and what chloramine leaves behind.

    The dose is the label's, by the water that is treated. Where new water runs straight into the
    tank, the whole tank is dosed, since the chlorine meets animals before it meets the product.

    Chloramine is chlorine bound to ammonia. When the chlorine is taken out, the ammonia stays: one
    part of nitrogen for 5.06 of chlorine. A supplier may add more than that, up to one part for
    three; the most is what the warnings go by. At a low pH little of it is toxic.

    Sodium thiosulfate takes out chlorine, and the chlorine of chloramine, and binds no ammonia. Its
    crystals are counted at two molecules for each of chlorine, 7 g for a gram: hatcheries use 7.4,
    sampling methods 5 to 5.6, and a field guide of water works 1.9. A little too much does no harm
    in water that is moved by air.

    Where you know no figure for the tap, 4 mg/L is taken: the most that the United States let drinking
    water hold over a year, from memory. Free ammonia is that of very dilute water after Emerson.
    """
    if tank_l is not None and tank_l < water_l:
        raise Refused(Refusal("tank_l", "is less than the new water", low=water_l))
    chloramine = kind != "chlorine"
    freed = chlorine.bound_ammonia_mg_n_l(chlorine_mg_l) if chloramine else 0.0
    most = chlorine.most_ammonia_mg_n_l(chlorine_mg_l) if chloramine else 0.0
    in_tank = None if tank_l is None else most * water_l / tank_l
    meets = most if in_tank is None else in_tank
    toxic = None if ph is None else meets * unionised_share(ph, temperature_c)
    here = Treated(
        water_l, chlorine_mg_l, kind, label_ml / label_treats_l, tank_l, most, meets, ph,
        temperature_c, toxic,
    )  # fmt: skip
    return Conditioner(
        dose_ml=here.ml_per_l * water_l,
        tank_dose_ml=None if tank_l is None else here.ml_per_l * tank_l,
        ammonia_freed_mg_n_l=freed,
        most_ammonia_mg_n_l=most,
        tank_ammonia_mg_n_l=in_tank,
        nh3_mg_n_l=toxic,
        thiosulfate_g=chlorine.thiosulfate_g(chlorine_mg_l, water_l),
        oxygen_taken_mg_l=chlorine.oxygen_taken_mg_l(chlorine_mg_l),
        notes=words.notes(here),
    )
