"""A change of water in words, where the usual large one could do harm in this tank.

Where ammonia shows or pH is low, a large change can turn ammonium into toxic ammonia.
"""

from typing import NamedTuple

from calculators.science.animals.reading_lines import standing
from calculators.science.water.changing_water import first_step_for_ammonia

SAME_WATER = "dechlorinated water within 2 °C (4 °F) of the tank’s"
ACID_PH = 7.5  # below it a change with common tap water can free more ammonia than it takes out, by the model

A_TENTH = (
    f"Change a tenth of the water, slowly, with {SAME_WATER}; then read the pH, and wait some hours "
    "before the next tenth: a quick rise harms as well."
)
TEST_BEFORE = (
    "Test ammonia before you change any water. If it shows, open the calculator for changing water with "
    "ammonia first. If it reads zero: "
)
TEST_FIRST = (
    "At this pH test ammonia before a large change; it takes five minutes. If it shows, a change can turn "
    "it toxic: open the calculator for changing water with ammonia first. If it reads zero: "
)
# The condition stands before the change, as on the danger page: who acts at the first words must not harm.
IF_SURE = (
    f"If a test shows no ammonia, or the pH is {ACID_PH} or above and the new water no harder than the "
    "tank’s: "
)
IF_IN_DOUBT = (
    " With no test at hand, only if the tank has had this same water every week or two. Where ammonia shows, "
    "a change can turn it toxic: open the calculator for changing water with ammonia first."
)
IF_NO_HARDER = "With new water no harder than the tank’s: "
IF_HARDER = " With harder water test ammonia first: where it shows, a change can make it worse."


class WaterForChange(NamedTuple):
    """What is known of the water that decides how it may be changed; None where it is not."""

    ammonia_mg_n_l: float | None = None
    ph: float | None = None
    kh_dh: float | None = None
    temperature_c: float | None = None
    tap_ph: float | None = None
    tap_kh_dh: float | None = None


def careful_change(water: WaterForChange, none_mg_n_l: float = 0.0) -> str | None:
    """The change of water that these readings allow; None where the usual one does no harm.

    Up to ``none_mg_n_l`` a reading of ammonia counts as none.
    """
    if water.ammonia_mg_n_l is not None and water.ammonia_mg_n_l > none_mg_n_l:
        return first_step_for_ammonia(water.ammonia_mg_n_l, *water[1:])
    if water.ph is not None and standing("ph", water.ph).side == "low":
        return A_TENTH if water.ammonia_mg_n_l is not None else TEST_BEFORE + lower(A_TENTH)
    return None


def test_first(water: WaterForChange) -> bool:
    """Whether ammonia, of which nothing is known, must be read before a large change."""
    return water.ammonia_mg_n_l is None and water.ph is not None and water.ph < ACID_PH


def with_care(change: str, water: WaterForChange, none_mg_n_l: float = 0.0) -> str:
    """A change of water in words, as these readings allow it; see ``careful_change``."""
    careful = careful_change(water, none_mg_n_l)
    if careful:
        return careful
    if test_first(water):
        return TEST_FIRST + lower(change)
    if water.ammonia_mg_n_l is not None:
        return change
    if water.ph is None:
        return IF_SURE + lower(change) + IF_IN_DOUBT
    return IF_NO_HARDER + lower(change) + IF_HARDER


def lower(text: str) -> str:
    """A sentence as it goes on after a colon."""
    return text[:1].lower() + text[1:]
