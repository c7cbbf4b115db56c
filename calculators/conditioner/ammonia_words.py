"""What the calculator for conditioner says of the ammonia that chloramine leaves."""

from typing import NamedTuple

from calculators.core.numbers import show_number
from calculators.core.result import Link, Note
from calculators.science.water.ammonia import chronic_limit_mg_n_l, free_kills, rate

CHANGE = ("ammonia-change",)  # the tank's own ammonia and pH are the keeper's to test


class Treated(NamedTuple):
    """The new water and what meets the animals; volumes in L, concentrations in mg/L or mg N/L.

    ``most`` is the ammonia that the new water may bring, ``meets`` that in the water where animals
    are, ``toxic`` the un-ionised part of ``meets``; None is what was not given.
    """

    water_l: float
    chlorine_mg_l: float
    kind: str
    ml_per_l: float
    tank_l: float | None
    most: float
    meets: float
    ph: float | None
    temperature_c: float
    toxic: float | None


def about_ammonia(here: Treated) -> list[Note]:
    """The ammonia that stays, by how toxic it is where animals meet it; nothing for chlorine alone."""
    if here.meets == 0:
        return []
    where = "in the tank" if here.tank_l is not None else "in the new water"
    start = (
        "If the supplier uses chloramine, its" if here.kind == "unknown" else "Chloramine's"
    ) + f" ammonia stays: up to {show_number(here.meets, 2)} mg N/L {where}"
    if here.ph is None or here.toxic is None:
        text = f"{start}. How much of it is toxic hangs on the pH: enter it. {BINDS}"
        return [Note("caution", text, True, toxic_link(here), CHANGE)]
    limit = chronic_limit_mg_n_l(here.ph, here.temperature_c)
    rating = rate(here.meets / limit, here.toxic)
    toxic = f"{start}, {show_number(here.toxic, 2)} of it toxic at pH {show_number(here.ph)}"
    if rating == "act":
        line = (
            "above the line at which it can kill"
            if free_kills(here.toxic)
            else f"in all above the US limit for lasting exposure, {show_number(limit, 2)}"
        )
        text = f"{toxic}, {line}. {BINDS} Or change less water at a time."
        return [Note("danger", text, True, toxic_link(here), CHANGE)]
    if rating == "watch":
        return [Note("caution", f"{toxic}. {BINDS} Test daily.", True, toxic_link(here), CHANGE)]
    return [
        Note("info", f"{toxic}, below the working lines. {RISES}", False, toxic_link(here), CHANGE)
    ]


BINDS = (
    "Use a conditioner whose label says that it binds the ammonia of chloramine; one of thiosulfate "
    "alone does not."
)
RISES = (
    "It adds to what the tank has, and more turns toxic as pH rises: a filter and plants take it up in "
    "a day or two, a new tank does not."
)


def toxic_link(here: Treated) -> tuple[Link, ...]:
    """The calculator for the toxic part, filled in for the water that animals meet."""
    free: dict[str, float | str] = {"ammonia_mg_l": here.meets, "reported_as": "nitrogen"}
    if here.ph is not None:
        free |= {"ph": here.ph, "temperature_c": here.temperature_c}
    return (Link("How much of it is toxic", "calculators/free-ammonia/", free),)
