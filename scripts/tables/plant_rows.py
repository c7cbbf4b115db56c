"""The table of plants: the one compact file through which plants, law lists and appetites reach the picker.

A plant is a list in the order of ``columns``; a range is ``[low, high, place in sure]``.
"""

from collections.abc import Mapping
from typing import Any, cast, get_args

from calculators.pick.plant_table import COLUMNS, SURE, StandingForm
from scripts.records.animal import Animal
from scripts.records.claim import Range
from scripts.records.growth_forms import growth_form
from scripts.records.law_matches import Listing, listings
from scripts.records.load import Library
from scripts.records.plant import Plant
from scripts.records.rule import Rule


def figure(claim: Range | None) -> list[float] | None:
    """A range with how sure it is; None where nobody knows.

    A list of three: both ends in the unit of the range, and the index of how sure it is.
    """
    return None if claim is None else [claim.low, claim.high, SURE.index(claim.sure)]


def form_to_pick(plant: Plant) -> StandingForm:
    """How it stands, as the picker asks for it: the table's looks, with two of them divided.

    Leaves in the air stand upright. What is tied to wood or stone sprawls where it is wider than high.
    """
    known = growth_form(plant)
    if known in get_args(StandingForm):
        return cast(StandingForm, known)
    height, spread = plant.size.height_cm, plant.size.spread_cm
    if plant.habit == "moss":
        return "sprawling"
    if known != "on-hardscape" or height is None or spread is None:
        return "upright"
    return "sprawling" if spread.low + spread.high > height.low + height.high else "upright"


def plant_entry(plant: Plant, rules: Mapping[str, Rule]) -> list[Any]:
    """One plant in the order of ``COLUMNS``."""
    needs, growth, nitrogen = plant.needs, plant.growth, plant.nitrogen
    assert nitrogen, "a plant that is offered has it"
    fields = {
        "name": plant.name,
        "common": plant.trade_names[0] if plant.trade_names else "",
        "habit": plant.habit,
        "look": form_to_pick(plant),
        "role": nitrogen.role.value,
        "uptake": nitrogen.uptake.value,
        "dli_mol": figure(needs.dli_mol),
        "temperature_c": figure(needs.temperature_c),
        "ph": figure(needs.ph),
        "gh_dh": figure(needs.gh_dh),
        "height_cm": figure(plant.size.height_cm),
        "spread_cm": figure(plant.size.spread_cm),
        "doubling_days": figure(growth.doubling_days),
        "trim_every_days": figure(growth.trim_every_days),
        "trim_minutes": figure(growth.trim_minutes),
        "tissue_n_percent": figure(nitrogen.tissue_n_percent),
        "dry_matter_percent": figure(nitrogen.dry_matter_percent),
        "eaters": [key for eaten in plant.eaten_by for key in eaten.eaters]
        if plant.eaten_by
        else None,
        "nibblers": [key for eaten in plant.eaten_by for key in eaten.nibblers],
        "law": [listed_row(listing) for listing in listings(plant, rules)],
    }
    return [fields[column] for column in COLUMNS]


def listed_row(listing: Listing) -> list[Any]:
    """One law list that names a plant: list, name, how we know, whether doubtful, single states twice."""
    entry = listing.entry
    states, more = entry.states, entry.states_second_hand
    return [listing.slug, entry.name, entry.basis, listing.doubtful, states, more]


def rule_entry(rule: Rule) -> dict[str, Any]:
    """One law list: where it holds, what it is called, and what it forbids in short."""
    only_in = {"only_in": rule.only_in} if rule.only_in else {}
    return {
        "place": rule.place,
        "title": rule.title,
        "instrument": rule.instrument,
        "short_effect": rule.short_effect,
        "complete": rule.complete,
        "bars": rule.forbids != ["release"] and rule.holds_in == "whole",
        "in_parts": rule.holds_in == "parts",
        **only_in,
    }


def grazers_of(animal: Animal, words: dict[str, dict[str, str]]) -> list[str]:
    """Which kinds of plant eaters an animal belongs to, by its genus or family."""
    own = {animal.name.split()[0], animal.family}
    return [key for key, word in words.items() if own & set(word["taxa"].split())]


def table(library: Library) -> dict[str, Any]:
    """What the picker knows: kinds of plant eaters, animals, law lists, and plants."""
    words, rules = library.vocabulary["grazer"], library.rules
    return {
        "columns": list(COLUMNS),
        "grazers": {key: word["label"] for key, word in sorted(words.items())},
        "animals": {
            key: grazers_of(animal, words) for key, animal in sorted(library.animals.items())
        },
        "rules": {key: rule_entry(rule) for key, rule in sorted(rules.items())},
        "plants": {
            key: plant_entry(plant, rules) for key, plant in sorted(library.offered().items())
        },
    }
