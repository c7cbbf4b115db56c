"""From the lamp to the plants: light at the bottom, and what would bring a plant in."""

from typing import Annotated

from calculators.core.declare import calculator
from calculators.core.form_hints import FINER, InRow
from calculators.core.leads import Lead
from calculators.core.quantities import (
    Attenuation,
    Cover,
    DailyLight,
    Height,
    HoursADay,
    Length,
    LuminousFlux,
    Percent,
    PhotonFlux,
)
from calculators.core.quantity import Assumed, Choices, Help, Label, Possible
from calculators.core.result import Refusal, Refused
from calculators.light.outputs import CLASSES, Light
from calculators.light.words import notes
from calculators.science.light.lamps import (
    CLASS_FROM_MOL,
    DAY_HOURS,
    LUX_PER_UMOL,
    USUAL_ATTENUATION_PER_M,
    Lamp,
    LightClass,
    curves,
    daily_light_mol,
    height_for,
    hours_for,
    largest_cover_percent,
    light_class,
    lux_from_lumens,
    share_at_depth,
    share_through_floaters,
    thinning,
)

LAMPS_ROW = "The lamps"
SIZE_ROW = "Inside size"


@calculator(
    "Light",
    sources=(
        "lux-ppfd-table",
        "thimijan-heins-1983",
        "cie-15",
        "ies-utilization",
        "kirk-1977",
        "egeria-light-2010",
        "bowes-1977",
        "cenzato-ganf-2001",
        "barko-smart-1981",
        "reed-jennings-2011",
    ),
    leads_to=(
        Lead(
            "pick",
            "Plants for this light",
            {"dli_mol": "dli_substrate_mol", "dli_surface_mol": "dli_surface_mol"},
            needs=("dli_substrate_mol",),
        ),
    ),
)
def light(
    lumens: Annotated[
        LuminousFlux | None,
        Label("Lamps' light, all together"),
        Help("From the box. Leave empty if you have measured PPFD."),
        InRow(LAMPS_ROW),
    ] = 2_600.0,
    ppfd_surface_umol: Annotated[
        PhotonFlux | None,
        Label("Measured light at the surface"),
        Help("Mean of several places, in PPFD. It goes before lumens."),
        FINER,
    ] = None,
    lamp: Annotated[
        Lamp,
        Label("Kind of lamp"),
        Choices(("white LED", "fluorescent tube", "halogen or filament", "daylight")),
        InRow(LAMPS_ROW),
    ] = "led-white",
    length_cm: Annotated[Length, Label("Tank length, inside"), InRow(SIZE_ROW, "Length")] = 80.0,
    width_cm: Annotated[Length, Label("Tank width, inside"), InRow(SIZE_ROW, "Width")] = 35.0,
    depth_cm: Annotated[
        Height, Label("Depth of the plants"), Help("Water above them."), InRow(SIZE_ROW, "Depth")
    ] = 35.0,
    hours: Annotated[HoursADay, Label("Hours of light a day")] = 8.0,
    attenuation_per_m: Annotated[
        Attenuation,
        Help("Clear water 0.3 to 0.5, a little yellow 1, like tea 2 to 5."),
        FINER,
        Assumed(),
    ] = USUAL_ATTENUATION_PER_M,
    floater_cover_percent: Annotated[
        Cover, Label("Floating cover"), Help("Of the whole surface, seen from above.")
    ] = 40.0,
    floater_transmission_percent: Annotated[
        Percent,
        Label("Light through a full cover"),
        Help("Dense mats 2 to 10, thin ones 10 to 40."),
        FINER,
        Assumed(),
    ] = 10.0,
    utilisation_percent: Annotated[
        Percent,
        Label("Share of the lamps' light that enters the water"),
        Possible(1, 100),
        Help("Close under a hood 60 to 80, hung high or without a shade 30 to 50."),
        Assumed(),
        FINER,
    ] = 60.0,
    wanted_class: Annotated[
        LightClass, Label("Class of light wanted"), CLASSES, Assumed(), FINER
    ] = "medium",
    wanted_dli_mol: Annotated[
        DailyLight | None,
        Label("Or the daily light that a plant needs"),
        Possible(0.05, 70),
        Help("From the plant's page; it goes before the class."),
        FINER,
    ] = None,
) -> Light:
    """Follow the light from the lamp to the plants, and find what would bring a plant in.

    Lumens that enter the water are spread evenly over the surface, turned from lux to photons by
    the kind of lamp, shaded by the floaters as a mean over the surface, and dimmed by the water
    with depth. From lumens, take every figure as right within half of itself: a lamp lights the
    middle more than the corners, and glass, plants and dust take their part.

    The classes are daily light at the plant: low up to 1.5 mol/m²/day, medium from 1.5, high from
    3. They are our working lines. Published needs of submerged plants lie around them: shoots stop
    growing near 8 to 16 µmol/m²/s (Egeria), 10 to 12 (Hydrilla) and 37 (a pondweed).

    Fish rest in the dark: laboratories give them 10 to 12 hours of it. More than 14 hours of lamp is never
    called enough, however much the plants want.
    """
    surface = surface_light(
        lumens, ppfd_surface_umol, lamp, utilisation_percent, length_cm * width_cm
    )
    water = share_at_depth(attenuation_per_m, depth_cm)
    passed = share_through_floaters(floater_cover_percent, floater_transmission_percent)
    plants = surface * passed * water
    goal_mol = CLASS_FROM_MOL[wanted_class] if wanted_dli_mol is None else wanted_dli_mol
    open_dli = daily_light_mol(surface * water, hours)
    most = largest_cover_percent(open_dli, goal_mol, floater_transmission_percent)
    result = Light(
        ppfd_surface_umol=surface,
        ppfd_substrate_umol=plants,
        dli_surface_mol=daily_light_mol(surface, hours),
        dli_substrate_mol=daily_light_mol(plants, hours),
        light_class=light_class(daily_light_mol(plants, hours)),
        hours_for_class=hours_for(goal_mol, plants),
        hours_open_surface=hours_for(goal_mol, surface * water),
        wanted_mol=goal_mol,
        cover_for_class_percent=most,
        thin_percent=thinning(floater_cover_percent, most),
        tip_height_for_class_cm=height_for(
            goal_mol, daily_light_mol(surface * passed, hours), attenuation_per_m, depth_cm
        ),
        light_left_percent=100 * passed,
        dark_hours=DAY_HOURS - hours,
        ppfd_under_mat_umol=surface * water * floater_transmission_percent / 100,
        notes=(),
        series=curves(surface * passed, attenuation_per_m, depth_cm, plants, hours),
    )
    measured = ppfd_surface_umol is not None
    return result._replace(
        notes=tuple(notes(result, measured, lumens is not None, lamp, floater_cover_percent))
    )


def surface_light(
    lumens: float | None, measured: float | None, lamp: Lamp, utilisation: float, cm2: float
) -> float:
    """PPFD into the water, µmol/m²/s: as measured, or from the lamps' lumens.

    The ``utilisation`` is the share of the lumens that reaches the water, 0 to 1. Raises ``Refused``
    where neither is given.
    """
    if measured is not None:
        return measured
    if lumens is None:
        why = "give the lamps' lumens, or the light measured at the surface"
        raise Refused(
            Refusal("lumens", why, 1, 1_000_000), Refusal("ppfd_surface_umol", why, 0, 2_500)
        )
    return lux_from_lumens(lumens, utilisation, cm2) / LUX_PER_UMOL[lamp]
