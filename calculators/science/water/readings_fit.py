"""Whether a pH and a carbonate hardness can be of one water, by the carbonate equilibrium.

Together they say how much carbon dioxide the water holds. Where that is more than water open to the
air can hold, one of the two was misread, and nothing may be built on the calmer one.
"""

from calculators.core.numbers import show_number
from calculators.science.water.carbonate import co2_mg_l, pure_gas_co2_mg_l
from calculators.science.water.chemistry import MEQ_PER_DH
from calculators.science.water.water_mix import Water, aired_state, dissolved

PH_ERROR = 0.2  # what a drop kit leaves open; common practice, no source
KH_ERROR_DH = 0.5  # half a drop of a kit that counts degrees
# Judgement: water over a rotting soil, or charged with gas, stays under a tenth of what it holds under
# the pure gas, which is about 150 mg/L at 25 °C; fish are dead at that.
MOST_OF_PURE_GAS = 0.1
READ_AGAIN = (
    "Read both again, pH with a second kit or a fresh strip and KH drop by drop, and try both kits on "
    "tap water."
)


def fit_together(ph: float, kh_dh: float, temperature_c: float) -> bool:
    """Whether one open water may have both readings, each as wrong as a kit leaves open.

    ``kh_dh`` is in °dH and ``temperature_c`` in °C. A hardness that may be none fits every pH.
    """
    least_meq = (kh_dh - KH_ERROR_DH) * MEQ_PER_DH
    if least_meq <= 0:
        return True
    least = co2_mg_l(least_meq, least_meq, ph + PH_ERROR, temperature_c)
    return least is None or least <= MOST_OF_PURE_GAS * pure_gas_co2_mg_l(temperature_c)


def misfit_words(ph: float, kh_dh: float, temperature_c: float, whose: str = "") -> str:
    """That the two readings do not fit together, why, and what each of them would mean by itself.

    ``kh_dh`` is in °dH and ``temperature_c`` in °C; ``whose`` names the water, such as "of the tank".
    """
    meq = kh_dh * MEQ_PER_DH
    gas = co2_mg_l(meq, meq, ph, temperature_c) or 0.0
    aired = aired_state(dissolved(Water(ph, kh_dh, temperature_c))).ph
    named = f" {whose}" if whose else ""
    return (
        f"The pH of {show_number(ph)} and the KH of {show_number(kh_dh)} °dH{named} do not fit together: by "
        f"the carbonate equilibrium the water would hold about {float(f'{gas:.2g}'):.0f} mg/L of carbon "
        "dioxide, more than water open to the air can. Water of this KH stands near pH "
        f"{show_number(aired, 2)} in air; water of this pH has next to no KH. One reading is wrong."
    )
