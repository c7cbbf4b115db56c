"""The table from which the browser makes the form of a tank, the log's choices, and fills forms."""

from typing import Any

from calculators.core.fields import InputField, Kind
from calculators.core.shown_units import us_unit
from calculators.science.shelf.entries import KIND_WORDS, KINDS, READINGS, Measured
from calculators.science.shelf.shelf_tank import ALSO_READ, FIRST_ASKED, TANK_FIELDS
from calculators.shelf.again import AGAIN
from calculators.shelf.customary import customary
from calculators.shelf.fills import FILLS, durable
from calculators.shelf.shelf_file import FORMAT, VERSION

NEVER_ASKED = ("id", "demo", "entered")
STEPS = {"net_l": 10, "temperature_c": 0.5, "ph": 0.1, "gh_dh": 1, "kh_dh": 1, "light_hours": 0.5,
         "feed_g_week": 0.5, "protein_percent": 1, "percent": 5, "every_days": 1, "wet_g": 10,
         "count": 1, "nitrate_mg_l": 1, "dli_mol": 0.5, "length_cm": 1, "width_cm": 1,
         "water_cm": 1, "soil_depth_cm": 0.5, "cap_depth_cm": 0.5, "soil_area_cm2": 100}  # fmt: skip
# Waters of common tanks, to tap, in each system's own unit; common practice, no source.
OFFERED = {
    "net_l": {"metric": (20, 54, 60, 80, 112, 125, 180, 240), "us": (5, 10, 15, 20, 29, 40, 55, 75)}
}
KIND_OF_FORM = {
    Kind.NUMBER: "number", Kind.INTEGER: "number", Kind.CHOICE: "choice", Kind.TEXT: "text",
    Kind.FLAG: "choice", Kind.OBJECT: "group",
}  # fmt: skip


def shelf_table(doses: dict[str, tuple[str, str]], titles: dict[str, str]) -> dict[str, Any]:
    """The whole table.

    ``doses``: what may be dosed, its label and unit by key; ``titles``: those of calculators by name.
    """
    return {
        "format": FORMAT,
        "version": VERSION,
        "tank": [form_field(field) for field in TANK_FIELDS if field.key not in NEVER_ASKED],
        "entries": [entry_kind(kind, doses) for kind in KINDS],
        "fills": {
            calculator: {key: {"from": list(sources)} for key, sources in fills.items()}
            for calculator, fills in FILLS.items()
        },
        "titles": {calculator: titles[calculator] for calculator in FILLS},
        "durable": durable(),
        "again": {calculator: list(keys) for calculator, keys in AGAIN.items()},
        "dated": list(ALSO_READ),
    }


def form_field(field: InputField) -> dict[str, Any]:
    """One field of a tank; a group and a list have their own in ``fields``."""
    made = {
        "key": field.key,
        "label": field.label,
        "unit": field.unit,
        "us": customary(us_unit(field.quantity, "us"), field.low, field.high),
        "kind": form_kind(field),
        "low": field.low,
        "high": field.high,
        "step": STEPS.get(field.key),
        "choices": [
            {"key": key, "label": words}
            for key, words in zip(field.choices, field.words, strict=True)
        ],
        "help": field.help,
        "offered": OFFERED.get(field.key),
        "first": field.key in FIRST_ASKED,
    }
    if field.row:
        made["fields"] = [form_field(one) for one in field.row if one.key not in NEVER_ASKED]
    return made


def form_kind(field: InputField) -> str:
    """How a field stands in the tank's form."""
    if field.kind == Kind.LIST:
        return field.key  # plants or animals
    return "date" if field.is_date else KIND_OF_FORM[field.kind]


def entry_kind(kind: str, doses: dict[str, tuple[str, str]]) -> dict[str, Any]:
    """One kind of entry: what it may be of, with the limits of its value.

    ``of`` plants or animals: ``what`` is a record's key, and the one row of ``whats`` holds for all.
    """
    of = KINDS[kind]
    words = dict(zip(KINDS, KIND_WORDS.words, strict=True))
    made: dict[str, Any] = {"kind": kind, "label": words[kind], "of": of.of, "must": list(of.must)}
    if of.of == "readings":
        made["whats"] = [what(key, one) for key, one in READINGS.items()]
    elif of.of == "doses" and of.value:
        made["whats"] = [
            what(key, of.value._replace(label=label, unit=unit))
            for key, (label, unit) in doses.items()
        ]
    else:
        made["whats"] = [what("", of.value)] if of.value else []
    return made


def what(key: str, one: Measured) -> dict[str, Any]:
    """One thing that an entry may be of. ``last_default``: offered where nothing was logged yet."""
    return {
        "what": key,
        "label": one.label,
        "unit": one.unit,
        "us": customary(one.us, one.low, one.high),
        "low": one.low,
        "high": one.high,
        "steps": list(one.steps),
        "last_default": DEFAULTS.get(key),
    }


# Where a stepper starts with nothing logged yet: a common tank's; common practice, no source.
DEFAULTS = {
    "nitrate_mg_l": 10, "nitrite_mg_n_l": 0, "ammonia_mg_n_l": 0, "phosphate_mg_l": 0.5, "ph": 7,
    "gh_dh": 8, "kh_dh": 4, "temperature_c": 24, "oxygen_mg_l": 8, "cover_percent": 50,
    "copper_ug_l": 0,
}  # fmt: skip
