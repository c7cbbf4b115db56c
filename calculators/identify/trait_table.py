"""The words for a plant's traits, and the table that carries each record's traits to the calculator."""

from functools import cache
from typing import Any, Literal, NamedTuple

from calculators.core.data import read_table
from calculators.science.law.listed import LawList, Listed, read_law_list, read_listed
from calculators.science.law.restricted import Restricted, read_restricted

Draw = Literal[
    "stem", "creeping-stem", "rootless-stem", "rosette", "grass", "carpet", "epiphyte", "moss",
    "thallus", "floating-rosette", "floating-stem", "floating-frond", "marginal",
]  # fmt: skip
LeafShape = Literal[
    "linear", "ribbon", "needle", "lanceolate", "narrow-lanceolate", "elliptic", "oblong",
    "ovate", "obovate", "spatulate", "round", "heart", "kidney", "arrow", "peltate", "lobed",
    "clover", "feathery", "forked", "fan", "pinnate", "scale", "thallus",
]  # fmt: skip
Arrangement = Literal[
    "basal", "opposite", "alternate", "whorled", "spiral", "tuft", "two-ranked", "single-at-node",
    "branching", "floating-pair",
]  # fmt: skip
Margin = Literal["smooth", "wavy", "crisped", "toothed", "cut"]
Tip = Literal["pointed", "rounded", "blunt"]
Surface = Literal["flat", "hammered", "hairy", "folded", "windowed"]
Stalk = Literal["none", "short", "long"]
Colour = Literal[
    "pale-green", "green", "dark-green", "yellow-green", "olive", "bronze", "brown", "red-brown",
    "red", "pink", "purple", "blue-green",
]  # fmt: skip
Roots = Literal["in-soil", "in-water", "on-hardscape", "none"]
Veins = Literal["midrib", "net", "parallel", "arched"]
Smell = Literal["none", "spicy", "fishy"]
Flower = Literal["white", "yellow", "pink", "purple", "blue", "red", "green", "spathe"]
Floats = Literal["floating", "rooted"]

Ends = tuple[float, float]  # of a range: the least and the greatest


class BookTraits(NamedTuple):
    """A plant as its record describes it: what is not known is None, and says nothing.

    Leaves are those of the grown plant under water (``in_air``: in the air, or afloat).
    """

    form: Draw
    floats: Floats
    roots: Roots
    arrangement: Arrangement
    shape: LeafShape
    margin: Margin | None
    tip: Tip | None
    surface: Surface | None
    stalk: Stalk
    veins: Veins | None
    smell: Smell | None
    flower: Flower | None
    colour: Colour
    colour_second: Colour | None
    colour_where: str | None
    whorl: Ends | None
    length_mm: Ends
    width_mm: Ends
    height_cm: Ends | None
    root_length_mm: Ends | None
    in_air: bool


COLUMNS = BookTraits._fields


class LabelName(NamedTuple):
    """What a name on a label may mean: plants by their keys, each with how often it is sold so.

    ``kind``: scientific, old, trade, or ambiguous; ``others`` are plants that have no record, and
    ``page`` is the address of a name's own page.
    """

    name: str
    kind: str
    may_be: dict[str, str]
    others: tuple[str, ...] = ()
    page: str = ""


class ListedElsewhere(NamedTuple):
    """A plant on a law list that has no record here: the list's name for it, and where it is restricted."""

    name: str
    where: tuple[Restricted, ...]


class KnownPlant(NamedTuple):
    """A plant of the book with its names, its traits, and what the law lists say of it.

    ``taken_for`` are listed plants with no record here for which it may be taken, each with where.
    ``never_planted`` says why nobody shall plant it; empty for all that the book offers.
    """

    name: str
    common: str
    traits: BookTraits
    law: tuple[Listed, ...]
    taken_for: tuple[ListedElsewhere, ...]
    never_planted: str = ""


class PlantBook(NamedTuple):
    """All that is known: plants and law lists by key, names in small letters.

    ``listed_only`` has the names on law lists of plants without a record, in small letters, each with the
    list's own name and where; ``listed_common`` has what people call them, with the names there that it
    may mean. ``apart`` has, for a pair of keys in order, the key whose record tells
    them apart, and its words.
    """

    plants: dict[str, KnownPlant]
    rules: dict[str, LawList]
    labels: dict[str, LabelName]
    apart: dict[tuple[str, str], tuple[str, str]]
    listed_only: dict[str, ListedElsewhere]
    listed_common: dict[str, tuple[str, ...]]


@cache
def plant_book() -> PlantBook:
    """The records, read once. Raises ``MissingTable`` where a table did not come along."""
    table, law = read_table("identify"), read_table("plants")
    columns = law["columns"]
    named = {
        key: {name: row[columns.index(name)] for name in ("name", "common", "law")}
        for key, row in law["plants"].items()
    } | table["never_offered"]
    plants = {key: known_plant(key, row, named[key], table) for key, row in table["plants"].items()}
    return PlantBook(
        plants,
        {key: read_law_list(fields) for key, fields in law["rules"].items()},
        {name: label_name(row) for name, row in table["labels"].items()},
        {(one, other): (own, text) for one, other, own, text in table["apart"]["pairs"]},
        {name: listed_elsewhere(row) for name, row in table["listed_only"].items()},
        {name: tuple(keys) for name, keys in table["listed_common"].items()},
    )


def listed_elsewhere(row: list[Any]) -> ListedElsewhere:
    """A listed plant without a record, from its row."""
    name, where = row
    return ListedElsewhere(name, tuple(read_restricted(part) for part in where))


def label_name(row: list[Any]) -> LabelName:
    """A name on labels from its row."""
    name, kind, may_be, others, page = row
    return LabelName(name, kind, may_be, tuple(others), page)


def known_plant(
    key: str, row: list[Any], named: dict[str, Any], table: dict[str, Any]
) -> KnownPlant:
    """One plant from its row and what the table of plants says of its name and the law."""
    fields: list[Any] = [tuple(part) if isinstance(part, list) else part for part in row]
    taken = table["taken_for"].get(key, [])
    return KnownPlant(
        named["name"],
        named["common"],
        BookTraits(*fields),
        tuple(read_listed(entry) for entry in named["law"]),
        tuple(map(listed_elsewhere, taken)),
        named.get("why", ""),
    )
