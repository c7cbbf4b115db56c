"""What a name on a label is worth: evidence, for labels are often wrong and names often shared."""

import difflib
import re
from typing import NamedTuple

from calculators.identify.trait_table import LabelName, ListedElsewhere, plant_book

# How many times likelier the named plant becomes; judgement. A shop's scientific name is wrong often
# enough that three plain traits must be able to overrule it.
WORTH = {"scientific": 20.0, "old": 12.0, "trade": 8.0}
# A name that stands for several plants says little: by how often each is sold under it.
SHARED_WORTH = {"mostly": 5.0, "often": 3.0, "sometimes": 2.0, "seldom": 1.3, "not-known": 1.3}
GENUS_WORTH = 4.0  # a label that gives a genus alone
NEAR_ENOUGH = 0.85  # of a name's letters, so that a slip of the pen is still read
SHORTEST = 3  # letters of a word that is looked for


class LabelSays(NamedTuple):
    """The names that a label holds, and by how much each plant becomes likelier.

    ``others`` are plants without a record that it may mean; ``listed`` are plants without a record that
    a law list names, each with where; ``unknown``: nothing in it is known.
    """

    names: tuple[LabelName, ...]
    worth: dict[str, float]
    others: tuple[str, ...]
    unknown: bool
    listed: tuple[ListedElsewhere, ...] = ()


NOTHING_SAID = LabelSays((), {}, (), False)


def read_label(label: str | None) -> LabelSays:
    """What a label says; a text in which no name is known says nothing."""
    text = " ".join(re.sub(r"[^\w .×'’-]", " ", label or "").replace("’", "'").lower().split())
    if not text:
        return NOTHING_SAID
    names, listed = names_in(text), listed_in(text)
    if not names:
        worth = genus_worth(text)
        return LabelSays((), worth, (), not worth and not listed, listed)
    worth = {}
    for name in names:
        for plant, often in name.may_be.items():
            worth[plant] = max(worth.get(plant, 1.0), worth_of(name, often))
    others = tuple(dict.fromkeys(other for name in names for other in name.others))
    return LabelSays(tuple(names), worth, others, False, listed)


def listed_in(text: str) -> tuple[ListedElsewhere, ...]:
    """The plants without a record that a text names as a law list does, each with where.

    A genus alone may be any of its listed species, as long as no plant of the book is of that genus.
    """
    book, plain = plant_book(), text.replace("-", " ")
    named = book.listed_only
    found = [own for name, own in named.items() if stands_in(name, text)]
    for name, keys in book.listed_common.items():
        if stands_in(name.replace("-", " "), plain):
            found += [named[key] for key in keys]
    if not found and not genus_worth(text):
        words = set(text.split())
        found = [own for name, own in named.items() if name.split()[0] in words]
    return tuple(dict.fromkeys(found))


def stands_in(name: str, text: str) -> bool:
    """Whether a text has a name as whole words, both in small letters."""
    return re.search(rf"\b{re.escape(name)}\b", text) is not None


def names_in(text: str) -> list[LabelName]:
    """The names in a text: the whole of it, the longest inside it, or one that is spelled nearly so."""
    labels = plant_book().labels
    if text in labels:
        return [labels[text]]
    inside = [name for name in labels if len(name) > SHORTEST and stands_in(name, text)]
    longest = max(map(len, inside), default=0)
    if inside:
        return [labels[name] for name in inside if len(name) == longest]
    close = difflib.get_close_matches(text, labels, 1, NEAR_ENOUGH)
    return [labels[name] for name in close]


def worth_of(name: LabelName, often: str) -> float:
    """What a name is worth for one of its plants.

    It is a factor for the odds that it is that plant.
    """
    if name.kind == "ambiguous" or len(name.may_be) > 1:
        return SHARED_WORTH[often] if name.kind == "ambiguous" else SHARED_WORTH["often"]
    return WORTH[name.kind]


def genus_worth(text: str) -> dict[str, float]:
    """What a name is worth that is a genus alone, for each of its plants by key, as a factor of the odds."""
    words = set(text.split())
    return {
        key: GENUS_WORTH
        for key, plant in plant_book().plants.items()
        if plant.name.split()[0].lower() in words
    }
