"""The dose of a label for the water that is really there."""

from typing import Annotated

from calculators.core.declare import calculator
from calculators.core.form_hints import FINER
from calculators.core.leads import Lead, Scaled, Value
from calculators.core.quantities import Litres, Percent
from calculators.core.quantities import Volume as WaterVolume
from calculators.core.quantity import Assumed, Help, Label, Possible
from calculators.core.result import Refusal, Refused
from calculators.medicine_volume import words
from calculators.medicine_volume.amounts import copper_ug_l, dose_for, net_litres, redose
from calculators.medicine_volume.outputs import CopperPerUnit, LabelAmount, MedicineVolume

LEAST_WATER_L = 0.1  # as the vocabulary has it for a volume of water


@calculator(
    "A medicine's dose for the true volume",
    sources=(
        "arithmetic",
        "srac-410",
        "arthur-leonard-1970",
        "yang-2008",
        "ahmad-copper-cadmium",
        "straus-tucker-1993",
    ),
    leads_to=(
        Lead(
            "water-change",
            "Changes that bring the copper down",
            {
                "what": Value("copper"),
                "now_mg_l": Scaled("copper_ug_l", 0.001),
                "volume_l": "net_l",
            },
            needs=("copper_ug_l",),
        ),
    ),
)
def medicine_volume(
    gross_l: Annotated[
        WaterVolume,
        Label("What the tank holds, filled as it stands, if nothing were in it"),
        Help(
            "Inside length × width × height of the water in cm, divided by 1000; not the maker's figure."
        ),
    ] = 120.0,
    displaced_l: Annotated[
        Litres,
        Label("Soil, stones and wood in it"),
        Help("Soil and cap: their area in cm² × depth in cm, divided by 1000."),
    ] = 24.0,
    label_amount: Annotated[
        LabelAmount, Label("The label says: so much"), Help("mL, drops, tablets or grams.")
    ] = 10.0,
    label_for_l: Annotated[WaterVolume, Label("The label says: for so much water")] = 100.0,
    copper_mg_per_unit: Annotated[
        CopperPerUnit | None,
        Label("Copper in one such unit, where the label names it"),
        Help("In mg for each mL, drop, tablet or gram. Empty if the label names none."),
    ] = None,
    change_percent: Annotated[
        Percent, Label("A change of water during the treatment"), Possible(0, 100), FINER, Assumed()
    ] = 25.0,
) -> MedicineVolume:
    """Find the water that is really in a tank, and a medicine label's dose for it.

    A dose for the tank's name on paper is an overdose: soil, stones, wood and the air below the rim are
    no water. The label's amount goes by volume, in whatever unit the label counts.

    After a change the share that was taken out is missing, if nothing of the medicine has gone
    otherwise. Many medicines fade, or stay on soil and carbon; whether to put any back, and when, stands
    on the label alone.

    Copper in micrograms a litre follows from the label: young amphipods grew up at 4.6 and less, half of
    the grown ones died at 20 in four days. What kind of medicine an animal needs is a vet's question,
    and not answered here.
    """
    if gross_l - displaced_l < LEAST_WATER_L:
        why = "leaves no water in what the tank holds"
        raise Refused(Refusal("displaced_l", why, low=0.0, high=max(0.0, gross_l - LEAST_WATER_L)))
    net = net_litres(gross_l, displaced_l)
    dose = dose_for(net, label_amount, label_for_l)
    copper = (
        None
        if copper_mg_per_unit is None
        else copper_ug_l(label_amount, label_for_l, copper_mg_per_unit)
    )
    taken_out = redose(dose, change_percent)
    per_l = label_amount / label_for_l
    here = words.MedicineDose(gross_l, net, dose, taken_out, change_percent, copper, per_l)
    return MedicineVolume(
        net_l=net,
        dose=dose,
        redose_after_change=here.redose,
        overdose_percent=100 * (gross_l / net - 1),
        copper_ug_l=copper,
        notes=words.notes(here),
    )
