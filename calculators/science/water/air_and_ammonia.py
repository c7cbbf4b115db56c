"""Whether air by itself would free ammonia that kills, or far more of it: then it is bound first.

Carbon dioxide that a rotting soil or a closed surface holds in the water keeps its pH down. As it
leaves, more of the ammonia turns toxic, with no new water at all.
"""

from calculators.science.water.ammonia import free_kills
from calculators.science.water.change_words import BIND
from calculators.science.water.readings_fit import fit_together
from calculators.science.water.unread import WARM_C
from calculators.science.water.water_mix import (
    State,
    Water,
    aired_state,
    closed_state,
    dissolved,
)

FAR_MORE = 2.0  # times as much free ammonia; judgement: below it air does more good than harm
BIND_BEFORE_AIR = f"Before you add air, unless animals gasp, {BIND}."


def air_makes_deadly(now: State, aired: State) -> bool:
    """Whether balance with air takes free ammonia to the line at which it kills, or far beyond it."""
    is_new = not free_kills(now.nh3_mg_n_l) or aired.nh3_mg_n_l >= FAR_MORE * now.nh3_mg_n_l
    return free_kills(aired.nh3_mg_n_l) and is_new


def air_kills(
    ammonia_mg_n_l: float | None, ph: float | None, kh_dh: float | None, temperature_c: float | None
) -> bool:
    """The same by a keeper's readings, KH in °dH; None is not read, and an unread warmth is taken as warm.

    Without pH or KH nobody knows, nor where the two do not fit together: then it is False.
    """
    if not ammonia_mg_n_l or ph is None or kh_dh is None:
        return False
    warmth = WARM_C if temperature_c is None else temperature_c
    if not fit_together(ph, kh_dh, warmth):
        return False
    held = dissolved(Water(ph, kh_dh, warmth, ammonia_mg_n_l))
    return air_makes_deadly(closed_state(held), aired_state(held))
