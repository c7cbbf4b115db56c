"""The law lists as the tables carry them, and how we know what each says."""

from typing import Any, NamedTuple

from calculators.core.wording import joined

BASIS = {"read-in-text": "read in the text", "second-hand": "second-hand", "memory": "from memory"}


class Listed(NamedTuple):
    """A law list that names a plant: the list's key, the name it uses, and how we know.

    ``doubtful``: it names an old name that is used for this plant by mistake or in trade alone.
    ``states``: the single states that name it, where the list does not hold in the whole place;
    ``more_states``: those of which another body says so.
    """

    rule: str
    name: str
    basis: str  # a key of ``BASIS``
    doubtful: bool = False
    states: tuple[str, ...] = ()
    more_states: tuple[str, ...] = ()


class LawList(NamedTuple):
    """A law list. ``complete``: whether every plant of it that can live in fresh water is known here.

    ``bars``: whether it leaves a plant out. A list that forbids release alone does not. Nor does one of
    single states (``in_parts``): the keeper's state is not known, so that the plant is warned of by state.
    ``only_in`` names the parts of the place in which alone the list holds.
    """

    place: str
    title: str
    instrument: str
    short_effect: str
    complete: bool
    bars: bool
    in_parts: bool = False
    only_in: tuple[str, ...] = ()


def read_listed(entry: list[Any]) -> Listed:
    """One law list that names a plant, from its row."""
    rule, name, basis, doubtful, states, more_states = entry
    return Listed(rule, name, basis, doubtful, tuple(states), tuple(more_states))


def read_law_list(fields: dict[str, Any]) -> LawList:
    """One law list, from its fields by name."""
    return LawList(**{**fields, "only_in": tuple(fields.get("only_in", ()))})


def states_named(listed: Listed) -> str:
    """The single states that name a plant, and how we know."""
    more = f"; as others say, {joined(list(listed.more_states))}" if listed.more_states else ""
    return f"{joined(list(listed.states))} ({BASIS[listed.basis]}){more}"
