"""What naming a plant answers."""

from typing import Annotated, NamedTuple

from calculators.core.in_words import InWords
from calculators.core.quantities import Percent
from calculators.core.quantity import AsRows, Help, Label, RowsPlace, RowsStyle
from calculators.core.result import Note
from calculators.identify.answer_in_words import name_of_best, trait_in_words

PAGE = "plants/{plant}/"


class RankedCandidate(NamedTuple):
    """A plant that it may be.

    ``fit_percent`` is its share among the plants of this book and a plant that is not in it.
    """

    plant: Annotated[str, Label("Plant")]
    fit_percent: Annotated[Percent, Label("Share")]
    for_: Annotated[list[str], Label("For")]
    against: Annotated[list[str], Label("Against")]
    law: Annotated[list[str], Label("The law")]
    name: Annotated[str, Label("Name")]
    common: Annotated[str, Label("Sold as")]
    in_words: Annotated[list[str], Label("All of it in words")]


class NextTrait(NamedTuple):
    """The trait that is expected to tell most."""

    trait: Annotated[str, Label("Trait")]
    question: Annotated[str, Label("Question")]
    why: Annotated[str, Label("Why")]


class DifferingTrait(NamedTuple):
    """A trait in which the leading plants differ: where to look, and what each has."""

    trait: Annotated[str, Label("Trait")]
    label: Annotated[str, Label("Trait")]
    look: Annotated[str, Label("Where to look")]
    values: Annotated[list[str], Label("What each has")]


class ToldApart(NamedTuple):
    """What the records say to tell two of the leading plants apart."""

    plants: Annotated[list[str], Label("Plants")]
    names: Annotated[str, Label("Plants")]
    text: Annotated[list[str], Label("How to tell them apart")]


class Identification(NamedTuple):
    """What it may be, in order, and what to look at next."""

    best: Annotated[str | None, Label("Most like"), InWords(name_of_best)]
    ranked: Annotated[
        list[RankedCandidate],
        Label("What it may be, likeliest first"),
        Help(
            "A share among the plants of this book, which does not hold every plant of the world, and a "
            "plant that is not in it. No share reaches 100."
        ),
        AsRows(RowsStyle.CARDS, "name", "common", PAGE, "fit_percent", "in_words"),
    ]
    ask_next: Annotated[
        NextTrait | None, Label("Look at this next"), InWords(trait_in_words, RowsPlace.NEXT)
    ]
    enough: Annotated[bool, Label("Enough to tell")]
    not_in_book_percent: Annotated[Percent, Label("A plant that is not in this book")]
    side_by_side: Annotated[
        list[DifferingTrait],
        Label("The leading plants side by side"),
        AsRows(RowsStyle.CLOSED, "label", "look", lines="values"),
    ]
    told_apart: Annotated[
        list[ToldApart],
        Label("How the records tell them apart"),
        AsRows(RowsStyle.CLOSED, "names", lines="text"),
    ]
    notes: tuple[Note, ...]
