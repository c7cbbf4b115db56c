"""What the calculator for changing water says beside its figures; animals first."""

from calculators.core.result import Level, Link, Note
from calculators.core.wording import CHANGE_WITH_CARE
from calculators.science.animals.reading_words import reading_notes
from calculators.science.water.air_and_ammonia import air_makes_deadly
from calculators.science.water.ammonia import (
    ACT_NH3_MG_N_L,
    WATCH_NH3_MG_N_L,
    acute_limit_mg_n_l,
    chronic_limit_mg_n_l,
    free_kills,
    rate,
)
from calculators.science.water.ammonia_reading import BOUND_IS_COUNTED, unit_notes
from calculators.science.water.carbonate import SUFFOCATING_CO2_MG_L, co2_mg_l
from calculators.science.water.change_choice import CHANGING, ChangeOutcome, Choice, misfits
from calculators.science.water.change_words import brings_ammonia, sentence
from calculators.science.water.chemistry import MEQ_PER_DH
from calculators.science.water.mixing import share_of_second
from calculators.science.water.readings_fit import READ_AGAIN, misfit_words
from calculators.science.water.water_mix import UNSEEN_KH_DH, Water

NEARLY_ALL = 0.98
OTHER_POISONS = Note(
    "info",
    "Nitrite and chlorine are separate matters: test nitrite as well, and use a conditioner for "
    "chlorine or chloramine in all new tap water, by its label.",
)
GASPING = Note(
    "caution",
    "If animals gasp or lie down, move the surface with air at once, whatever the ammonia: want of "
    "oxygen kills sooner. Ask a vet who treats fish if it goes on.",
)
NO_PH_UP = Note(
    "caution", "Do not raise the pH or the carbonate hardness while ammonia shows: it frees more."
)


def notes(
    choice: Choice, tank: Water, tap: Water, change: ChangeOutcome, reported_as: str
) -> tuple[Note, ...]:
    """The advice first, then what bounds it."""
    kills = reading_notes(ammonia_is_read=True, ph=tank.ph, temperature_c=tank.temperature_c)
    if tank.ammonia_mg_n_l == 0:
        none = Note("info", sentence(choice, tank, tap, change), True)
        return (
            none,
            *this_change(choice, change),
            *taps_own(choice, tap),
            *kills,
            *do_not_fit(tank, tap),
            OTHER_POISONS,
        )
    return (
        advice(choice, tank, tap, change),
        *this_change(choice, change),
        *kills,
        *taps_own(choice, tap),
        *unit_notes(reported_as),
        *about_air(choice),
        *about_gas(tank),
        *matching(choice, tank, tap),
        GASPING, NO_PH_UP, OTHER_POISONS, BOUND_IS_COUNTED, CHANGE_WITH_CARE,
    )  # fmt: skip


def advice(choice: Choice, tank: Water, tap: Water, change: ChangeOutcome) -> Note:
    """The note that says how to change the water, with the page for the first hour where animals are in
    danger."""
    chronic = chronic_limit_mg_n_l(tank.ph, tank.temperature_c)
    acts = rate(tank.ammonia_mg_n_l / chronic, choice.now.nh3_mg_n_l) == "act"
    level: Level = "danger" if acts else "caution"
    text = sentence(choice, tank, tap, change)
    if tank.ammonia_mg_n_l > acute_limit_mg_n_l(tank.ph, tank.temperature_c):
        text += " This is above the acute limit: animals can die within hours."
    links = (Link("Animals in danger", "danger/"),) if acts else ()
    return Note("info" if choice.way == "nothing" else level, text, True, links)


def do_not_fit(tank: Water, tap: Water) -> list[Note]:
    """That a pH and a hardness cannot be of one water, for the tank and for the new water."""
    return [
        Note("caution", f"{misfit_words(*water[:3], whose)} {READ_AGAIN}")
        for water, whose in ((tank, "of the tank"), (tap, "of the new water"))
        if misfits(water)
    ]


def this_change(choice: Choice, change: ChangeOutcome) -> list[Note]:
    """A warning where the change in mind would bring free ammonia to the act line from below."""
    worst = max(change.at_once.nh3_mg_n_l, change.later.nh3_mg_n_l)
    below = not free_kills(choice.now.nh3_mg_n_l)
    said_already = choice.way == "match-first"
    if said_already or change.percent == 0 or not below or not free_kills(worst):
        return []
    text = (
        f"A change of {change.percent:.0f} % with this water would end above the line of "
        f"{ACT_NH3_MG_N_L} mg N/L, at which free ammonia can kill, once its gas has left."
    )
    return [Note("danger", text)]


def taps_own(choice: Choice, tap: Water) -> list[Note]:
    """New water that brings ammonia of its own, where the first words do not say so."""
    if tap.ammonia_mg_n_l == 0 or choice.way not in (*CHANGING, "nothing"):
        return []
    return [Note("caution", brings_ammonia(tap.ammonia_mg_n_l), choice.way == "nothing")]


def about_air(choice: Choice) -> list[Note]:
    """What moving the surface alone does, where it frees ammonia."""
    aired = choice.aired.nh3_mg_n_l
    if aired <= max(choice.now.nh3_mg_n_l, WATCH_NH3_MG_N_L):
        return []
    text = (
        "Carbon dioxide holds the pH of this water down. As it leaves, by an air stone, by light or in "
        "a change, pH rises and more ammonia is free, even with no new water."
    )
    if air_makes_deadly(choice.now, choice.aired):
        text += " Bind the ammonia before you add air, unless animals gasp."
    return [Note("caution", text)]


def about_gas(tank: Water) -> list[Note]:
    """How far the readings tell the gas, on which the figure right after a change rests."""
    if misfits(tank):
        return []
    hardness = max(tank.kh_dh, UNSEEN_KH_DH) * MEQ_PER_DH
    gas = co2_mg_l(hardness, hardness, tank.ph, tank.temperature_c) or 0.0
    if tank.kh_dh >= 2 * UNSEEN_KH_DH and gas <= SUFFOCATING_CO2_MG_L:
        return []
    text = (
        "These readings do not tell how much carbon dioxide the tank holds: a kit misses half a "
        "degree, and peat, wood or nitrate can make water acid too. The figure right after the change "
        "may lie anywhere up to the later one: go by the later one."
    )
    return [Note("info", text)]


def matching(choice: Choice, tank: Water, tap: Water) -> list[Note]:
    """How to mix new water of the tank's own hardness."""
    share = share_of_second(tap.kh_dh, 0.0, tank.kh_dh)
    if choice.way not in ("match-first", "bind-first") or not share:
        return []
    parts = (
        f"about {100 * share:.0f} % purified or rain water and the rest tap water"
        if share < NEARLY_ALL
        else "purified or rain water with next to no tap water"
    )
    text = (
        f"New water of the tank's KH is {parts}. Test its pH and GH after it has stood with air, then "
        "put its readings in here before you use it."
    )
    return [Note("info", text)]
