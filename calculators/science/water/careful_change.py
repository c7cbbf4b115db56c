"""A change of water in words, where the usual large one could do harm in this tank.

Where ammonia shows or pH is low, a large change can turn ammonium into toxic ammonia.
"""

from typing import NamedTuple

from calculators.core.numbers import show_number
from calculators.science.animals.reading_lines import edge_of, standing
from calculators.science.animals.toxic_lines import ammonia_standing
from calculators.science.water.asked_change import AskedChange
from calculators.science.water.change_choice import ACID_PERCENT
from calculators.science.water.change_words import BRINGS, brings_ammonia
from calculators.science.water.changing_water import first_step_for_ammonia
from calculators.science.water.first_change import hardness_jump
from calculators.science.water.hardness_gap import HardnessGap, hardness_gaps

SAME_WATER = "dechlorinated water within 2 °C (4 °F) of the tank’s"
ACID_PH = 7.5  # below it a change with common tap water can free more ammonia than it takes out, by the model
# As the diagnosis has its band for none. At pH 8.5 and 28 °C half of the line that harms would be free.
NO_AMMONIA_MG_N_L = 0.05

IN_ACID_WATER = (
    f"At pH {show_number(edge_of('ph', 'harmful_low'))} or below change no more than "
    f"{ACID_PERCENT:g} % at a time, slowly."
)
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
    """What is known of the water that decides how it may be changed; None where it is not.

    ``asked`` is the change that nitrite or nitrate asks for, for the case that ammonia shows too, and
    ``tap_nitrate_mg_l`` beside ``nitrate_mg_l`` decides whether this tap may be used for it.
    """

    ammonia_mg_n_l: float | None = None
    ph: float | None = None
    kh_dh: float | None = None
    temperature_c: float | None = None
    tap_ph: float | None = None
    tap_kh_dh: float | None = None
    gh_dh: float | None = None
    tap_gh_dh: float | None = None
    tap_ammonia_mg_n_l: float | None = None
    nitrate_mg_l: float | None = None
    tap_nitrate_mg_l: float | None = None
    asked: AskedChange | None = None

    @property
    def gaps(self) -> list[HardnessGap]:
        """How far the hardness of the new water lies from the tank's, where both are known."""
        return hardness_gaps(self.kh_dh, self.tap_kh_dh, self.gh_dh, self.tap_gh_dh)


def careful_change(water: WaterForChange) -> str | None:
    """The change of water that these readings allow; None where the usual one does no harm."""
    careful = careful_words(water)
    return careful and treated(careful, water)


def careful_words(water: WaterForChange) -> str | None:
    """The same without what is to be done about ammonia of the new water."""
    if water.ammonia_mg_n_l is not None and shows_ammonia(water):
        asked = a_tenth_of(water.asked) if is_acid(water) else water.asked
        return first_step_for_ammonia(
            water.ammonia_mg_n_l, water.ph, water.kh_dh, water.temperature_c, water.tap_ph,
            water.tap_kh_dh, water.gh_dh, water.tap_gh_dh, water.tap_ammonia_mg_n_l, asked,
        )  # fmt: skip
    return a_tenth_at_a_time(water) if is_acid(water) else None


def a_tenth_at_a_time(water: WaterForChange) -> str:
    """The change of water that holds no pH, where no ammonia shows; else the test first."""
    jump = hardness_jump(ACID_PERCENT, water.gaps)
    tenth = f"{jump} {A_TENTH}".strip()
    return tenth if water.ammonia_mg_n_l is not None else TEST_BEFORE + lower(tenth)


def treated(change: str, water: WaterForChange) -> str:
    """A change of water in words, with what to do first about ammonia that the new water brings."""
    own = brings_ammonia(water.tap_ammonia_mg_n_l or 0.0)
    return change if not own or BRINGS in change else f"{change} {own}"


def shows_ammonia(water: WaterForChange) -> bool:
    """Whether a reading says that there is ammonia; as little as a kit hardly shows counts where it harms."""
    total = water.ammonia_mg_n_l
    if not total:
        return False
    harms = ammonia_standing(total, water.ph, water.temperature_c).level != "in-range"
    return harms or total > NO_AMMONIA_MG_N_L


def is_acid(water: WaterForChange) -> bool:
    """Whether the water is so acid that a quick rise harms by itself."""
    return water.ph is not None and standing("ph", water.ph).side == "low"


def a_tenth_of(asked: AskedChange | None) -> AskedChange | None:
    """The same reading's change, no more than acid water bears at a time."""
    if asked is None:
        return None
    again = ", slowly; then read the pH, and wait some hours before the next tenth"
    return asked._replace(percent=ACID_PERCENT, share="a tenth", again=again)


def test_first(water: WaterForChange) -> bool:
    """Whether ammonia, of which nothing is known, must be read before a large change."""
    return water.ammonia_mg_n_l is None and water.ph is not None and water.ph < ACID_PH


def with_care(change: str, water: WaterForChange, percent: float = 0.0) -> str:
    """A change of water in words, as these readings allow it; see ``careful_change``.

    ``percent`` is what the words ask for; 0 says nothing of new water of another hardness.
    """
    careful = careful_change(water)
    if careful:
        return careful
    killer = water.asked.killer if water.asked else ""
    jump = hardness_jump(percent, water.gaps, killer)
    change = treated(f"{jump} {change}".strip(), water)
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
