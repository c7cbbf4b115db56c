"""For and against in words, and what the answer comes to."""

from collections.abc import Mapping, Sequence

from calculators.core.numbers import show_number
from calculators.core.result import Link, Note
from calculators.core.wording import joined
from calculators.identify.label import LabelSays
from calculators.identify.next_look import TraitToCheck
from calculators.identify.plant_posterior import LABEL, Spoken
from calculators.identify.record_words import NOT_RECORDED, label_of, recorded
from calculators.identify.trait_table import BookTraits, plant_book
from calculators.identify.trait_words import TRAITS, words_of
from calculators.science.evidence.weighing import SOMETHING_ELSE, words_for

FAIR = 0.1  # from this chance on the leading plants are named beside a question
NONE_FITS = 0.3  # from this chance of a plant that is not in the book on, none fits well; judgement
WORTH_SAYING = 0.1  # a weaker logarithm of a likelihood ratio is no reason
NOTHING_SEEN = "Nothing has been looked at yet: every plant of the book is as likely as any other."
MANY_FIT = "Many plants still fit: answer what is asked next."
NOT_ENOUGH = "Not enough to tell yet: do nothing on the strength of this list."
WHAT_IS_SHARED = (
    "The shares are our judgement, not a measurement. They are among the plants of this book, which does "
    "not hold every plant of the world. What you did not look at says nothing."
)


def reason(said: Spoken, traits: BookTraits, label: LabelSays) -> str:
    """One reason for or against a plant."""
    if said.trait == LABEL:
        names = joined([f"“{name.name}”" for name in label.names])
        return f"Label: it is sold as {names}." if names else "Label: it gives this genus."
    seen = words_of(said.trait, said.value)
    book = recorded(said.trait, traits)
    same = f"{label_of(said.trait)}: {seen}"
    if seen == book:
        return f"{same}."
    return f"{same}; its record has {book}."


def reasons(
    spoken: Sequence[Spoken], traits: BookTraits, label: LabelSays
) -> tuple[list[str], list[str]]:
    """What speaks for a plant and against it, the strongest first."""
    ordered = sorted(spoken, key=lambda one: (-abs(one.log_ratio), one.trait))
    telling = [one for one in ordered if abs(one.log_ratio) >= WORTH_SAYING]
    return (
        [reason(one, traits, label) for one in telling if one.log_ratio > 0],
        [reason(one, traits, label) for one in telling if one.log_ratio < 0],
    )


def why_look(look: TraitToCheck, leading: Sequence[str], chances: Mapping[str, float]) -> str:
    """Why a trait is worth a look: what the leading plants have."""
    plants = plant_book().plants
    had = {key: recorded(look.trait, plants[key].traits) for key in leading[:2]}
    known = [f"{plants[key].name}: {words}" for key, words in had.items() if words != NOT_RECORDED]
    worth_naming = len(set(had.values())) > 1 and chances[leading[0]] >= FAIR
    told = f" {'; '.join(known)}." if worth_naming else ""
    return f"Look at {TRAITS[look.trait].look}. It is expected to tell most of what you have not seen.{told}"


def verdict(
    chances: Mapping[str, float], order: Sequence[str], *, enough: bool, anything: bool
) -> Note:
    """The answer in one line."""
    if not anything:
        return Note("info", NOTHING_SEEN, first=True)
    first, percent = plant_book().plants[order[0]], 100 * chances[order[0]]
    if chances[SOMETHING_ELSE] > max(chances[order[0]], NONE_FITS):
        return Note(
            "caution",
            f"Of the plants of this book none fits well; the nearest is {first.name} "
            f"({show_number(percent, 2)} %). It may be a plant that is not in it.",
            first=True,
        )
    if chances[order[0]] < FAIR:
        return Note("info", MANY_FIT, first=True)
    text = (
        f"Most like {first.name}: {words_for(percent)}, {show_number(percent, 2)} of 100 among the plants "
        "of this book."
    )
    return Note("info", text if enough else f"{text} {NOT_ENOUGH}", first=True)


def label_notes(label: str | None, says: LabelSays) -> list[Note]:
    """What the label was worth, and a name that stands for several plants."""
    if says.unknown:
        return [
            Note("info", f"No name in “{label}” is known to this book, so the label says nothing.")
        ]
    notes = []
    for name in says.names:
        several = len(name.may_be) + len(name.others)
        if several < 2:
            continue
        others = joined(list(name.others))
        beside = f", {others} among them, of which this book has no page" if others else ""
        links = (Link(f"“{name.name}”: which plant is it?", name.page),) if name.page else ()
        notes.append(
            Note(
                "caution",
                f"“{name.name}” is used for {several} plants{beside}. The label counts weakly.",
                links=links,
            )
        )
    return notes
