"""What the law lists say of a plant. They name, they do not permit: the authority's word is final."""

from calculators.picker.record import Book, Listed, Plant

PLACES = {
    "us": "the United States",
    "eu": "the European Union",
    "gb": "Great Britain",
    "au": "Australia",
    "nz": "New Zealand",
}
BASIS = {"read-in-text": "read in the text", "second-hand": "second-hand", "memory": "from memory"}


def listed_in(plant: Plant, place: str, book: Book) -> list[Listed]:
    """The lists of one place that name a plant."""
    return [one for one in plant.law if book.rules[one.rule].place == place]


def forbids(plant: Plant, place: str, book: Book) -> bool:
    """Whether a list of a place names it; every list held here restricts keeping, selling or moving."""
    return bool(listed_in(plant, place, book))


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


def joined(words: list[str]) -> str:
    """Words as a list in a sentence."""
    return " and ".join([", ".join(words[:-1]), words[-1]] if len(words) > 1 else words)
