"""What the calculator for a medicine's volume gives."""

from typing import Annotated, NamedTuple

from calculators.core.quantities import Litres
from calculators.core.quantity import AnswersTo, Help, Label, Quantity
from calculators.core.result import Note

# In the label's own unit: millilitres, drops, tablets, grams.
LabelAmount = Annotated[float, Quantity("Amount", "", (0.0001, 100_000))]
DoseAmount = Annotated[float, Quantity("Dose", "", (0, 1e15))]
CopperPerUnit = Annotated[float, Quantity("Copper", "mg", (0, 100_000))]
Copper = Annotated[float, Quantity("Copper", "µg/L", (0, 1e18))]
Overdose = Annotated[float, Quantity("Too much", "%", (0, 1e12), digits=2)]


class MedicineVolume(NamedTuple):
    """The net water, the label's dose for it, and copper where the label names it."""

    net_l: Annotated[Litres, Label("Water that is really there")]
    dose: Annotated[
        DoseAmount,
        Label("The label's dose for it"),
        Help("In the label's own unit: mL, drops, tablets or grams."),
    ]
    redose_after_change: Annotated[
        DoseAmount,
        Label("What such a change takes out, at most"),
        Help("In the same unit. Put it back only where the label says so."),
    ]
    overdose_percent: Annotated[
        Overdose, Label("Too much, if dosed for the full tank"), Help("By the gross volume.")
    ]
    copper_ug_l: Annotated[
        Copper | None, Label("Copper of that dose"), AnswersTo(("copper_mg_per_unit",))
    ]
    notes: tuple[Note, ...]
