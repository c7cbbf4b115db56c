"""What the law lists say of a plant. They name, they do not permit: the authority's word is final."""

from calculators.core.wording import PLACES as PLACES
from calculators.core.wording import joined as joined
from calculators.pick.plant_table import Book, Listed, Plant

BASIS = {"read-in-text": "read in the text", "second-hand": "second-hand", "memory": "from memory"}


def listed_in(plant: Plant, place: str, book: Book) -> list[Listed]:
    """The lists of one place that name a plant."""
    return [one for one in plant.law if book.rules[one.rule].place == place]


def barring(plant: Plant, place: str, book: Book) -> list[Listed]:
    """The lists of a place that bar the plant, by a name that is surely its own."""
    listed = listed_in(plant, place, book)
    return [one for one in listed if book.rules[one.rule].bars and not one.doubtful]


def forbids(plant: Plant, place: str, book: Book) -> bool:
    """Whether a list of a place bars a plant."""
    return bool(barring(plant, place, book))


def warnings(plant: Plant, place: str, book: Book) -> list[str]:
    """What else the lists of a place say of a plant that they do not bar."""
    barred = barring(plant, place, book)
    return [warning(one, book) for one in listed_in(plant, place, book) if one not in barred]


def warning(listed: Listed, book: Book) -> str:
    """One list that names a plant and does not bar it, or may mean another."""
    rule = book.rules[listed.rule]
    said = f"Law: {rule.title} names {listed.name} ({BASIS[listed.basis]}). {rule.short_effect}"
    if listed.doubtful:
        return f"{said} This plant has been called so by mistake or in trade: make sure which one it is."
    return f"{said} Never let it out."


def reason(listed: Listed, book: Book) -> str:
    """Why the law leaves a plant out: list, name, effect, legal reference and how we know."""
    rule = book.rules[listed.rule]
    return (
        f"Law: {rule.title} names {listed.name} ({BASIS[listed.basis]}). {rule.short_effect} "
        f"Reference: {rule.instrument}. The authority's word is final."
    )


def places_of(plant: Plant, book: Book) -> list[str]:
    """The places whose lists name a plant, in the order of ``PLACES``."""
    return [place for place in PLACES if forbids(plant, place, book)]


def elsewhere(plant: Plant, place: str, book: Book) -> list[str]:
    """For a keeper whose place is on no list: where the plant is restricted."""
    found = places_of(plant, book) if place not in PLACES else []
    if not found:
        return []
    named = joined([PLACES[one] for one in found])
    return [f"Law: restricted in {named}; ask your own authority."]
