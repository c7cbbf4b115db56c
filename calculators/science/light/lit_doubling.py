"""A doubling time held to what the day's light pays for, and the words for it."""

from typing import NamedTuple

from calculators.core.numbers import show_number as show
from calculators.core.result import Note
from calculators.science.light.plant_light import ASSUMED_DLI_MOL, least_doubling_days


class LitDoubling(NamedTuple):
    """The doubling time to reckon with, the one given, and the shortest that the light pays for, in days."""

    doubling_days: float
    given_days: float
    least_days: float
    dli_mol: float
    is_assumed: bool  # the light


def lit_doubling(
    given_days: float, dry_g_m2: float, dli_mol: float | None, *, own: bool
) -> LitDoubling:
    """Hold a doubling time to the light. A keeper's ``own`` is held only to light that was given."""
    light = ASSUMED_DLI_MOL if dli_mol is None else dli_mol
    least = least_doubling_days(dry_g_m2, light)
    stands = own and dli_mol is None
    used = given_days if stands else max(given_days, least)
    return LitDoubling(used, given_days, least, light, dli_mol is None)


def light_notes(lit: LitDoubling) -> list[Note]:
    """A word where the light would not pay for the doubling time given."""
    if lit.given_days >= lit.least_days:
        return []
    light = f"{show(lit.dli_mol, 2)} mol a m² and day"
    lamp = f"A middling lamp, {light} (yours was not given)," if lit.is_assumed else f"Your {light}"
    pays = f"{lamp} pays for a doubling in about {show(lit.least_days, 2)} days at best"
    if lit.doubling_days > lit.given_days:
        return [Note("info", f"{pays}: that is used in place of {show(lit.given_days, 2)}.")]
    return [
        Note("info", f"{pays}. You gave {show(lit.given_days, 2)}, which stands: give the light.")
    ]
