"""Light from the lamp to the plants: photons for lux, floaters' shade, attenuation, the day's sum."""

import math
from typing import Literal

from calculators.core.quantities import INCH
from calculators.core.result import Series
from calculators.science.conversions import CM2_PER_M2, CM_PER_M

Lamp = Literal["led-white", "fluorescent", "halogen", "daylight"]
LightClass = Literal["low", "medium", "high"]

# Lux for each µmol/m²/s. Daylight and fluorescent tubes: a maker's published table after Thimijan and
# Heins 1983 (source key lux-ppfd-table). White LED: mean of the CIE's illuminants LED-B1 to B5, which
# span 67 to 72; halogen: CIE illuminant A (source key cie-15).
LUX_PER_UMOL: dict[str, float] = {
    "led-white": 69.0,
    "fluorescent": 74.0,
    "halogen": 50.0,
    "daylight": 54.0,
}
MOL_PER_UMOL_HOUR = 3600 / 1e6  # seconds in an hour; µmol in a mol
DAY_HOURS = 24.0
CLOSED_COVER_PERCENT = 80  # common practice, no source: above it gas exchange and light suffer
USUAL_ATTENUATION_PER_M = 1.0  # water that is a little yellow
SHOWN_HOURS = 16
SHOWN_DEPTHS = 20

# Daily light at the plant where each class begins, mol/m²/day. Our judgement, not a source: growth of
# submerged plants stops near 10 to 40 µmol/m²/s, which is 0.3 to 1.2 mol in 8 hours.
CLASS_FROM_MOL: dict[LightClass, float] = {"low": 0.5, "medium": 1.5, "high": 3.0}


def lux_from_lumens(lumens: float, utilisation_percent: float, surface_cm2: float) -> float:
    """Mean illuminance of the surface in lux, the light that enters spread evenly over it."""
    return lumens * utilisation_percent / 100 / (surface_cm2 / CM2_PER_M2)


def share_through_floaters(cover_percent: float, transmission_percent: float) -> float:
    """Mean share of the light that passes a surface partly covered, 0 to 1."""
    return 1 - cover_percent / 100 * (1 - transmission_percent / 100)


def share_at_depth(attenuation_per_m: float, depth_cm: float) -> float:
    """Share of the light left below so much water, 0 to 1 (law of Beer and Lambert)."""
    return math.exp(-attenuation_per_m * depth_cm / CM_PER_M)


def daily_light_mol(ppfd_umol: float, hours: float) -> float:
    """Daily light integral in mol/m²/day of an even PPFD."""
    return ppfd_umol * hours * MOL_PER_UMOL_HOUR


def light_class(dli_mol: float) -> LightClass:
    """The class of a day's light at the plant; below the lowest class it is still called low."""
    if dli_mol >= CLASS_FROM_MOL["high"]:
        return "high"
    return "medium" if dli_mol >= CLASS_FROM_MOL["medium"] else "low"


def largest_cover_percent(
    unshaded_dli_mol: float, wanted_dli_mol: float, transmission_percent: float
) -> float | None:
    """The floating cover that leaves just the light wanted; None if even an open surface is too dim."""
    if unshaded_dli_mol < wanted_dli_mol:
        return None
    shade = 1 - transmission_percent / 100
    spare = 1 - wanted_dli_mol / unshaded_dli_mol
    return 100.0 if spare >= shade else 100 * spare / shade


def hours_for(wanted_mol: float, ppfd_umol: float) -> float | None:
    """Hours a day that bring so much light; None if a whole day is not enough."""
    an_hour = daily_light_mol(ppfd_umol, 1)
    return wanted_mol / an_hour if an_hour * DAY_HOURS >= wanted_mol else None


def thinning(cover: float, most: float | None) -> float | None:
    """Share of the cover to take out, in percent; None if thinning alone is not enough.

    The ``most`` that may stay and the cover are shares of the surface.
    """
    if most is None:
        return None
    return 100 * (1 - most / cover) if cover > most else 0.0


def height_for(
    wanted_mol: float, below_floaters_mol: float, attenuation: float, depth: float
) -> float | None:
    """The height in cm above the plants' foot where a day's light is enough; None if nowhere.

    The ``attenuation`` is per m, the ``depth`` in cm.
    """
    if below_floaters_mol < wanted_mol:
        return None
    if wanted_mol <= 0 or attenuation == 0:
        return 0.0
    reach = math.log(below_floaters_mol / wanted_mol) / attenuation * CM_PER_M
    return max(0.0, depth - reach)


def curves(
    below_floaters: float, attenuation: float, depth: float, plants: float, day: float
) -> dict[str, Series]:
    """Light against depth, the day's light against hours, and against the height of a stem's tip.

    Light ``below_floaters`` and at the ``plants`` is in µmol/m²/s, ``attenuation`` per m, the depth in
    cm.
    """
    depths = [depth * step / SHOWN_DEPTHS for step in range(SHOWN_DEPTHS + 1)]
    umol = [below_floaters * share_at_depth(attenuation, depth_here) for depth_here in depths]
    hours = [float(hour) for hour in range(SHOWN_HOURS + 1)]
    mol = [daily_light_mol(plants, hour) for hour in hours]
    return {
        "ppfd_by_depth": Series(
            "Light (PPFD)", "µmol/m²/s", "Depth", "cm", depths, umol, x_us=INCH, digits=2
        ),
        "dli_by_height": Series(
            "Daily light at a stem's tip",
            "mol/m²/day",
            "Height of the tip",
            "cm",
            [depth - depth_here for depth_here in reversed(depths)],
            [daily_light_mol(depth_here, day) for depth_here in reversed(umol)],
            x_us=INCH,
            digits=2,
        ),
        "dli_by_hours": Series(
            "Daily light at the plants", "mol/m²/day", "Hours a day", "h", hours, mol, digits=2
        ),
    }
