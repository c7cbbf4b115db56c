"""The inputs that say what the new water is like, as every form asks for them; empty is not read."""

from typing import Annotated

from calculators.core.quantities import PH, CarbonateHardness, GeneralHardness
from calculators.core.quantity import Help, Label, Possible

TapPh = Annotated[PH | None, Label("pH of the new water"), Possible(4, 11)]
TapKh = Annotated[CarbonateHardness | None, Label("KH of the new water")]
TapGh = Annotated[GeneralHardness | None, Label("GH of the new water")]
# Of the tank's own hardness, carbonate or general, beside it.
LIMITS_A_CHANGE = Help("With that of the new water it limits how much may be changed at a time.")
