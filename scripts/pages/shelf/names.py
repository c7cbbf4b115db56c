"""The shelf's names and kits for the browser: what a tank may hold by any name, units that kits read in."""

from typing import Any

from calculators.core.run import find, run
from scripts.pages.shelf.files import compact
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
    """``{"plants": [[key, name, other names ...]], "animals": [...]}``, by name."""
    plants = [
        [key, one.name, *one.trade_names, *one.old_names] for key, one in library.plants.items()
    ]
    animals = [
        [key, *dict.fromkeys([*one.trade_names, one.name])] for key, one in library.animals.items()
    ]
    return compact({"plants": sorted(plants, key=by_name), "animals": sorted(animals, key=by_name)})


def by_name(row: list[str]) -> str:
    """The name that is shown, without regard to capitals."""
    return row[1].lower()


def kits_json(library: Library) -> str:
    """``{reading: [{"unit", "label", "factor", "zero"}]}``: the log's figure is (shown - zero) x factor."""
    return compact(
        {reading: [kit(one, units[0]) for one in units] for reading, units in KIT_UNITS.items()}
    )


def kit(unit: str, logged: str) -> dict[str, Any]:
    """One unit, and how it becomes the one that is logged; by the calculator of units."""
    nothing, one = (converted(value, unit, logged) for value in (ZERO, UNIT))
    return {
        "unit": unit,
        "label": words_of(unit),
        "factor": one - nothing,
        "zero": converted(ZERO, logged, unit),
    }


def words_of(unit: str) -> str:
    """A unit as the calculator of units names it."""
    field = next(one for one in find("units").inputs if one.key == "from")
    return dict(zip(field.choices, field.words, strict=True))[unit]


def converted(value: float, unit: str, into: str) -> float:
    """A figure in another unit."""
    result: float = run("units", {"value": value, "from": unit, "to": into})["outputs"]["result"]
    return result
