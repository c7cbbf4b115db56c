"""What the law changes: which plant drops out where, and what takes its place."""

from collections.abc import Sequence

from calculators.core.result import Note
from calculators.core.wording import PLACES, joined
from calculators.pick import plant_law
from calculators.pick.choose import stand_in
from calculators.pick.judge import Judged
from calculators.pick.plant_table import Book
from calculators.pick.together import PlantSet, best_set
from calculators.pick.wishes import Wishes
from calculators.science.law.listed import BASIS

STATES = {
    "us": "Only the federal list leaves plants out. States have their own, and many forbid more: see yours.",
    "eu": "A member state may forbid more than the Union list.",
    "gb": "England, Scotland and Wales have lists of their own besides.",
    "au": "States and territories have their own acts and longer lists: ask your state's biosecurity office.",
    "nz": "New Zealand lets in few water plants, and a region may forbid more.",
}


def law_notes(
    judged: Sequence[Judged], chosen: Sequence[Judged], fit: Sequence[Judged],
    best: PlantSet | None, wishes: Wishes, book: Book,
) -> list[Note]:  # fmt: skip
    """The notes on the law: of the keeper's place, or of every place where none is named."""
    if wishes.place in PLACES:
        return of_place(judged, chosen, best, wishes, book)
    notes = [
        Note(
            "caution",
            "No law list is held for a place that is not named. Ask your local authority before you buy, "
            "pass on or move a plant.",
        )
    ]
    changes = [change(place, chosen, fit, best, wishes, book) for place in PLACES]
    notes += [Note("info", text) for text in changes if text]
    if chosen and not any(changes):
        named = joined(list(PLACES.values()))
        notes.append(Note("info", f"None of these stands on the lists held for {named}."))
    return notes


def of_place(
    judged: Sequence[Judged],
    chosen: Sequence[Judged],
    best: PlantSet | None,
    wishes: Wishes,
    book: Book,
) -> list[Note]:
    """What a place's own law took out, and how far its list reaches."""
    last = chosen[-1].order if chosen else None
    lost = [
        candidate.plant.name
        for candidate in judged
        if candidate.banned and not candidate.unfit
        if last is None or len(chosen) < wishes.most_listed or candidate.order < last
    ]
    notes = state_notes(chosen, best, wishes, book)
    if lost:
        text = f"But for the law of {PLACES[wishes.place]}, {joined(lost)} would be among these."
        notes.append(Note("info", text))
    part = [
        law_list.title
        for law_list in book.rules.values()
        if law_list.place == wishes.place and not law_list.complete
    ]
    if part:
        text = f"Not all of it is held here: {', '.join(part)}. A plant that is not named may be listed."
        notes.append(Note("caution", text))
    return [*notes, Note("caution", f"{STATES[wishes.place]} The authority's word is final.")]


def state_notes(
    chosen: Sequence[Judged], best: PlantSet | None, wishes: Wishes, book: Book
) -> list[Note]:
    """Which plants of the list and of the set single states of the place forbid or restrict."""
    shown = [*chosen, *(member.judged for member in (best.members if best else ()))]
    named = [
        f"{candidate.plant.name} ({joined([*listed.states, *listed.more_states])})"
        for candidate in {candidate.key: candidate for candidate in shown}.values()
        for listed in plant_law.named_in_states(candidate.plant, wishes.place, book)
    ]
    if not named:
        return []
    text = f"Single states name {joined(named)}. Look at your own state's list first, or take another plant."
    return [Note("caution", text)]


def change(
    place: str, chosen: Sequence[Judged], fit: Sequence[Judged],
    best: PlantSet | None, wishes: Wishes, book: Book,
) -> str:  # fmt: skip
    """What drops out in one place and what takes its place; empty where nothing does."""
    barred = {candidate.key for candidate in fit if plant_law.forbids(candidate.plant, place, book)}
    taken = {candidate.key for candidate in chosen}
    parts = []
    for candidate in chosen:
        if candidate.key in barred:
            other = stand_in(candidate, fit, taken, barred)
            taken |= {other.key} if other else set()
            basis = BASIS[plant_law.barring(candidate.plant, place, book)[0].basis]
            parts.append(
                f"{candidate.plant.name} drops out ({basis}) and "
                + (
                    f"{other.plant.name} takes its place"
                    if other
                    else "nothing else of its kind fits"
                )
            )
    parts += set_change(barred, fit, best, wishes)
    return f"In {PLACES[place]} {'; '.join(parts)}." if parts else ""


def set_change(
    barred: set[str], fit: Sequence[Judged], best: PlantSet | None, wishes: Wishes
) -> list[str]:
    """How the set for the nitrogen changes, where one of it is barred."""
    if best is None or wishes.surface_cm2 is None:
        return []
    if not any(member.judged.key in barred for member in best.members):
        return []
    other, _ = best_set(
        [candidate for candidate in fit if candidate.key not in barred], wishes, wishes.surface_cm2
    )
    if other is None:
        return ["no set for the nitrogen is left"]
    return [f"the set becomes {joined([member.judged.plant.name for member in other.members])}"]
