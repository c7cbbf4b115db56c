"""What the page of the model says, read off the code, so that it cannot say anything else.

Title, text and equation of each rate are read off the docstring beside its formula; this module
only puts them in order and names their sources. It is for the build: no answer needs it.
"""

from collections.abc import Callable
from types import ModuleType
from typing import Any, NamedTuple, get_args

from calculators.nitrogen_forecast import outlook
from calculators.science.light import plant_light
from calculators.science.nitrogen import (
    alkalinity,
    constants,
    edges,
    feed_fate,
    nitrifiers,
    plant_constants,
    plant_rates,
    soil_pools,
    steady,
    transport,
)
from calculators.science.nitrogen.about import About

MARK = "Equation:"

Rate = tuple[Callable[..., Any], tuple[str, ...]]


class Equation(NamedTuple):
    """One rate: what it is, its equation, what it assumes, and keys of the bibliography.

    No source: a judgement of ours, and the text says so.
    """

    title: str
    equation: str
    text: str
    sources: tuple[str, ...]
    section: str


class Constant(NamedTuple):
    """One constant: its name in the code, its value, and what is said of it there."""

    name: str
    value: float
    about: About


# In the order of the nitrogen's way.
RATES: dict[str, tuple[Rate, ...]] = {
    "Feed": (
        (feed_fate.feed_nitrogen_mg_day, ("timmons-ebeling",)),
        (feed_fate.feed_fate, ("timmons-ebeling", "summerfelt-penne-2007")),
        (feed_fate.mineralisation_per_day, ()),
        (feed_fate.litter_per_day, ("xie-2004-decay",)),
    ),
    "Every sink": ((transport.limited_rate, ("monod-1949", "nitrification-wetland-2003")),),
    "Filter": (
        (nitrifiers.capacity_change, ("monod-1949", "nitrification-biofilm", "ushiki-2017")),
        (nitrifiers.half_by_food, ("jung-2022-affinity", "kits-2017", "ushiki-2017")),
        (nitrifiers.mature_capacity, ("monod-1949",)),
        (nitrifiers.start_capacity, ()),
        (nitrifiers.temperature_factor, ("downing-1964",)),
        (nitrifiers.acid_factor, ("downing-1964", "tarre-green-2004")),
        (nitrifiers.used_to_ph, ("green-2007",)),
        (nitrifiers.growth_by_hardness, ()),
        (nitrifiers.rate_by_hardness, ()),
    ),
    "Carbonate hardness": (
        (alkalinity.alkalinity_change, ("ciaaw-2021",)),
        (alkalinity.hardness_dh, ("ciaaw-2021",)),
    ),
    "Soil": (
        (soil_pools.soil_ammonium_mg, ("reddy-1983-flux",)),
        (soil_pools.release_per_day, ()),
        (soil_pools.slow_soil_mg, ()),
        (soil_pools.slow_release_per_day, ()),
        (soil_pools.to_roots, ()),
        (soil_pools.denitrification_at_most, ("revsbech-2005", "veraart-2011")),
    ),
    "Plants": (
        (plant_rates.store_growth, ("droop-1973", "gerloff-krombholz-1966", "room-thomas-1986")),
        (plant_rates.store_room, ("jampeetong-brix-2009",)),
        (plant_rates.full_uptake, ("jampeetong-brix-2009", "fao-x6862e")),
        (plant_rates.nitrate_share, ("jampeetong-brix-2009",)),
        (plant_rates.starving_loss, ()),
        (plant_rates.crowding, ("driever-2005",)),
        (plant_rates.floater_light, ()),
        (plant_rates.paid_share, ("arithmetic",)),
        (plant_light.most_growth_g_m2_day, ()),
        (plant_light.least_doubling_days, ()),
        (plant_light.net_growth, ("egeria-light-2010",)),
        (plant_light.lone_growth, ()),
        (plant_light.dimmest_share, ()),
        (plant_light.stand_loss, ()),
        (plant_light.stand_growth, ("janse-2005", "egeria-light-2010")),
    ),
    "The weekly budget": (
        (steady.floating_uptake, ("reddy-debusk-1985",)),
        (steady.trimmed_uptake, ("fao-x6862e",)),
        (steady.settled_high, ("arithmetic",)),
        (steady.settled_low, ("arithmetic",)),
        (steady.extra_to_hold, ("arithmetic",)),
        (steady.feed_for, ("timmons-ebeling",)),
        (steady.standing_stems, ("fao-x6862e",)),
        (steady.fitted_uptake, ("arithmetic",)),
    ),
}

CONSTANTS: dict[str, ModuleType] = {
    "Feed, filter, soil and tank": constants,
    "Plants": plant_constants,
    "Light": plant_light,
    "Lines for the words": outlook,
    "Edges of the band": edges,
}


def documentation() -> list[Equation]:
    """The equations in the order of the nitrogen's way. Raises ``ValueError`` for one without."""
    return [
        read(function, sources, section)
        for section, rates in RATES.items()
        for function, sources in rates
    ]


def constants_of(module: ModuleType) -> list[Constant]:
    """The annotated constants of a module, in the order in which it declares them."""
    hints = ((name, get_args(hint)) for name, hint in module.__annotations__.items())
    return [
        Constant(name, getattr(module, name), parts[1])
        for name, parts in hints
        if len(parts) == 2 and isinstance(parts[1], About)
    ]


def read(function: Callable[..., Any], sources: tuple[str, ...], section: str) -> Equation:
    """Read one equation off a docstring: first line, then the marked paragraph, then the rest.

    Raises ``ValueError`` where there is none.
    """
    lines = [line.strip() for line in (function.__doc__ or "").strip().splitlines()]
    start = next((n for n, line in enumerate(lines) if line.startswith(MARK)), None)
    if start is None:
        raise ValueError(f"{function.__name__} states no equation")
    # an equation runs on while its lines end in a semicolon, a comma or an operator
    end = start + 1
    while end < len(lines) and lines[end] and lines[end - 1][-1:] in ";,=·+−(":
        end += 1
    title, before, after = lines[0], lines[1:start], lines[end:]
    equation = " ".join(lines[start:end]).removeprefix(MARK).strip()
    text = " ".join(line for line in (*before, *after) if line)
    return Equation(title.rstrip("."), equation, text, sources, section)
