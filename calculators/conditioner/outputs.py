"""What the calculator for conditioner gives."""

from typing import Annotated, NamedTuple

from calculators.core.quantities import Millilitres, Nitrogen, OxygenAhead, SaltMass
from calculators.core.quantity import AnswersTo, Help, Label
from calculators.core.result import Note


class Conditioner(NamedTuple):
    """Doses for the new water, and the ammonia that it sets free."""

    dose_ml: Annotated[Millilitres, Label("Conditioner for the new water, by its label")]
    tank_dose_ml: Annotated[
        Millilitres | None,
        Label("Conditioner for the whole tank"),
        Help("Where new water runs straight into it."),
        AnswersTo(("tank_l",)),
    ]
    ammonia_freed_mg_n_l: Annotated[
        Nitrogen,
        Label("Ammonia set free in the new water"),
        Help("As nitrogen: what is bound in the chloramine."),
    ]
    most_ammonia_mg_n_l: Annotated[
        Nitrogen,
        Label("The most that such water brings"),
        Help("Suppliers may add more ammonia than the chlorine binds."),
    ]
    tank_ammonia_mg_n_l: Annotated[
        Nitrogen | None,
        Label("The most of it, mixed into the tank"),
        AnswersTo(("tank_l",)),
    ]
    nh3_mg_n_l: Annotated[
        Nitrogen | None,
        Label("Of that, toxic at this pH"),
        Help("Un-ionised ammonia of the most; in the tank where its litres are given."),
        AnswersTo(("ph",)),
    ]
    thiosulfate_g: Annotated[
        SaltMass,
        Label("Or sodium thiosulfate, crystals"),
        Help("Pentahydrate, 7 g for each g of chlorine: enough at any pH. It binds no ammonia."),
    ]
    oxygen_taken_mg_l: Annotated[
        OxygenAhead,
        Label("Oxygen its unused part can take"),
        Help("From the new water over days, at the most. Air makes up for it."),
    ]
    notes: tuple[Note, ...]
