"""Every rate of the model with its equation and sources, for the page that documents it.

Title, text and equation are read off the docstrings beside the formulas, so that the page cannot say
anything else than the code.
"""

from collections.abc import Callable
from typing import Any, NamedTuple

from calculators.nitrogen import alkalinity, feed, nitrifiers, plants, soil, steady, transport

MARK = "Equation:"


class Equation(NamedTuple):
    """One rate: what it is, its equation, what it assumes, and keys of the bibliography.

    No source: a judgement of ours, and the text says so.
    """

    title: str
    equation: str
    text: str
    sources: tuple[str, ...]


RATES: tuple[tuple[Callable[..., Any], tuple[str, ...]], ...] = (
    (feed.feed_nitrogen_mg_day, ("timmons-ebeling",)),
    (feed.feed_fate, ("timmons-ebeling", "summerfelt-penne-2007")),
    (feed.mineralisation_per_day, ()),
    (transport.limited_rate, ("monod-1949", "nitrification-wetland-2003")),
    (nitrifiers.capacity_change, ("monod-1949", "nitrification-biofilm")),
    (nitrifiers.mature_capacity, ("monod-1949",)),
    (nitrifiers.start_capacity, ()),
    (nitrifiers.temperature_factor, ("downing-1964",)),
    (nitrifiers.acid_factor, ("downing-1964",)),
    (alkalinity.alkalinity_change, ("ciaaw-2021",)),
    (soil.soil_ammonium_mg, ("reddy-1983-flux",)),
    (soil.release_per_day, ()),
    (soil.denitrification_at_most, ("revsbech-2005", "veraart-2011")),
    (plants.store_growth, ("droop-1973", "gerloff-krombholz-1966", "room-thomas-1986")),
    (plants.store_room, ("jampeetong-brix-2009",)),
    (plants.full_uptake, ("jampeetong-brix-2009", "fao-x6862e")),
    (plants.nitrate_share, ("jampeetong-brix-2009",)),
    (plants.starving_loss, ()),
    (plants.crowding, ("driever-2005",)),
    (plants.floater_light, ()),
    (plants.canopy_growth, ("janse-2005",)),
    (steady.floating_uptake, ("reddy-debusk-1985",)),
    (steady.settled_high, ("arithmetic",)),
)


def documentation() -> list[Equation]:
    """The equations in the order of the nitrogen's way. Raises ``ValueError`` for one without."""
    return [read(function, sources) for function, sources in RATES]


def read(function: Callable[..., Any], sources: tuple[str, ...]) -> Equation:
    """Read one equation off a docstring: first line, then the marked paragraph, then the rest."""
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
    return Equation(title.rstrip("."), equation, text, sources)
