"""The answer of the form in a keeper's words: a plant by its name, a question for a trait's key."""

from collections.abc import Mapping
from typing import Any

from calculators.core.in_words import RowInWords
from calculators.identify.trait_table import plant_book

Values = Mapping[str, Any]


def name_of_best(_inputs: Values, outputs: Values) -> list[RowInWords]:
    """The name of the plant that it is most like; none where nothing was seen."""
    best = outputs["best"]
    return [RowInWords(plant_book().plants[best].name)] if best else []


def trait_in_words(_inputs: Values, outputs: Values) -> list[RowInWords]:
    """The question to look at next, and why; none where no trait would tell enough."""
    trait = outputs["ask_next"]
    return [RowInWords(trait["question"], trait["why"])] if trait else []
