"""What the hardness calculator says beside its figures."""

from calculators.core.numbers import show_number
from calculators.core.result import Link, Note
from calculators.core.wording import CHANGE_WITH_CARE, DANGER_PAGE
from calculators.science.animals.reading_lines import standing
from calculators.science.animals.reading_steps import STEPS
from calculators.science.water.carbonate import SUFFOCATING_CO2_MG_L
from calculators.science.water.gentle import STEP_DH_A_DAY
from calculators.science.water.readings_fit import READ_AGAIN

# Working lines, common practice, no source: a tank without added gas seldom holds more than 10.
MUCH_MG_L = 15
UNLIKELY_WITHOUT_GAS_MG_L = 10
THIN_BUFFER_DH = 2
LITTLE_BUFFER_PH = 5.5  # below it other acids decide, and nitrifying bacteria slow down

GASPING = Note(
    "danger",
    "If animals gasp, add air and move the surface first: that drives the gas out within an hour or two, "
    "and does more than new water. The pH rises as the gas leaves, and with it the toxic share of any "
    "ammonia: test ammonia before you change water.",
    False,
    (
        DANGER_PAGE,
        Link("How to change water when ammonia shows", "calculators/ammonia-change/"),
    ),
)
LEAST_KH_OF_MIX_DH = 1.0  # common practice, no source: below it pH can fall fast


def about_gas(co2: float | None, most: float, pure: float, air: float) -> list[Note]:
    """What the carbon dioxide means for animals, and whether to believe it.

    ``most`` is the upper end of what the kits leave open, ``pure`` what water holds under the pure gas.
    All four are in mg/L: ``co2`` is what this water holds by its readings, None where there is no
    answer, and ``air`` what it holds in balance with air.
    """
    if co2 is None:
        why = (
            "Carbon dioxide cannot be computed: at this pH there is more hydroxide than the carbonate "
            "hardness has room for. Something else raises the pH, or a reading is wrong."
        )
        return [Note("caution", why, True)]
    notes = []
    if co2 > pure:
        text = "That is more than water can hold: other acids set this pH, or a reading is wrong."
        notes.append(Note("caution", text))
    elif co2 > SUFFOCATING_CO2_MG_L:
        text = (
            f"Above about {SUFFOCATING_CO2_MG_L} mg/L of carbon dioxide fish suffocate. If it is real, turn "
            "off any gas and move the surface with an air stone now."
        )
        notes += [Note("danger", text), GASPING]
    elif max(co2, most) > MUCH_MG_L:
        text = (
            "It may be enough to trouble animals: watch them breathe at dawn, and keep air moving."
        )
        notes.append(Note("caution", text))
    if co2 > UNLIKELY_WITHOUT_GAS_MG_L:
        text = (
            "A tank without added gas seldom holds so much. More likely peat, leaf litter, wood or "
            "phosphate lowers the pH, which this formula cannot see, or a kit is off."
        )
        notes.append(Note("caution", text))
    if max(co2, most) < air:
        text = "It is less than air would give: plants use it faster than it comes in, or a kit is off."
        notes.append(Note("info", text))
    return notes


def misfit(words: str) -> list[Note]:
    """What is said where pH and hardness cannot be of one water; ``words`` say why."""
    text = (
        f"{words} {READ_AGAIN} Until then trust neither: if the KH is wrong, nothing holds the pH; if the pH "
        "is wrong, far more of any ammonia is toxic than it says. Test ammonia, and look at the animals."
    )
    return [Note("danger", text, True), GASPING]


def verdict(co2: float, least: float, most: float) -> Note:
    """The answer in plain words.

    The likeliest ``co2`` and the ``least`` and ``most`` that the kits leave open are in mg/L.
    """
    text = (
        f"About {show_number(co2, 2)} mg/L of carbon dioxide ({show_number(least, 2)} to "
        f"{show_number(most, 2)}), if carbonate alone sets the pH."
    )
    return Note("info", text, True)


def about_readings(kh_dh: float, ph: float) -> list[Note]:
    """How far the readings carry."""
    notes = [
        Note(
            "info",
            "The range is for a pH reading right within 0.2 and a hardness reading right within half "
            "a degree. Humic acids, peat and phosphate make the true figure lower than that.",
        )
    ]
    if kh_dh < THIN_BUFFER_DH:
        text = (
            "With so little carbonate hardness pH can fall fast as nitrate is made. Test both weekly, "
            "and never try to raise pH with one large dose or one large change."
        )
        notes.append(Note("caution", text))
    if ph < LITTLE_BUFFER_PH:
        text = (
            "Below pH 5.5 other acids decide the pH more often than gas, and then this figure for carbon "
            "dioxide is far too high. As long as you do not know which, treat it as real."
        )
        notes.append(Note("caution", text))
    return notes


def about_general(gh_dh: float) -> list[Note]:
    """General hardness, in °dH, that troubles animals by itself."""
    level, side = standing("gh_dh", gh_dh)
    if level == "in-range":
        return []
    return [Note("caution", f"GH reads {show_number(gh_dh)} °dH. {STEPS[('gh_dh', side)].harmful}")]


def about_mix(
    share: float | None,
    first: float,
    second: float,
    target: float,
    mixed_kh_dh: float | None,
) -> list[Note]:
    """Whether the two waters can make the target, and how to use the mix.

    The ``first`` and the ``second`` water, the ``target`` and ``mixed_kh_dh`` are in °dH; ``share`` is the
    part of the second, None where no mix will do.
    """
    if share is None:
        why = (
            f"No mix of the two waters reaches {show_number(target)} °dH: one reads "
            f"{show_number(first)}, the other {show_number(second)}, and a mix lies between them."
        )
        return [Note("caution", why)]
    if share == 0:
        return []
    text = (
        "The pH of a mix is not the mean of the two: let it stand with air overnight, then test. Bring "
        f"animals over slowly, by no more than about {STEP_DH_A_DAY} °dH a day."
    )
    return [*thin_mix(mixed_kh_dh), Note("caution", text), CHANGE_WITH_CARE]


def thin_mix(mixed_kh_dh: float | None) -> list[Note]:
    """A mix that holds its pH badly, by its carbonate hardness in °dH; nothing where that is not known."""
    if mixed_kh_dh is None or mixed_kh_dh >= LEAST_KH_OF_MIX_DH:
        return []
    text = (
        f"The mix has next to no carbonate hardness ({show_number(mixed_kh_dh, 2)} °dH): its pH can fall "
        "within days. Take less of the soft water, or keep in it only kinds that are meant for such water."
    )
    return [Note("caution", text, True)]
