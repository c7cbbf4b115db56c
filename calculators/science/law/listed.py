"""The law lists as the tables carry them, and how we know what each says."""

from typing import NamedTuple

BASIS = {"read-in-text": "read in the text", "second-hand": "second-hand", "memory": "from memory"}


class Listed(NamedTuple):
    """A law list that names a plant: the list's key, the name it uses, and how we know.

    ``doubtful``: it names an old name that is used for this plant by mistake or in trade alone.
    """

    rule: str
    name: str
    basis: str  # a key of ``BASIS``
    doubtful: bool = False


class LawList(NamedTuple):
    """A law list. ``complete``: whether every plant of it that can live in fresh water is known here.

    ``bars``: whether it leaves a plant out. A list that forbids release alone does not; one of single
    states, of which some forbid more than others, does.
    """

    place: str
    title: str
    instrument: str
    short_effect: str
    complete: bool
    bars: bool
