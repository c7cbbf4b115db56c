"""What the law changes: which plant drops out where, and what takes its place."""

from collections.abc import Sequence

from calculators.core.result import Note
from calculators.pick import law
from calculators.pick.choose import stand_in
from calculators.pick.judge import Judged
from calculators.pick.plant_table import Book
from calculators.pick.together import Set, best_set
from calculators.pick.wishes import Want

STATES = {
    "us": "Only the federal list is held here. States have their own, and many forbid more: look at yours.",
    "eu": "A member state may forbid more than the Union list.",
    "gb": "England, Scotland and Wales have lists of their own besides.",
    "au": "States and territories have their own acts and longer lists: ask your state's biosecurity office.",
    "nz": "New Zealand lets in few water plants, and a region may forbid more.",
}


def law_notes(
    judged: Sequence[Judged], chosen: Sequence[Judged], fit: Sequence[Judged],
    found: Set | None, want: Want, book: Book,
) -> list[Note]:  # fmt: skip
    """The notes on the law: of the keeper's place, or of every place where none is named."""
    if want.place in law.PLACES:
        return of_place(judged, chosen, want, book)
    said = [
        Note(
            "caution",
            "No law list is held for a place that is not named. Ask your local authority before you buy, "
            "pass on or move a plant.",
        )
    ]
    changes = [change(place, chosen, fit, found, want, book) for place in law.PLACES]
    said += [Note("info", text) for text in changes if text]
    if chosen and not any(changes):
        named = law.joined(list(law.PLACES.values()))
        said.append(Note("info", f"None of these stands on the lists held for {named}."))
    return said


def of_place(
    judged: Sequence[Judged], chosen: Sequence[Judged], want: Want, book: Book
) -> list[Note]:
    """What a place's own law took out, and how far its list reaches."""
    last = chosen[-1].order if chosen else None
    lost = [
        one.plant.name
        for one in judged
        if one.banned and not one.unfit
        if last is None or len(chosen) < want.most_listed or one.order < last
    ]
    said = []
    if lost:
        text = (
            f"But for the law of {law.PLACES[want.place]}, {law.joined(lost)} would be among these."
        )
        said.append(Note("info", text))
    part = [
        one.title for one in book.rules.values() if one.place == want.place and not one.complete
    ]
    if part:
        text = f"Not all of it is held here: {', '.join(part)}. A plant that is not named may be listed."
        said.append(Note("caution", text))
    return [*said, Note("caution", f"{STATES[want.place]} The authority's word is final.")]


def change(
    place: str, chosen: Sequence[Judged], fit: Sequence[Judged],
    found: Set | None, want: Want, book: Book,
) -> str:  # fmt: skip
    """What drops out in one place and what takes its place; empty where nothing does."""
    barred = {one.key for one in fit if law.forbids(one.plant, place, book)}
    taken = {one.key for one in chosen}
    parts = []
    for one in chosen:
        if one.key in barred:
            other = stand_in(one, fit, taken, barred)
            taken |= {other.key} if other else set()
            basis = law.BASIS[law.barring(one.plant, place, book)[0].basis]
            parts.append(
                f"{one.plant.name} drops out ({basis}) and "
                + (
                    f"{other.plant.name} takes its place"
                    if other
                    else "nothing else of its kind fits"
                )
            )
    parts += set_change(barred, fit, found, want)
    return f"In {law.PLACES[place]} {'; '.join(parts)}." if parts else ""


def set_change(barred: set[str], fit: Sequence[Judged], found: Set | None, want: Want) -> list[str]:
    """How the set for the nitrogen changes, where one of it is barred."""
    if found is None or want.surface_cm2 is None:
        return []
    if not any(one.judged.key in barred for one in found.members):
        return []
    other, _ = best_set([one for one in fit if one.key not in barred], want, want.surface_cm2)
    if other is None:
        return ["no set for the nitrogen is left"]
    return [f"the set becomes {law.joined([one.judged.plant.name for one in other.members])}"]
