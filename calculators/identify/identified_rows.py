"""The rows of an answer: each plant with its reasons, and the next trait to look at."""

from collections.abc import Collection, Mapping, Sequence

from calculators.core.wording import joined
from calculators.identify.label import LabelSays
from calculators.identify.law_words import law_sentences
from calculators.identify.next_look import best_look
from calculators.identify.outputs import NextTrait, RankedCandidate
from calculators.identify.plant_posterior import given_traits, spoken_of
from calculators.identify.seen import SeenTraits
from calculators.identify.trait_table import plant_book
from calculators.identify.trait_words import TRAITS
from calculators.identify.words import reasons, why_look
from calculators.science.rounding import RESULT_DIGITS

FLOWER = "flower"
CANNOT_BE_TOLD = (
    "{names} cannot be told apart without a flower, by what their records have of leaf, stem and root. "
    "Until one opens, or a botanist looks, keep the label with a question mark."
)


def ranked_row(
    key: str, seen: SeenTraits, says: LabelSays, chances: Mapping[str, float], place: str | None
) -> RankedCandidate:
    """One plant of the ranking."""
    plant = plant_book().plants[key]
    speaks_for, against = reasons(spoken_of(key, seen, says), plant.traits, says)
    law = law_sentences(plant, place)
    return RankedCandidate(
        plant=key,
        fit_percent=round(100 * chances[key], RESULT_DIGITS),
        for_=speaks_for,
        against=against,
        law=law,
        name=plant.name,
        common=plant.common,
        in_words=[
            *(f"Law. {text}" for text in law),
            *(f"For. {text}" for text in speaks_for),
            *(f"Against. {text}" for text in against),
        ],
    )


def next_trait(
    seen: SeenTraits,
    chances: Mapping[str, float],
    leading: Sequence[str],
    unseen: Collection[str],
) -> NextTrait | None:
    """The trait to look at next; where the leading plants agree in all that can be seen, the flower.

    None where nothing is left to ask.
    """
    look = best_look(seen, chances, unseen)
    if look and look.trait == FLOWER and not best_look(seen, chances, {*unseen, FLOWER}):
        look = None  # nothing but a flower would tell
    if look:
        return NextTrait(look.trait, TRAITS[look.trait].question, why_look(look, leading, chances))
    if len(leading) < 2 or FLOWER in unseen or FLOWER in given_traits(seen):
        return None
    return NextTrait(FLOWER, TRAITS[FLOWER].question, cannot_be_told(leading))


def cannot_be_told(keys: Sequence[str]) -> str:
    """That these plants cannot be told apart without a flower."""
    return CANNOT_BE_TOLD.format(names=joined([plant_book().plants[key].name for key in keys]))
