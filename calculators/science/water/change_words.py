"""What a keeper is told to do with the water where ammonia shows."""

from calculators.core.numbers import show_number
from calculators.science.water.ammonia import ACT_NH3_MG_N_L
from calculators.science.water.change_choice import ChangeOutcome, Choice
from calculators.science.water.water_mix import Water

CALM = "Stop feeding and take out what is dead or rotting."
BIND = "give a conditioner that binds ammonia, by its label"
LIKE_THE_TANK = "dechlorinated water within 2 °C (4 °F) of the tank's"
ORDINARY_PERCENT = 50
ASK_AGAIN = "Test again after an hour, and ask again before the next change."


def sentence(choice: Choice, tank: Water, tap: Water, change: ChangeOutcome) -> str:
    """The advice in a few sentences, the first thing first; ``change`` is one that is spoken of."""
    free = show_number(choice.now.nh3_mg_n_l, 2)
    if choice.way == "nothing":
        return nothing(choice, tank)
    if choice.way == "change-now":
        return (
            f"Change {choice.percent:.0f} % now with {LIKE_THE_TANK}: it leaves less free ammonia "
            f"than no change. {CALM} {ASK_AGAIN}"
        )
    if choice.way == "change-slowly":
        return (
            f"Change at most {choice.percent:.0f} % now with {LIKE_THE_TANK}, poured slowly. {CALM} "
            f"{ASK_AGAIN}"
        )
    if choice.way == "match-first":
        return (
            f"Do not change water with this tap yet. Only {free} mg N/L of the ammonia is free now; a "
            f"change of {change.percent:.0f} % would bring it to {to_level(change)}. {CALM} Make new "
            "water of the tank's own KH and pH first, the tap mixed with purified water, or "
            f"{BIND}, before any change."
        )
    return bind(choice, tank, tap, free)


def nothing(choice: Choice, tank: Water) -> str:
    """Nothing to do with the water, and what still has a cause."""
    if tank.ammonia_mg_n_l == 0:
        return "No ammonia shows, so the water needs no change for it."
    return (
        "Little of the ammonia is toxic, and it stays so as gas leaves: no change is needed for it. "
        f"{room(choice.largest_percent)} {CALM} Look for the cause and test daily."
    )


def room(largest_percent: float) -> str:
    """How far an ordinary change may go."""
    if largest_percent >= ORDINARY_PERCENT:
        return "An ordinary change with this tap does no harm."
    if largest_percent > 0:
        return f"If you change, no more than {largest_percent:.0f} % at a time with this tap."
    return "Do not change with this tap: it would make more of it toxic."


def bind(choice: Choice, tank: Water, tap: Water, free: str) -> str:
    """Bind before anything else: the tank's own gas, or the new water's ammonia, is the danger."""
    own_gas = choice.aired.nh3_mg_n_l > choice.now.nh3_mg_n_l
    if tap.ammonia_mg_n_l >= tank.ammonia_mg_n_l / 2 or not own_gas:
        why = f"The new water brings {show_number(tap.ammonia_mg_n_l, 2)} mg N/L of its own"
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
    above = (
        f", above the line of {ACT_NH3_MG_N_L} at which it can kill"
        if worst >= ACT_NH3_MG_N_L
        else ""
    )
    return f"{show_number(worst, 2)} mg N/L as gas leaves{above}"
