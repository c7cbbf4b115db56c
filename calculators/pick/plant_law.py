"""What the law lists say of a plant. They name, they do not permit: the authority's word is final."""

from calculators.core.wording import PLACES
from calculators.pick.plant_table import Book, PlantEntry
from calculators.science.law.listed import BASIS, Listed, states_named
from calculators.science.law.restricted import once_a_place, places_in_words, restricted_by


def listed_in(plant: PlantEntry, place: str, book: Book) -> list[Listed]:
    """The lists of one place that name a plant."""
    return [listed for listed in plant.law if book.rules[listed.rule].place == place]


def barring(plant: PlantEntry, place: str, book: Book) -> list[Listed]:
    """The lists of a place that bar the plant, by a name that is surely its own."""
    listed = listed_in(plant, place, book)
    return [entry for entry in listed if book.rules[entry.rule].bars and not entry.doubtful]


def forbids(plant: PlantEntry, place: str, book: Book) -> bool:
    """Whether a list of a place bars a plant."""
    return bool(barring(plant, place, book))


def warnings(plant: PlantEntry, place: str, book: Book) -> list[str]:
    """What else the lists of a place say of a plant that they do not bar."""
    barred = barring(plant, place, book)
    return [
        warning(listed, book) for listed in listed_in(plant, place, book) if listed not in barred
    ]


def warning(listed: Listed, book: Book) -> str:
    """One list that names a plant and does not bar it, or may mean another."""
    rule = book.rules[listed.rule]
    if rule.in_parts and not listed.doubtful:
        return state_warning(listed)
    text = f"Law: {rule.title} names {listed.name} ({BASIS[listed.basis]}). {rule.short_effect}"
    if listed.doubtful:
        return f"{text} This plant has been called so by mistake or in trade: make sure which one it is."
    return f"{text} Never let it out."


def state_warning(listed: Listed) -> str:
    """What single states say of a plant: which ones, and that the keeper's own may too."""
    return (
        f"Law: single states name {listed.name}: {states_named(listed)}. Others may too. Look it up in your "
        "own state's list before you buy, keep or pass it on. Never let it out."
    )


def named_in_states(plant: PlantEntry, place: str, book: Book) -> list[Listed]:
    """The lists of a place's single states that name a plant by a name that is surely its own."""
    listed = listed_in(plant, place, book)
    return [entry for entry in listed if book.rules[entry.rule].in_parts and not entry.doubtful]


def reason(listed: Listed, book: Book) -> str:
    """Why the law leaves a plant out: list, name, effect, legal reference and how we know."""
    rule = book.rules[listed.rule]
    return (
        f"Law: {rule.title} names {listed.name} ({BASIS[listed.basis]}). {rule.short_effect} "
        f"Reference: {rule.instrument}. The authority's word is final."
    )


def elsewhere(plant: PlantEntry, place: str, book: Book) -> list[str]:
    """For a keeper whose place is on no list: where the plant is restricted, whole places first."""
    if place in PLACES:
        return []
    where = [
        restricted_by(listed, book.rules[listed.rule])
        for key in PLACES
        for listed in [*barring(plant, key, book), *named_in_states(plant, key, book)]
    ]
    whole_first = sorted(once_a_place(where), key=lambda part: bool(part.states))
    if not whole_first:
        return []
    return [f"Law: restricted in {places_in_words(whole_first)}; ask your own authority."]
