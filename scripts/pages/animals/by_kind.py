"""Plants and animals that belong together by the kind of plant eater that an animal is."""

from typing import NamedTuple

from scripts.records.animal import Animal
from scripts.records.load import Library
from scripts.records.plant import Plant
from scripts.tables.plant_rows import grazers_of


class PlantsByKind(NamedTuple):
    """Keys of the plants whose own records say that animals of this kind eat or nip them.

    What the animal's record names itself is left out.
    """

    labels: list[str]
    eaten: list[str]
    nipped: list[str]


def plants_by_kind(animal: Animal, library: Library) -> PlantsByKind:
    """The plants that go by the animal's kind, of those that the book offers."""
    kinds = grazers_of(animal, library.vocabulary["grazer"])
    named = {plant for harm in animal.harms for plant in harm.plants}
    others = {slug: plant for slug, plant in library.offered().items() if slug not in named}
    eaten = [slug for slug, plant in others.items() if is_eaten(plant, kinds)]
    return PlantsByKind(
        labels=[library.vocabulary["grazer"][kind]["label"] for kind in kinds],
        eaten=eaten,
        nipped=[
            slug for slug, plant in others.items() if slug not in eaten and is_nipped(plant, kinds)
        ],
    )


def is_eaten(plant: Plant, kinds: list[str]) -> bool:
    """Whether animals of one of the kinds strip, shred or dig out the plant."""
    return any(kind in eaten.eaters for eaten in plant.eaten_by for kind in kinds)


def is_nipped(plant: Plant, kinds: list[str]) -> bool:
    """Whether animals of one of the kinds nip or pull at the plant."""
    return any(kind in eaten.nibblers for eaten in plant.eaten_by for kind in kinds)
