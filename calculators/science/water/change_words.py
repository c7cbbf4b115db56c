"""What a keeper is told to do with the water where ammonia shows."""

from calculators.core.numbers import show_number
from calculators.science.animals.toxic_lines import ammonia_kills
from calculators.science.water.ammonia import ACT_NH3_MG_N_L, WATCH_NH3_MG_N_L, free_kills
from calculators.science.water.change_choice import ChangeOutcome, Choice, misfits
from calculators.science.water.first_change import hardness_jump
from calculators.science.water.hardness_gap import HardnessGap, bearable_percent, gaps_between
from calculators.science.water.readings_fit import READ_AGAIN, misfit_words
from calculators.science.water.water_mix import Water

CALM = "Stop feeding and take out what is dead or rotting."
BRINGS = "The new water brings"
BIND = "give a conditioner that binds ammonia, by its label"
LIKE_THE_TANK = "dechlorinated water within 2 °C (4 °F) of the tank's"
SAME_KH_AND_PH = "the tank's own KH and pH"
ORDINARY_PERCENT = 50
ASK_AGAIN = "Test again after an hour, and ask again before the next change."


def sentence(choice: Choice, tank: Water, tap: Water, change: ChangeOutcome) -> str:
    """The advice in a few sentences, the first thing first; ``change`` is one that is spoken of."""
    free = show_number(choice.now.nh3_mg_n_l, 2)
    if choice.way == "read-again":
        return read_again(choice, tank, tap)
    if choice.way == "nothing":
        return nothing(choice, tank, gaps_between(tank, tap))
    if choice.way == "change-now":
        return (
            f"Change {in_parts(choice, tank, tap)} with {LIKE_THE_TANK}: it leaves less free ammonia "
            f"than no change.{far_hardness(choice, tank, tap)} {CALM} {ASK_AGAIN}"
        )
    if choice.way == "change-slowly":
        return (
            f"Change at most {choice.percent:.0f} % now with {LIKE_THE_TANK}, poured slowly."
            f"{far_hardness(choice, tank, tap)} {CALM} {ASK_AGAIN}"
        )
    if choice.way == "match-first":
        return (
            f"Do not change water with this tap yet. {free_now(choice, change)} {CALM} Make new "
            f"water of {SAME_KH_AND_PH} first, the tap mixed with purified water, or "
            f"{BIND}, before any change."
        )
    return bind(choice, tank, tap, free)


def brings_ammonia(tap_ammonia_mg_n_l: float) -> str:
    """What to do with new water that holds so much ammonia of its own; empty where it holds none."""
    if tap_ammonia_mg_n_l <= 0:
        return ""
    return (
        f"{BRINGS} {show_number(tap_ammonia_mg_n_l, 2)} mg N/L of its own: treat it before it "
        "goes in with a conditioner that binds ammonia, by its label, or take other water."
    )


def in_parts(choice: Choice, tank: Water, tap: Water) -> str:
    """How much to change now; who acts on the first words must not move the hardness too far at once."""
    part = bearable_percent(gaps_between(tank, tap))
    if part >= choice.percent:
        return f"{choice.percent:.0f} % now"
    return f"{choice.percent:.0f} % now, but no more than {part} % at a time,"


def far_hardness(choice: Choice, tank: Water, tap: Water) -> str:
    """What to do about a tap of far other hardness in the change to make now; with a space before it.

    Where ammonia kills, a conditioner that binds it gives the time that slow changes take: such as split for
    the hardness, or those of acid water, in which the total kills and a change is not hurried.
    """
    hurries = free_kills(choice.now.nh3_mg_n_l)
    jump = hardness_jump(choice.percent, gaps_between(tank, tap), "ammonia" if hurries else "")
    slow = jump if hurries else ammonia_kills(tank.ammonia_mg_n_l, tank.ph, tank.temperature_c)
    gain = f"To gain time, {BIND}." if slow else ""
    return "".join(f" {words}" for words in (jump, gain) if words)


def read_again(choice: Choice, tank: Water, tap: Water) -> str:
    """What to do while a pH and a KH do not fit together: reckon with the worse of the two."""
    if misfits(tank):
        aired = choice.aired.nh3_mg_n_l
        worse = (
            f"{misfit_words(tank.ph, tank.kh_dh, tank.temperature_c, 'of the tank')} If it is the pH, "
            f"{show_number(aired, 2)} mg N/L of the ammonia is free in your tank{above_line(aired)}."
        )
    else:
        worse = misfit_words(tap.ph, tap.kh_dh, tap.temperature_c, "of the new water")
    return (
        f"Do not change water on these readings. {CALM} {worse} {READ_AGAIN} Until they fit, {BIND}. If "
        "animals gasp, add air all the same: want of oxygen kills sooner."
    )


def free_now(choice: Choice, change: ChangeOutcome) -> str:
    """How much is free now, and what the change and air alone would bring it to.

    Where it harms already, air comes first, if water in balance with air has less of it free.
    """
    now, aired = choice.now.nh3_mg_n_l, choice.aired.nh3_mg_n_l
    free = show_number(now, 2)
    if now < WATCH_NH3_MG_N_L:
        return (
            f"Only {free} mg N/L of the ammonia is free now; a change of {change.percent:.0f} % would "
            f"bring it to {to_level(change)}."
        )
    text = f"{free} mg N/L of the ammonia is free now{above_line(now)}."
    if aired < now:
        text += (
            f" Move the surface with air now: that alone can bring it to {show_number(aired, 2)}."
        )
    return f"{text} {no_better(choice, change)}"


def no_better(choice: Choice, change: ChangeOutcome) -> str:
    """Why a change is no better than air, where ammonia harms already."""
    at_once, later = change.at_once.nh3_mg_n_l, change.later.nh3_mg_n_l
    start = f"A change of {change.percent:.0f} % with this tap would"
    if at_once > choice.now.nh3_mg_n_l:
        return f"{start} first bring it to {show_number(at_once, 2)}."
    if later > choice.aired.nh3_mg_n_l:
        return f"{start} bring it no lower than {show_number(later, 2)}."
    return f"{start} raise it on the way."


def nothing(choice: Choice, tank: Water, gaps: list[HardnessGap]) -> str:
    """Nothing to do with the water, and what still has a cause; ``gaps`` are those to the new water."""
    if tank.ammonia_mg_n_l == 0:
        return "No ammonia shows, so the water needs no change for it."
    return (
        "Little of the ammonia is toxic, and it stays so as gas leaves: no change is needed for it. "
        f"{room(choice.largest_percent, gaps)} {CALM} Look for the cause and test daily."
    )


def room(largest_percent: float, gaps: list[HardnessGap]) -> str:
    """How far an ordinary change may go, by the ammonia and by the hardness of the new water."""
    bearable = bearable_percent(gaps)
    if min(largest_percent, bearable) >= ORDINARY_PERCENT:
        return "An ordinary change with this tap does no harm."
    if 0 < largest_percent <= bearable:
        return f"If you change, no more than {largest_percent:.0f} % at a time with this tap."
    if largest_percent > 0:
        widest = max(gaps, key=lambda gap: gap.size_dh)
        return (
            f"If you change, no more than {bearable} % at a time with this tap: its {widest.name} of "
            f"{show_number(widest.new_dh)} °dH is far from the tank's."
        )
    return "Do not change with this tap: it would make more of it toxic."


def bind(choice: Choice, tank: Water, tap: Water, free: str) -> str:
    """Bind before anything else: the tank's own gas, or the new water's ammonia, is the danger."""
    own_gas = choice.aired.nh3_mg_n_l > choice.now.nh3_mg_n_l
    if tap.ammonia_mg_n_l >= tank.ammonia_mg_n_l / 2 or not own_gas:
        why = f"{BRINGS} {show_number(tap.ammonia_mg_n_l, 2)} mg N/L of its own"
    else:
        why = (
            f"Free ammonia is {free} mg N/L now, and {show_number(choice.aired.nh3_mg_n_l, 2)} once "
            "the tank's carbon dioxide leaves, even with no change"
        )
    return (
        f"Before any change, {BIND}. {why}; water moved or changed with this tap can bring that on. "
        f"{CALM} If animals gasp, add air all the same: want of oxygen kills sooner."
    )


def to_level(change: ChangeOutcome) -> str:
    """How far a change would bring free ammonia, at its worst."""
    worst = max(change.at_once.nh3_mg_n_l, change.later.nh3_mg_n_l)
    return f"{show_number(worst, 2)} mg N/L as gas leaves{above_line(worst)}"


def above_line(nh3_mg_n_l: float) -> str:
    """That so much free ammonia can kill, where it can."""
    if not free_kills(nh3_mg_n_l):
        return ""
    return f", above the line of {ACT_NH3_MG_N_L} at which it can kill"
