"""The shelf's names and kits for the browser: what a tank may hold by any name, units that kits read in."""

from math import isclose
from typing import Any

from calculators.core.quantity import UsUnit
from calculators.core.run import find, run
from calculators.science.shelf.entries import READINGS
from scripts.pages.plants.all_plants_table import NEVER_PLANTED
from scripts.pages.shelf.shelf_downloads import compact
from scripts.records.load import Library

# The units in which kits are sold, by reading; the first is the one that the log holds.
KIT_UNITS = {
    "nitrate_mg_l": ("nitrate", "nitrate-n"),
    "nitrite_mg_n_l": ("nitrite-n", "nitrite"),
    "ammonia_mg_n_l": ("ammonia-n", "ammonium", "ammonia"),
    "phosphate_mg_l": ("phosphate", "phosphate-p"),
    "gh_dh": ("dgh", "ppm-caco3", "mmol-l", "french-degree"),
    "kh_dh": ("dgh", "ppm-caco3", "meq-l", "french-degree"),
    "temperature_c": ("celsius", "fahrenheit"),
}
ZERO, UNIT = 0.0, 1.0


def names_json(library: Library) -> str:
    """``{"plants": [[key, name, other names ...]], "animals": [...], "floating": [key ...], "never"}``.

    Plants and animals stand by name. ``floating`` are plants that float by their form of growth. ``never``,
    as ``{"keys", "words"}``, are plants that nobody is offered: their names stand for tanks that hold one.
    """
    plants = [
        [key, one.name, *one.trade_names, *one.old_names] for key, one in library.plants.items()
    ]
    animals = [
        [key, *dict.fromkeys([*one.trade_names, one.name])] for key, one in library.animals.items()
    ]
    never = sorted(library.plants.keys() - library.offered().keys())
    return compact(
        {
            "plants": sorted(plants, key=by_name),
            "animals": sorted(animals, key=by_name),
            "floating": sorted(
                key for key, one in library.plants.items() if one.habit == "floater"
            ),
            "never": {"keys": never, "words": NEVER_PLANTED},
        }
    )


def by_name(row: list[str]) -> str:
    """The name that is shown, without regard to capitals."""
    return row[1].lower()


def kits_json(library: Library) -> str:
    """``{reading: [{"unit", "label", "factor", "zero", "us"}]}``, the first as the log has it.

    The log's figure is (shown - zero) x factor. ``us``: whether it is the customary unit of that
    reading, in which the kit of a keeper with such units is taken to read until one is chosen.
    """
    return compact(
        {
            reading: [kit(one, units[0], READINGS[reading].us) for one in units]
            for reading, units in KIT_UNITS.items()
        }
    )


def kit(unit: str, logged: str, us: UsUnit | None) -> dict[str, Any]:
    """One unit, and how it becomes the one that is logged; by the calculator of units."""
    nothing, one = (converted(value, unit, logged) for value in (ZERO, UNIT))
    return {
        "unit": unit,
        "label": words_of(unit),
        "factor": one - nothing,
        "zero": converted(ZERO, logged, unit),
        "us": us is not None and isclose((one - nothing) * us.factor, UNIT),
    }


def words_of(unit: str) -> str:
    """A unit as the calculator of units names it."""
    field = next(one for one in find("units").inputs if one.key == "from")
    return dict(zip(field.choices, field.words, strict=True))[unit]


def converted(value: float, unit: str, into: str) -> float:
    """A figure in another unit. The ``value`` is in ``unit``, what comes back in ``into``."""
    result: float = run("units", {"value": value, "from": unit, "to": into})["outputs"]["result"]
    return result
