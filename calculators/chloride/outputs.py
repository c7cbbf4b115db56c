"""What the calculator for chloride gives."""

from typing import Annotated, NamedTuple

from calculators.core.quantities import Concentration, SaltMass
from calculators.core.quantity import Label, OnlyWith, Quantity, WhenNone
from calculators.core.result import Note, Series

WantedChloride = Annotated[float, Quantity("Chloride", "mg/L", (0, 1e6))]


class ChlorideAgainstNitrite(NamedTuple):
    """The chloride for a ratio, and the salt for it where it may be given."""

    chloride_wanted_mg_l: Annotated[WantedChloride, Label("Chloride for this ratio")]
    chloride_missing_mg_l: Annotated[WantedChloride, Label("Missing of it")]
    salt_g: Annotated[
        SaltMass | None,
        Label("Salt (sodium chloride), in all"),
        WhenNone("none: so much chloride harms by itself"),
    ]
    salt_mg_l: Annotated[WantedChloride | None, Label("That is, salt added"), OnlyWith("salt_g")]
    sodium_mg_l: Annotated[Concentration | None, Label("Sodium added"), OnlyWith("salt_g")]
    notes: tuple[Note, ...]
    series: dict[str, Series]
