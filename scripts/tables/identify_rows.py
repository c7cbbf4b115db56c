"""The table by which a plant is named: each record's traits, what labels may mean, look-alikes in words.

A trait that a record leaves out stays out, though a drawing takes a plain one for it.
"""

from collections.abc import Iterable, Iterator
from itertools import takewhile
from typing import Any

from calculators.identify.trait_table import COLUMNS
from calculators.science.law.restricted import Restricted, once_a_place
from scripts.records.claim import Range
from scripts.records.law_matches import (
    is_doubtful,
    listed_look_alikes,
    listings,
    restricted_at,
    species,
    without_record,
)
from scripts.records.load import Library
from scripts.records.plant import Plant
from scripts.records.traits import Traits
from scripts.tables.plant_rows import listed_row

IN_AIR = ("marginal", "floating-rosette", "floating-stem", "floating-frond")
MAY_BE_LEFT_OUT = ("margin", "tip", "surface")  # of these a drawing takes a plain one
Label = list[Any]  # a name, its kind, {plant: how often}, plants without a record, its page


def ends(claim: Range | None) -> list[float] | None:
    """A range as its ends; None where nobody knows. They are in the unit of the range."""
    return None if claim is None else [claim.low, claim.high]


def trait_row(plant: Plant, traits: Traits) -> list[Any]:
    """One plant's traits in the order of ``COLUMNS``."""
    fields: dict[str, Any] = {
        "form": traits.draw,
        "floats": "floating" if plant.habit == "floater" else "rooted",
        "roots": plant.roots,
        "arrangement": traits.arrangement,
        "shape": traits.leaf_shape,
        "stalk": traits.stalk,
        "veins": traits.veins,
        "smell": traits.smell,
        "flower": traits.flower,
        "colour": traits.colour,
        "colour_second": traits.colour_second,
        "colour_where": traits.colour_where,
        "whorl": [traits.whorl.low, traits.whorl.high] if traits.whorl else None,
        "length_mm": ends(traits.leaf_length_mm),
        "width_mm": ends(traits.leaf_width_mm),
        "height_cm": ends(plant.size.height_cm),
        "root_length_mm": ends(traits.root_length_mm),
        "in_air": traits.draw in IN_AIR,
    }
    for key in MAY_BE_LEFT_OUT:
        fields[key] = getattr(traits, key) if key in traits.model_fields_set else None
    return [fields[column] for column in COLUMNS]


def labels(library: Library) -> dict[str, Label]:
    """What each name may mean, by the name in small letters; a name of several plants comes first."""
    known: dict[str, Label] = {}
    for key, record in sorted(library.names.items()):
        may_be = {one.plant: one.how_often for one in record.may_be if one.plant}
        others = [one.name for one in record.may_be if one.name]
        for name in (record.name, *record.other_names):
            known[name.lower()] = [record.name, "ambiguous", may_be, others, f"names/{key}/"]
    for slug, kind, name in names_of_plants(library):
        label = known.setdefault(name.lower(), [name, kind, {}, [], ""])
        if label[1] != "ambiguous":
            label[2][slug] = "mostly"
    return dict(sorted(known.items()))


def names_of_plants(library: Library) -> Iterator[tuple[str, str, str]]:
    """Every name of every plant: its key, the kind of name, the name."""
    for slug, plant in sorted(library.plants.items()):
        yield slug, "scientific", plant.name
        for name in plant.old_names:
            if not is_doubtful(name):
                yield slug, "old", without_author(name)
        for name in plant.trade_names:
            yield slug, "trade", name


def without_author(name: str) -> str:
    """A scientific name as far as a label has it: up to the first word that names a person."""
    first, *rest = name.split(" (")[0].split()
    ours = takewhile(lambda word: word[0].islower() or word[0] == "×", rest)
    return " ".join([first, *ours])


def pairs_apart(library: Library) -> list[list[str]]:
    """What the records say to tell two plants of the book apart, once a pair, with whose record says it."""
    pairs: dict[tuple[str, str], tuple[str, str]] = {}
    for slug, plant in sorted(library.plants.items()):
        for alike in plant.look_alikes:
            if alike.plant and alike.plant in library.plants:
                one, other = sorted((slug, alike.plant))
                pairs.setdefault((one, other), (slug, alike.tell_apart))
    return [[one, other, *said] for (one, other), said in sorted(pairs.items())]


def where_rows(where: Iterable[Restricted]) -> list[list[Any]]:
    """Where a plant is restricted: places in order of their keys, each with its single states."""
    return [[place, list(states)] for place, states in sorted(once_a_place(where))]


def taken_for(library: Library) -> dict[str, list[list[Any]]]:
    """Listed plants with no record here for which a plant may be taken: names, each with where."""
    here = {species(plant.name) for plant in library.plants.values()}
    found = {
        slug: [
            [alike.name.split(" (")[0], where_rows(map(restricted_at, alike.listed))]
            for alike in listed_look_alikes(plant, library.rules)
            if species(alike.name) not in here
        ]
        for slug, plant in sorted(library.plants.items())
    }
    return {slug: alike for slug, alike in found.items() if alike}


def listed_only(library: Library) -> dict[str, list[Any]]:
    """Names on a law list of plants with no record here, in small letters: the list's own, and where.

    A label may give one, and then the law is all that this book can say of it.
    """
    found: dict[str, tuple[str, list[Restricted]]] = {}
    for listing in without_record(library.plants.values(), library.rules):
        for name in (listing.entry.name, *listing.entry.also):
            own = found.setdefault(species(name), (listing.entry.name, []))
            own[1].append(restricted_at(listing))
    return {name: [own, where_rows(where)] for name, (own, where) in sorted(found.items())}


def listed_common(library: Library) -> dict[str, list[str]]:
    """What people call such a plant, in small letters, each with the keys of ``listed_only`` it may mean."""
    found: dict[str, list[str]] = {}
    for listing in without_record(library.plants.values(), library.rules):
        for common in listing.entry.common:
            keys = found.setdefault(common.name.lower(), [])
            if species(listing.entry.name) not in keys:
                keys.append(species(listing.entry.name))
    return dict(sorted(found.items()))


def never_offered(library: Library) -> dict[str, dict[str, Any]]:
    """Names, law and reason of the plants that nobody shall plant: the table of plants leaves them out."""
    return {
        key: {
            "name": plant.name,
            "common": plant.trade_names[0] if plant.trade_names else "",
            "law": [listed_row(listing) for listing in listings(plant, library.rules)],
            "why": plant.never_offered.text,
        }
        for key, plant in sorted(library.plants.items())
        if plant.never_offered
    }


def table(library: Library) -> dict[str, Any]:
    """Traits by plant, names, pairs, listed look-alikes, and the plants that nobody shall plant."""
    return {
        "plants": {
            key: trait_row(plant, plant.traits)
            for key, plant in sorted(library.plants.items())
            if plant.traits
        },
        "labels": labels(library),
        "apart": {"pairs": pairs_apart(library)},
        "taken_for": taken_for(library),
        "listed_only": listed_only(library),
        "listed_common": listed_common(library),
        "never_offered": never_offered(library),
    }
