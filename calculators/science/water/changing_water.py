"""Advice on changing water where ammonia shows: the door to the formulas beside it.

In acid water nearly all ammonia is ammonium, which harms little. Harder new water raises the pH, at
once and more as carbon dioxide leaves, and can free enough ammonia to kill: a change may be the danger.
"""

from typing import NamedTuple

from calculators.science.animals.reading_lines import standing
from calculators.science.water.ammonia import free_kills, unionised_share
from calculators.science.water.asked_change import AskedChange, asks_too, sentence_for_both, verb
from calculators.science.water.change_choice import (
    ACID_PERCENT,
    CHANGING,
    HALF_PERCENT,
    Way,
    choose,
    choose_by_readings,
    misfits,
    outcome,
    outcomes,
)
from calculators.science.water.change_words import BIND, CALM, LIKE_THE_TANK, SAME_KH_AND_PH
from calculators.science.water.first_change import hardness_jump
from calculators.science.water.gentle import STEP_DH_A_DAY
from calculators.science.water.hardness_gap import hardness_gaps
from calculators.science.water.unread import WARM_C
from calculators.science.water.water_mix import Water

# Waters that stand in for readings which a keeper has not taken: soft to hard, KH in °dH.
TANK_KH_DH = (0.0, 2.0, 5.0, 10.0)
TAPS = ((6.5, 1.0), (7.5, 4.0), (8.0, 10.0), (8.3, 18.0))  # pH and KH


class ChangeAdvice(NamedTuple):
    """The way, the change after which free ammonia is least later (0: none helps), and the words."""

    way: Way
    best_percent: float
    sentence: str


def advise(
    tank: Water, tap: Water, percent: float | None = None, asked: AskedChange | None = None
) -> ChangeAdvice:
    """Advise on a change of water; ``percent`` is one that the words speak of, a half if None.

    ``asked`` is a change that another reading asks for. Readings as ``Water`` has them: pH, KH in °dH,
    °C, total ammonia in mg N/L. No change that is advised takes free ammonia to the act line from below
    it, by the model of ``water_mix``.
    """
    choice = choose(tank, tap, outcomes(tank, tap))
    change = outcome(tank, tap, percent or HALF_PERCENT)
    words = sentence_for_both(choice, tank, tap, change, asked)
    return ChangeAdvice(choice.way, choice.best_percent, words)


def first_step_for_ammonia(
    ammonia_mg_n_l: float,
    ph: float | None,
    kh_dh: float | None,
    temperature_c: float | None,
    tap_ph: float | None = None,
    tap_kh_dh: float | None = None,
    gh_dh: float | None = None,
    tap_gh_dh: float | None = None,
    tap_ammonia_mg_n_l: float | None = None,
    asked: AskedChange | None = None,
) -> str:
    """The first thing to do where ammonia shows, for a keeper who may not know every reading.

    None is a reading not taken; ``asked`` is the change that nitrite or nitrate asks for beside it. A
    change is advised only where it helps in every water that the missing readings leave open; else the
    words say which reading to take first.
    """
    if ammonia_mg_n_l <= 0:
        return "No ammonia shows, so the water needs no change for it."
    warmth = WARM_C if temperature_c is None else temperature_c
    if ph is None:
        return (
            f"Read the pH before you change water: it decides whether a change helps or harms. {CALM} "
            f"If you cannot test now, {BIND}{softly(asked)}."
        )
    tanks = [Water(ph, kh, warmth, ammonia_mg_n_l, gh_dh) for kh in reading_or(kh_dh, TANK_KH_DH)]
    tap = Water(tap_ph or 0.0, tap_kh_dh or 0.0, warmth, tap_ammonia_mg_n_l or 0.0, tap_gh_dh)
    taps = [
        tap._replace(
            ph=a if tap_ph is None else tap_ph, kh_dh=b if tap_kh_dh is None else tap_kh_dh
        )
        for a, b in TAPS
    ]
    own = [] if kh_dh is None else misfits(tanks[0])
    if tap_ph is not None and tap_kh_dh is not None:
        own += misfits(taps[0])
    if own:
        choice = choose_by_readings(tanks[0], taps[0], outcomes(tanks[0], taps[0]))
        change = outcome(tanks[0], taps[0], HALF_PERCENT)
        return sentence_for_both(choice, tanks[0], taps[0], change, asked)
    advice = [advise(tank, tap, asked=asked) for tank in tanks for tap in dict.fromkeys(taps)]
    if len(advice) == 1 or len({(option.way, option.sentence) for option in advice}) == 1:
        return advice[0].sentence
    return with_gaps(tanks, taps[0], missing(kh_dh, tap_ph, tap_kh_dh), asked)


def with_gaps(
    tanks: list[Water], tap: Water, unread: list[str], asked: AskedChange | None = None
) -> str:
    """The first step where the missing readings leave open whether a change helps.

    ``asked`` is the change that another reading asks for; of the ``tap`` the general hardness alone counts.
    """
    gaps = hardness_gaps(None, None, tanks[0].gh_dh, tap.gh_dh)

    def after_hardness(percent: float, killer: str) -> str:
        """What general hardness adds to a change of so many percent, and how to go on."""
        return f"{hardness_jump(percent, gaps, killer)} {CALM}".strip()

    read = f"read {', then '.join(unread)}"
    own = [advise(tank, tank._replace(ammonia_mg_n_l=0.0)).way for tank in tanks]
    if asked and all(way == "nothing" for way in own):
        return (
            f"First {read}: where the new water's pH and KH are no higher than the tank's, change "
            f"{asked.share} of the water now with {LIKE_THE_TANK}{asked.again}, since {asked.reading} "
            f"{verb(asked)} for it. With harder water do not change yet, but {BIND}, or make new water of "
            f"{SAME_KH_AND_PH}. {after_hardness(asked.percent, asked.killer)}"
        )
    if all(way == "nothing" for way in own):
        return f"Do not change water for it yet: little is toxic at this pH. {CALM} Then {read}."
    acid = standing("ph", tanks[0].ph).side == "low" and all(way in CHANGING for way in own)
    if acid or all(way == "change-now" for way in own):
        share, percent = (
            ("a tenth of the water, slowly,", ACID_PERCENT) if acid else ("half", HALF_PERCENT)
        )
        kills = free_kills(unionised_now(tanks[0]))
        return (
            f"First {read}: where the new water's pH is no higher than the tank's, and its KH and GH lie "
            f"within {STEP_DH_A_DAY} °dH of them, change {share} now. With other water do not change yet, "
            f"but {BIND}, and ask the calculator for changing water with ammonia. "
            f"{after_hardness(percent, 'ammonia' if kills else '')}"
        )
    return (
        f"Do not change water yet: the wrong water can make the ammonia toxic. {CALM} Now {BIND}, and "
        f"{read}. Then the calculator for changing water when ammonia shows says how much to change."
        f"{once_bound(asked)}"
    )


def unionised_now(tank: Water) -> float:
    """The free ammonia of a water as it was read, mg N/L."""
    return tank.ammonia_mg_n_l * unionised_share(tank.ph, tank.temperature_c)


def once_bound(asked: AskedChange | None) -> str:
    """The change that another reading asks for, once the ammonia is bound; a sentence to add, or nothing."""
    if asked is None:
        return ""
    return (
        f" {asks_too(asked)}: once the ammonia is bound, change {asked.share} of the water with new water "
        f"of {SAME_KH_AND_PH}{asked.again}."
    )


def softly(asked: AskedChange | None) -> str:
    """The same for a keeper who cannot read the pH; the end of a sentence, or nothing."""
    if asked is None:
        return ""
    return (
        f", then change {asked.share} of the water with new water no harder than the tank's{asked.again}, "
        f"since {asked.reading} {verb(asked)} for it"
    )


def reading_or(reading: float | None, stand_ins: tuple[float, ...]) -> tuple[float, ...]:
    """The reading alone where it was taken, else each of the ``stand_ins``, in the same unit."""
    return stand_ins if reading is None else (reading,)


def missing(kh_dh: float | None, tap_ph: float | None, tap_kh_dh: float | None) -> list[str]:
    """The readings that were not taken, in the order in which to take them."""
    readings = (("the tank's KH", kh_dh), ("the tap's KH", tap_kh_dh), ("the tap's pH", tap_ph))
    return [name for name, reading in readings if reading is None]


__all__ = ["ChangeAdvice", "Water", "Way", "advise", "first_step_for_ammonia"]
