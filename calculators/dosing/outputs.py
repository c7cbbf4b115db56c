"""What the dosing calculator answers: a dose, the bottle it comes from, and where the level goes."""

from typing import Annotated, NamedTuple

from calculators.core.quantities import Concentration, Millilitres, Ratio, SaltMass, Strength
from calculators.core.quantity import Help, Label, Quantity
from calculators.core.result import Note, Series


class Dosing(NamedTuple):
    """A dose, the bottle it comes from, and where the level goes; null where it does not apply."""

    grams_per_dose: Annotated[SaltMass | None, Label("Salt for one dose")]
    ml_per_dose: Annotated[Millilitres | None, Label("Of the labelled bottle, for one dose")]
    grams_per_bottle: Annotated[
        SaltMass | None, Label("Salt for the bottle"), Help("Then fill up with water to the mark.")
    ]
    doses_per_bottle: Annotated[Ratio | None, Label("Doses in the bottle")]
    bottle_g_l: Annotated[Strength | None, Label("Strength of the bottle")]
    solubility_g_l: Annotated[
        Strength | None, Label("Dissolves in a litre of water"), Help("At 20 °C, crystals as sold.")
    ]
    most_g_l: Annotated[
        Strength | None,
        Label("Most in a litre bottle"),
        Help("Filled to the mark; less, because the salt takes room itself."),
    ]
    dissolves: Annotated[
        bool | None,
        Label("Within what a litre of water dissolves"),
        Help("Whether it also dissolves in a bottle filled to the mark, the words above say."),
    ]
    least_dose_ml: Annotated[Millilitres | None, Label("Smallest dose volume that dissolves")]
    rise_used_mg_l: Annotated[Concentration, Label("Rise by one dose")]
    week_mg_l: Annotated[
        Concentration | None, Label("Added in a week"), Help("By the doses, of what you raise.")
    ]
    adds: Annotated[
        dict[str, float | None],
        Quantity("One dose adds", "mg/L", (0, 10_000)),
        Help("Ions as NO₃, PO₄, SO₄ and Cl, the others as the element."),
    ]
    settled_before_change_mg_l: Annotated[
        Concentration | None, Label("Settles at, just before a change")
    ]
    settled_after_change_mg_l: Annotated[
        Concentration | None, Label("Settles at, just after a change"), Help("Before its dose.")
    ]
    notes: tuple[Note, ...]
    series: dict[str, Series]
