"""The leading plants side by side: in which traits they differ, and where to look."""

import itertools
from collections.abc import Sequence

from calculators.core.wording import joined
from calculators.identify.outputs import DifferingTrait, ToldApart
from calculators.identify.record_words import NOT_RECORDED, recorded
from calculators.identify.trait_table import plant_book
from calculators.identify.trait_words import TRAITS

MOST_BESIDE = 3  # plants that are put side by side


def differing(keys: Sequence[str]) -> list[DifferingTrait]:
    """The traits of which each record says something, and not the same."""
    plants = plant_book().plants
    rows = []
    for trait, words in TRAITS.items():
        values = [recorded(trait, plants[key].traits) for key in keys]
        if len(set(values)) > 1 and NOT_RECORDED not in values:
            named = [
                f"{plants[key].name}: {value}" for key, value in zip(keys, values, strict=True)
            ]
            rows.append(DifferingTrait(trait, words.label, f"look at {words.look}", named))
    return rows


def told_apart(keys: Sequence[str]) -> list[ToldApart]:
    """What the records say of each pair."""
    plants, apart = plant_book().plants, plant_book().apart
    pairs = [
        (one, other)
        for one, other in itertools.combinations(sorted(keys), 2)
        if (one, other) in apart
    ]
    return [
        ToldApart(
            list(pair), joined([plants[key].name for key in pair]), [look_alike_sentence(*pair)]
        )
        for pair in pairs
    ]


def look_alike_sentence(one: str, other: str) -> str:
    """The words of one record on its look-alike, with the names of both."""
    own, text = plant_book().apart[one, other]
    about = other if own == one else one
    plants = plant_book().plants
    return f"{plants[about].name} beside {plants[own].name}: {text}"
