"""Which law lists name a plant."""

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from scripts.records.plant import Plant
from scripts.records.rule import Entry, Rule


class Listing(NamedTuple):
    """A list that names a plant, and under which name."""

    slug: str
    rule: Rule
    entry: Entry


def listings(plant: Plant, rules: Mapping[str, Rule]) -> list[Listing]:
    """The lists on which a plant stands, under its accepted or an old name."""
    return listings_of((plant.name, *plant.old_names), rules)


def listings_of(names: Iterable[str], rules: Mapping[str, Rule]) -> list[Listing]:
    """The lists on which any of the names stands."""
    known = {species(name) for name in names}
    return [
        Listing(slug, rule, entry)
        for slug, rule in rules.items()
        for entry in rule.entries
        if known & {species(name) for name in (entry.name, *entry.also)}
    ]


def species(name: str) -> str:
    """Genus and species of a name, without author, so that a list's spelling can be compared.

    A variety is forbidden where its species is, so that ranks below the species do not matter.
    """
    return " ".join(name.replace("×", " ").split()[:2]).lower()
