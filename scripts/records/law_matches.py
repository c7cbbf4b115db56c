"""Which law lists name a plant."""

import re
from collections.abc import Iterable, Iterator, Mapping
from functools import cache
from typing import NamedTuple

from scripts.records.plant import Plant
from scripts.records.rule import ListedName, Rule

DOUBTFUL = ("(misapplied", "(trade", "(in trade", "(spelling")  # behind a name that is no synonym


class Listing(NamedTuple):
    """A list that names a plant, and under which name.

    ``through`` is the plant's old name that matched, where the accepted one did not; ``doubtful``
    says that this name is only used for it by mistake or in trade, so that the law may mean another.
    """

    slug: str
    rule: Rule
    entry: ListedName
    through: str | None = None
    doubtful: bool = False


class ListedLookAlike(NamedTuple):
    """A listed plant for which another is taken, with the lists."""

    name: str
    listed: list[Listing]


def listings(plant: Plant, rules: Mapping[str, Rule]) -> list[Listing]:
    """The lists on which a plant stands, under its accepted or an old name."""
    return listings_of((plant.name, *plant.old_names), rules)


def listings_of(names: Iterable[str], rules: Mapping[str, Rule]) -> list[Listing]:
    """The lists on which any of the names stands. The first is the one in use, the others are old."""
    accepted, *old = names
    listed = (
        listing(accepted, old, slug, rule, entry)
        for slug, rule in rules.items()
        for entry in rule.entries
    )
    return [match for match in listed if match is not None]


def listing(
    accepted: str, old: list[str], slug: str, rule: Rule, entry: ListedName
) -> Listing | None:
    """How an entry names a plant, or nothing. A genus is matched by the accepted name alone:
    an old name may have stood in a genus that the law does not mean."""
    listed = {species(name) for name in (entry.name, *entry.also)}
    if species(accepted) in listed or genus(accepted) in listed:
        return Listing(slug, rule, entry)
    matching = [name for name in old if species(name) in listed]
    for name in sorted(matching, key=is_doubtful):
        return Listing(slug, rule, entry, name.split(" (")[0], is_doubtful(name))
    return None


def listed_look_alikes(plant: Plant, rules: Mapping[str, Rule]) -> list[ListedLookAlike]:
    """The plant's look-alikes that a list names, so that a keeper makes sure which one it is."""
    own = {(listing.slug, listing.entry.name) for listing in listings(plant, rules)}
    alike = []
    for name in dict.fromkeys(alike_plant.name for alike_plant in plant.look_alikes):
        listed = [
            listing
            for listing in mentioned(name, rules)
            if (listing.slug, listing.entry.name) not in own
        ]
        if listed:
            alike.append(ListedLookAlike(name, listed))
    return alike


def mentioned(text: str, rules: Mapping[str, Rule]) -> Iterator[Listing]:
    """Every entry that a text names; a genus alone names all its species."""
    words = text.lower()
    for slug, rule in rules.items():
        for entry in rule.entries:
            names = {species(name) for name in (entry.name, *entry.also)}
            if any(re.search(rf"\b{re.escape(name)}\b", words) for name in names):
                yield Listing(slug, rule, entry)


def is_doubtful(name: str) -> bool:
    """Whether an old name is marked as misapplied or as a name of trade alone."""
    return any(mark in name for mark in DOUBTFUL)


def genus(name: str) -> str:
    """The genus of a name."""
    return species(name).split(" ")[0]


@cache
def species(name: str) -> str:
    """Genus and species of a name, without author, so that a list's spelling can be compared.

    A variety is forbidden where its species is, so that ranks below the species do not matter.
    """
    return " ".join(name.replace("×", " ").split()[:2]).lower()
