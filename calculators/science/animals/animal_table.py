"""The animals that the records know, as far as the calculators need them."""

from typing import NamedTuple

from calculators.core.data import read_table


class AnimalEntry(NamedTuple):
    """A kind of animal as its record has it. Mass is W = a L^b, in g without a shell, of a length L in cm."""

    name: str
    common: str
    group: str  # fish, shrimp, crayfish, snail or clam
    a: float
    b: float
    feed_low: float  # per cent of living mass a day
    feed_high: float
    temperature_low: float  # °C
    temperature_high: float
    longest_mm: float
    least: int  # kept together
    most: int | None  # where more is a mistake
    law: tuple[str, ...] = ()  # places of which a law that bears on it was found
    ph_low: float | None = None  # where it is kept; None is not known
    ph_high: float | None = None
    gh_low: float | None = None  # °dH
    gh_high: float | None = None
    company: str = ""  # whom it bears beside it, a sentence or two
    offered: bool = True  # as one to keep; a tank may hold another all the same


ANIMALS: dict[str, AnimalEntry] = {
    key: AnimalEntry(**{**fields, "law": tuple(fields["law"])})
    for key, fields in read_table("animals").items()
}


def animal_name(key: str) -> str:
    """The common name of a kind, or its own; of one that is not in this book, its key."""
    known = ANIMALS.get(key)
    return (known.common or known.name) if known else key


def shown_name(key: str) -> str:
    """The name of a kind as a form shows it."""
    animal = ANIMALS[key]
    return f"{animal.common} ({animal.name})" if animal.common else animal.name
