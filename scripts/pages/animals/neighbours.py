"""Which animals eat a plant, uproot it, or go well with it: the animals' records, turned round."""

from typing import NamedTuple

from scripts.pages.animals.by_kind import is_eaten, is_nipped
from scripts.records.animal import Animal
from scripts.records.load import Library
from scripts.tables.plant_rows import grazers_of

AnimalsByKey = list[tuple[str, Animal]]


class Neighbours(NamedTuple):
    """Animals by what they do to one plant, as key and record; ``suits`` harm nothing of it.

    ``of_kinds`` are those whose kind the plant's record names, where no animal's record speaks of it.
    """

    eats: AnimalsByKey
    nibbles: AnimalsByKey
    uproots: AnimalsByKey
    suits: AnimalsByKey
    of_kinds: AnimalsByKey


def neighbours(plant: str, library: Library) -> Neighbours:
    """The animals whose records name this plant."""

    def those(does: str) -> AnimalsByKey:
        return [
            (slug, animal)
            for slug, animal in library.animals.items()
            if any(harm.does == does and plant in harm.plants for harm in animal.harms)
        ]

    suited = [item for item in library.animals.items() if plant in item[1].suits.plants]
    eats, nibbles, uproots = those("eats"), those("nibbles"), those("uproots")
    named = {slug for slug, _ in (*eats, *nibbles, *uproots, *suited)}
    return Neighbours(eats, nibbles, uproots, suited, of_named_kinds(plant, named, library))


def of_named_kinds(plant: str, named: set[str], library: Library) -> AnimalsByKey:
    """The animals of the kinds that a plant's record names, without those that are named already."""
    record, words = library.plants[plant], library.vocabulary["grazer"]
    return [
        (slug, animal)
        for slug, animal in library.animals.items()
        if slug not in named
        and (kinds := grazers_of(animal, words))
        and (is_eaten(record, kinds) or is_nipped(record, kinds))
    ]
