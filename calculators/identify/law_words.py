"""The law, first: whether a listed plant is among the likely ones, and what to do until one is sure."""

from collections.abc import Mapping, Sequence

from calculators.core.result import Link, Note
from calculators.core.wording import PLACES, joined, upper
from calculators.identify.trait_table import KnownPlant, plant_book
from calculators.science.law.listed import BASIS, Listed

LIKELY = (
    0.05  # from this chance on a listed plant is spoken of first; judgement, on the careful side
)
MOST_LINKS = 3
UNTIL_SURE = (
    "Until you know which plant it is, hand on, sell or swap none of it, and take it nowhere. Throw nothing "
    "out yet and bin nothing wet. Keep every piece in the tank, away from drains, ponds and streams. "
    "The law page says what to do where you live."
)
LISTS_CHANGE = (
    "Law marks come from the lists that we read. Lists change, a plant that is not marked may be listed, "
    "and the authority's word is final."
)


def listed_at(plant: KnownPlant, place: str | None) -> list[Listed]:
    """The lists that name a plant: of the place, or of any where none is chosen or none is held."""
    rules = plant_book().rules
    return [
        listed for listed in plant.law if place not in PLACES or rules[listed.rule].place == place
    ]


def law_sentences(plant: KnownPlant, place: str | None) -> list[str]:
    """What the lists say of a plant, and of listed plants with no page here that it is taken for."""
    rules = plant_book().rules
    said = []
    for listed in listed_at(plant, place):
        rule = rules[listed.rule]
        text = (
            f"{upper(named_place(rule.place))}: {rule.title} names {listed.name} ({BASIS[listed.basis]}). "
            f"{rule.short_effect}"
        )
        if listed.doubtful:
            text += (
                " This plant has been called so by mistake or in trade: make sure which one it is."
            )
        said.append(text)
    for name, places in plant.taken_for:
        if here := [key for key in places if place not in PLACES or key == place]:
            where = joined([named_place(key) for key in here])
            said.append(
                f"It may be mistaken for {name}, which has no page here and is restricted in {where}."
            )
    return said


def named_place(place: str) -> str:
    """A place by its name."""
    return PLACES.get(place, place)


def likely_listed(chances: Mapping[str, float], place: str | None) -> list[str]:
    """The plants with a fair chance that a list of the place names, the likeliest first."""
    plants = plant_book().plants
    listed = [key for key in plants if chances[key] >= LIKELY and listed_at(plants[key], place)]
    return sorted(listed, key=lambda key: (-chances[key], key))


def law_note(listed: Sequence[str], place: str | None) -> list[Note]:
    """The first line where a listed plant is among the likely ones; nothing otherwise."""
    if not listed:
        return []
    plants, rules = plant_book().plants, plant_book().rules
    places = list(
        dict.fromkeys(
            rules[entry.rule].place for key in listed for entry in listed_at(plants[key], place)
        )
    )
    names = joined([plants[key].name for key in listed])
    where = joined([named_place(key) for key in places])
    links = tuple(
        Link(f"The law: {named_place(key).removeprefix('the ')}", f"rules/{key}/")
        for key in places[:MOST_LINKS]
    )
    text = f"The law first: it may be {names}, restricted in {where}. {UNTIL_SURE}"
    return [Note("caution", text, first=True, links=links)]
