"""The law, first: whether a listed plant is among the likely ones, and what to do until one is sure."""

from collections.abc import Collection, Mapping, Sequence

from calculators.core.result import Link, Note
from calculators.core.wording import PLACES, joined, upper
from calculators.identify.label import NOTHING_SAID, LabelSays
from calculators.identify.plant_posterior import NOT_IN_BOOK
from calculators.identify.trait_table import KnownPlant, ListedElsewhere, plant_book
from calculators.science.law.listed import BASIS, Listed, states_named
from calculators.science.law.restricted import Restricted, places_in_words, restricted_by

LIKELY = (
    0.05  # from this chance on a listed plant is spoken of first; judgement, on the careful side
)
MOST_LINKS = 2
FAIRLY_LIKELY = 0.2  # ... and one of which a listed plant without a page here is taken for it
UNTIL_SURE = (
    "Until you know, hand on, sell or swap none of it and bin nothing wet: every piece stays in the tank, "
    "out of drains, ponds and streams."
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
    said = [f"Never plant it: {plant.never_planted}"] if plant.never_planted else []
    for listed in listed_at(plant, place):
        rule = rules[listed.rule]
        who = f"{rule.title} names {listed.name} ({BASIS[listed.basis]})"
        if rule.in_parts:
            who = f"single states name {listed.name}, others may too: {states_named(listed)}"
        text = f"{upper(named_place(rule.place))}: {who}. {rule.short_effect}"
        if listed.doubtful:
            text += (
                " This plant has been called so by mistake or in trade: make sure which one it is."
            )
        said.append(text)
    said += [
        f"It may be mistaken for {name}, which has no page here and is restricted in "
        f"{places_in_words(where)}."
        for name, where in at_place(plant.taken_for, place).items()
    ]
    return said


def named_place(place: str) -> str:
    """A place by its name."""
    return PLACES.get(place, place)


def spoken_of_first(chances: Mapping[str, float], named: Collection[str]) -> list[str]:
    """The plants with a fair chance, and those that the label may mean as long as nothing rules them out.

    ``named`` are the keys that the label names: the word of a shop is reason enough to look at the law.
    """
    plants = plant_book().plants
    before = (1 - NOT_IN_BOOK) / len(plants)  # each plant's chance with nothing seen
    return [
        key for key in plants if chances[key] >= LIKELY or (key in named and chances[key] >= before)
    ]


def likely_listed(
    chances: Mapping[str, float], place: str | None, named: Collection[str] = ()
) -> list[str]:
    """The plants to speak of that a list of the place names, the likeliest first; see above for ``named``."""
    plants = plant_book().plants
    listed = [key for key in spoken_of_first(chances, named) if listed_at(plants[key], place)]
    return sorted(listed, key=lambda key: (-chances[key], key))


def likely_never_planted(chances: Mapping[str, float], named: Collection[str] = ()) -> list[str]:
    """The names of plants to speak of that nobody shall plant in any place, the likeliest first."""
    plants = plant_book().plants
    never = [key for key in spoken_of_first(chances, named) if plants[key].never_planted]
    return [plants[key].name for key in sorted(never, key=lambda key: (-chances[key], key))]


def taken_for(chances: Mapping[str, float], place: str | None) -> dict[str, list[Restricted]]:
    """Listed plants with no page here for which a fairly likely plant may be taken, each with where."""
    plants = plant_book().plants
    named: dict[str, list[Restricted]] = {}
    for key in sorted(plants, key=lambda key: (-chances[key], key)):
        if chances[key] >= FAIRLY_LIKELY:
            named = at_place(plants[key].taken_for, place) | named
    return named


def at_place(listed: Sequence[ListedElsewhere], place: str | None) -> dict[str, list[Restricted]]:
    """Of listed plants those of a place, each with where: of any where none is chosen or held."""
    here = {
        name: [part for part in where if place not in PLACES or part.place == place]
        for name, where in listed
    }
    return {name: where for name, where in here.items() if where}


def where_listed(plant: KnownPlant, place: str | None) -> list[Restricted]:
    """Where the lists restrict a plant, of a place or of any."""
    rules = plant_book().rules
    return [restricted_by(listed, rules[listed.rule]) for listed in listed_at(plant, place)]


def law_note(
    chances: Mapping[str, float], place: str | None, says: LabelSays = NOTHING_SAID
) -> list[Note]:
    """The first line, where a listed plant is likely, or a likely plant is taken for a listed one.

    So it is where the label may mean a listed one, with a page here or without.
    """
    named = says.worth
    plants = plant_book().plants
    said = {
        plants[key].name: where_listed(plants[key], place)
        for key in likely_listed(chances, place, named)
    }
    beside = taken_for(chances, place) | at_place(says.listed, place)
    never = likely_never_planted(chances, named)
    if not said and not beside and not never:
        return []
    maybe = [f"it may be {joined(list(said))}"] if said else []
    if beside:
        maybe.append(
            f"{'or, ' if said else 'it may be, '}with no page here, {joined(list(beside))}"
        )
    if never:
        maybe.append(f"{joined(never)} {'is' if len(never) == 1 else 'are'} never to be planted")
    named_where = {**said, **beside}
    places = list(dict.fromkeys(part.place for where in named_where.values() for part in where))
    text = f"The law first: {'; '.join(maybe)}{restricted_words(named_where)}. {UNTIL_SURE}"
    return [Note("caution", text, first=True, links=law_links(places))]


def restricted_words(named: Mapping[str, Sequence[Restricted]]) -> str:
    """Where each of some plants is restricted, once where it is the same for all; empty for none."""
    names: dict[str, list[str]] = {}
    for name, where in named.items():
        names.setdefault(places_in_words(where), []).append(name)
    if len(names) < 2:
        return "".join(f"; restricted in {where}" for where in names)
    return f"; restricted: {'; '.join(f'{joined(own)} in {where}' for where, own in names.items())}"


def law_links(places: Sequence[str]) -> tuple[Link, ...]:
    """The law pages of a few places, or the page of all."""
    if len(places) > MOST_LINKS:
        return (Link("What the law says, place by place", "rules/"),)
    return tuple(
        Link(f"The law: {named_place(place).removeprefix('the ')}", f"rules/{place}/")
        for place in places
    )
