"""Which animals eat a plant, uproot it, or go well with it: the animals' records, turned round."""

from typing import NamedTuple

from scripts.records.animal import Animal
from scripts.records.load import Library

AnimalsByKey = list[tuple[str, Animal]]


class Neighbours(NamedTuple):
    """Animals by what they do to one plant, as key and record; ``suits`` harm nothing of it."""

    eats: AnimalsByKey
    nibbles: AnimalsByKey
    uproots: AnimalsByKey
    suits: AnimalsByKey


def neighbours(plant: str, library: Library) -> Neighbours:
    """The animals whose records name this plant."""

    def those(does: str) -> AnimalsByKey:
        return [
            (slug, animal)
            for slug, animal in library.animals.items()
            if any(harm.does == does and plant in harm.plants for harm in animal.harms)
        ]

    suited = [item for item in library.animals.items() if plant in item[1].suits.plants]
    return Neighbours(those("eats"), those("nibbles"), those("uproots"), suited)
