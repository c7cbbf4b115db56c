"""What the keeper must know beside the figures of a stock of animals."""

from collections.abc import Sequence

from calculators.core.numbers import show_number
from calculators.core.result import Link, Note
from calculators.core.wording import PLACES, joined
from calculators.science.animals.animal_table import ANIMALS, shown_name
from calculators.science.animals.animal_warmth import warmth_notes
from calculators.science.animals.burden import Burdens
from calculators.science.animals.burden_words import burden_notes
from calculators.science.animals.own_water import own_water
from calculators.science.animals.reading_words import reading_notes
from calculators.science.animals.stock_totals import Stocked
from calculators.science.animals.swimming_room import room_notes

NEW_TANK = Note(
    "caution",
    "In a tank without a ripe filter this ammonia stays ammonia. Add animals a few at a time, feed "
    "little, and test ammonia and nitrite daily for the first weeks.",
)
COPPER = Note(
    "caution",
    "Shrimp, snails, crayfish and clams die of traces of copper. Read the label of each medicine and "
    "plant food, and do not treat the whole tank while they are in it. A vet who treats fish can advise.",
)
SHRIMP_ONLY = Note(
    "info",
    "Shrimp and snails alone feed plants little (common practice): fast plants may run short. "
    "Watch new growth before you feed more than the animals eat.",
)
NOT_A_PERMISSION = Note(
    "info",
    "A load is no permission. Check that the kinds suit each other, the water and the length of the "
    "tank, and never release animals or tank water outdoors.",
)


def notes(
    animals: Sequence[Stocked], loads: Burdens, volume_l: float, temperature_c: float, ph: float
) -> list[Note]:
    """The verdict first, danger before all; then length, law, copper and what goes with any stock.

    The volume is in L. The water's own ``ph`` counts with it, without a unit.
    """
    present = [stocked for stocked in animals if stocked.count_]
    if not present:
        return [
            Note("info", "No animals: nothing to feed, and plants live on soil and dosing alone.")
        ]
    groups = {ANIMALS[stocked.kind].group for stocked in present}
    kinds = list(dict.fromkeys(one.kind for one in present))
    first = [
        *reading_notes(ph=ph),
        *warmth_notes(present, temperature_c),
        *own_water(kinds, ph=ph),
        *burden_notes(loads),
        *room_notes(kinds, volume_l),
        *(note for stocked in present for note in too_many(stocked)),
        *company(kinds),
    ]
    if any(note.level != "info" for note in first):
        first = [
            note for note in first if note.level != "info"
        ]  # no word that calms beside a caution
    collected = sorted(first, key=lambda note: note.level != "danger")
    for stocked in present:
        collected += about(stocked)
    collected += law_notes([stocked.kind for stocked in present])
    if groups - {"fish"}:
        collected.append(COPPER)
    if groups <= {"shrimp", "snail"}:
        collected.append(SHRIMP_ONLY)
    return [*collected, NEW_TANK, NOT_A_PERMISSION]


def about(stocked: Stocked) -> list[Note]:
    """Where one kind is out of its range of length or number."""
    kind, notes_of_kind = ANIMALS[stocked.kind], never_offered(stocked.kind)
    if stocked.mean_length_mm > kind.longest_mm:
        why = (
            f"{shown_name(stocked.kind)} grows to about {show_number(kind.longest_mm)} mm. Measure "
            "again, or it is another kind."
        )
        notes_of_kind.append(Note("caution", why))
    return [*notes_of_kind, *too_few(stocked)]


def company(kinds: Sequence[str]) -> list[Note]:
    """Whom each kind bears beside it, where several are together; one may be another's food."""
    if len(kinds) < 2:
        return []
    return [
        Note("caution", f"{shown_name(kind)}, its company: {ANIMALS[kind].company}")
        for kind in kinds
        if ANIMALS[kind].company
    ]


def never_offered(key: str) -> list[Note]:
    """A word on a kind that the book offers to nobody."""
    if ANIMALS[key].offered:
        return []
    why = (
        f"{shown_name(key)} is never offered by this book. Take none in, pass none on, and never let one "
        "out; its page says what to do with one that you have."
    )
    return [
        Note(
            "caution",
            why,
            links=(Link(f"If you have one: {shown_name(key)}", f"animals/{key}/#found"),),
        )
    ]


def law_notes(kinds: Sequence[str], place: str | None = None) -> list[Note]:
    """A note for each kind on which a law of the place, or of any, was found to bear; once a kind."""
    return [
        Note(
            "caution",
            f"Law: rules of {joined([PLACES[place] for place in ANIMALS[key].law])} bear on "
            f"{shown_name(key)}. Read what they say before you buy, keep, sell or move one; the "
            "authority's word is final.",
            links=(Link(f"{shown_name(key)} and the law", f"animals/{key}/#law"),),
        )
        for key in dict.fromkeys(kinds)
        if (place in ANIMALS[key].law if place in PLACES else ANIMALS[key].law)
    ]


def too_many(stocked: Stocked) -> list[Note]:
    """Where there are more of a kind than bear each other."""
    kind = ANIMALS[stocked.kind]
    if kind.most is None or stocked.count_ <= kind.most:
        return []
    room = "one to a tank" if kind.most == 1 else f"at most {kind.most} together"
    return [Note("caution", f"{shown_name(stocked.kind)}: {room}, as more fight.")]


def too_few(stocked: Stocked) -> list[Note]:
    """Where there are too few of a kind that lives in groups."""
    kind = ANIMALS[stocked.kind]
    if stocked.count_ < kind.least:
        why = f"{shown_name(stocked.kind)} lives in groups: keep {kind.least} or more together."
        return [Note("info", why)]
    return []
