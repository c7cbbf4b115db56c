"""Where a law restricts a plant: a whole place, or the single states whose law it is, by their names."""

from collections.abc import Iterable
from typing import Any, NamedTuple

from calculators.core.wording import PLACES, joined
from calculators.science.law.listed import LawList, Listed

PARTS = {"gb": "parts of"}  # what is no state


class Restricted(NamedTuple):
    """A place by its key; ``states`` are the parts whose law it is, none where it holds in the whole."""

    place: str
    states: tuple[str, ...] = ()


def read_restricted(row: list[Any]) -> Restricted:
    """Where, from its row."""
    place, states = row
    return Restricted(place, tuple(states))


def restricted_by(listed: Listed, law_list: LawList) -> Restricted:
    """Where a law list that names a plant restricts it."""
    named = (*listed.states, *listed.more_states)
    return holds_in(law_list.place, law_list.in_parts, named, law_list.only_in)


def holds_in(
    place: str, in_parts: bool, named: Iterable[str], only_in: Iterable[str]
) -> Restricted:
    """Where an entry holds: of several laws in the states that it names, else where its list does."""
    return Restricted(place, tuple(named if in_parts else only_in))


def once_a_place(named: Iterable[Restricted]) -> list[Restricted]:
    """One for each place, in order: the whole of it where one law holds there, else its states together."""
    states: dict[str, dict[str, None]] = {}
    whole = set()
    for where in named:
        states.setdefault(where.place, {}).update(dict.fromkeys(where.states))
        if not where.states:
            whole.add(where.place)
    return [
        Restricted(place, () if place in whole else tuple(parts)) for place, parts in states.items()
    ]


def place_in_words(where: Restricted) -> str:
    """A place by its name, or that single states of it have such a law, and which."""
    name = PLACES.get(where.place, where.place)
    if not where.states:
        return name
    parts = PARTS.get(where.place, "single states of")
    return f"{parts} {name} ({', '.join(where.states)})"


def places_in_words(named: Iterable[Restricted]) -> str:
    """All places where a law restricts a plant, as a sentence goes on after "in"."""
    return joined([place_in_words(where) for where in once_a_place(named)])
