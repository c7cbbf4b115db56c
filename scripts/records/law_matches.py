"""Which law lists name a plant."""

import re
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from functools import cache
from typing import NamedTuple

from calculators.science.law.restricted import Restricted, holds_in
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


def restricted_at(listing: Listing) -> Restricted:
    """Where the law of an entry restricts a plant: in the whole place, or in the states that it names."""
    rule, entry = listing.rule, listing.entry
    named = (*entry.states, *entry.states_second_hand)
    return holds_in(rule.place, rule.holds_in == "parts", named, rule.only_in)


class ListedLookAlike(NamedTuple):
    """A listed plant for which another is taken, with the lists."""

    name: str
    listed: list[Listing]


class ListedPlace(NamedTuple):
    """An entry and where it stands: ``order`` counts through all lists."""

    order: int
    slug: str
    rule: Rule
    entry: ListedName


class LawLists:
    """The law lists by the names on them: a plant is looked up, and not sought through every list."""

    def __init__(self, rules: Mapping[str, Rule]) -> None:
        self.rules = rules
        self.by_name: defaultdict[str, list[ListedPlace]] = defaultdict(list)
        self.named: list[tuple[Listing, frozenset[str]]] = []  # in order, with the names of each
        entries = ((slug, rule, entry) for slug, rule in rules.items() for entry in rule.entries)
        for order, (slug, rule, entry) in enumerate(entries):
            names = frozenset(species(name) for name in (entry.name, *entry.also))
            self.named.append((Listing(slug, rule, entry), names))
            for name in names:
                self.by_name[name].append(ListedPlace(order, slug, rule, entry))

    def naming(self, accepted: str, old: Iterable[str]) -> list[Listing]:
        """The entries that name a plant, in the order of the lists. A genus is matched by the accepted name
        alone: an old name may have stood in a genus that the law does not mean."""
        found: dict[int, Listing] = {}
        for name in (species(accepted), genus(accepted)):
            for order, slug, rule, entry in self.by_name.get(name, ()):
                found.setdefault(order, Listing(slug, rule, entry))
        for name in sorted(old, key=is_doubtful):
            for order, slug, rule, entry in self.by_name.get(species(name), ()):
                through = name.split(" (")[0]
                found.setdefault(order, Listing(slug, rule, entry, through, is_doubtful(name)))
        return [found[order] for order in sorted(found)]


LATEST: dict[int, LawLists] = {}  # one, by the identity of its rules, which it keeps alive


def lists_of(rules: Mapping[str, Rule]) -> LawLists:
    """The lists of these rules by name; made once as long as the same rules are asked for."""
    if id(rules) not in LATEST:
        LATEST.clear()
        LATEST[id(rules)] = LawLists(rules)
    return LATEST[id(rules)]


def listings(plant: Plant, rules: Mapping[str, Rule]) -> list[Listing]:
    """The lists on which a plant stands, under its accepted or an old name."""
    return lists_of(rules).naming(plant.name, plant.old_names)


def listings_of(name: str, rules: Mapping[str, Rule]) -> list[Listing]:
    """The lists on which a name stands that is in use."""
    return lists_of(rules).naming(name, ())


def without_record(plants: Iterable[Plant], rules: Mapping[str, Rule]) -> list[Listing]:
    """The entries that name none of these plants, in the order of the lists."""
    known = {
        (listing.slug, listing.entry.name) for plant in plants for listing in listings(plant, rules)
    }
    return [
        listing
        for listing, _ in lists_of(rules).named
        if (listing.slug, listing.entry.name) not in known
    ]


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
    for listing, names in lists_of(rules).named:
        if any(name in words and re.search(rf"\b{re.escape(name)}\b", words) for name in names):
            yield listing


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
