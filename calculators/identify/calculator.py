"""Which plant it is, from what is seen."""

from typing import Annotated

from calculators.core.declare import calculator
from calculators.core.leads import Lead
from calculators.core.quantities import Count
from calculators.core.quantity import Help, Keys, Label, Possible
from calculators.core.result import Note
from calculators.identify.identified_rows import cannot_be_told, next_trait, ranked_row
from calculators.identify.label import read_label
from calculators.identify.law_words import LISTS_CHANGE, law_note, likely_listed
from calculators.identify.next_look import rivals
from calculators.identify.outputs import Identification
from calculators.identify.plant_posterior import given_traits, in_order, plant_chances
from calculators.identify.seen import SeenTraits
from calculators.identify.side import MOST_BESIDE, differing, told_apart
from calculators.identify.trait_words import TRAITS
from calculators.identify.words import WHAT_IS_SHARED, label_notes, verdict
from calculators.science.evidence.weighing import SOMETHING_ELSE
from calculators.science.rounding import RESULT_DIGITS
from calculators.science.shelf.shelf_tank import PLACE_WORDS, Place

ENOUGH = 0.7  # from this chance on the first plant is called enough; judgement
MOST_LISTED = 5
EXAMPLE = SeenTraits(
    form="stem", arrangement="opposite", shape="narrow-lanceolate", length_mm=14.0, width_mm=3.0
)
TRAIT_KEYS = Keys(tuple(TRAITS), tuple(words.label for words in TRAITS.values()))


@calculator(
    "What have I got?",
    sources=("gleason-cronquist-1991", "foc-19-hygrophila", "fna-10-ludwigia-repens"),
    tables=("plants", "identify"),
    leads_to=(
        Lead("diagnose", "Something looks wrong with it", {"plant": "best"}, needs=("best",)),
    ),
)
def identify(
    traits: Annotated[SeenTraits | None, Label("What you see")] = EXAMPLE,
    label: Annotated[
        str | None,
        Label("The name on its label"),
        Help("Any words of it; empty where there is none."),
    ] = None,
    place: Annotated[
        Place | None, Label("Where you live"), PLACE_WORDS, Help("For the law.")
    ] = None,
    count: Annotated[
        Count | None, Label("How many plants to list"), Possible(1, 20), Help("Empty: five.")
    ] = None,
    unseen: Annotated[
        list[str] | None, Label("What cannot be seen"), TRAIT_KEYS, Help("It is not asked again.")
    ] = None,
) -> Identification:
    """Name a plant from what is seen of it: a ranking, what speaks for and against, what to look at next.

    Bayes' rule over the traits of the book's records, from which its drawings are made too. Before
    anything is seen, each plant of the book is as likely as any other, and one in ten is a plant that is
    not in it. A trait that was seen counts p / b: p is its probability if it is that plant, b the mean of
    p over the records. Where a record is silent, the trait says nothing.

    A word may be misread: a shape in 3 of 10 leaves, the form or how the leaves stand in 12 of 100, a
    colour in half of the tanks, and then for its neighbours rather than for something unlike. A size is
    read with an error of a quarter, by factors, about a true size that lies evenly in the record's range,
    so that 14 mm is no proof against 10 to 12 mm. A leaf may be young, with at least a quarter of the
    grown length; it may have grown in the air where the record speaks of leaves under water, and then a
    record's word counts half; and one reading in twenty has nothing to do with the record.

    Traits are not independent: the strongest for a plant counts in full, each further one with the power
    of 0.8. A label's scientific name makes its plant 20 times likelier, a trade name 8 times, a name
    that is used for several plants 5 times at most. No share reaches 0 or 100: at least 5 % stay with a
    plant that is not in the book. All these figures are our judgement: take the shares as an order.

    The next trait is the one whose answer is expected to tell most (mutual information), less for what is
    hard to see. Where a listed plant of your place, or of any place where none is chosen, has a share of
    5 % or more, or the label may mean it and nothing seen speaks against it, or a likely plant is taken
    for a listed one that has no page here, the first line says so. It is not called enough before a
    listed plant is out, or is itself the first.
    """
    seen, says = traits or SeenTraits(), read_label(label)
    chances = plant_chances(seen, says)
    order = in_order(chances)
    leading = rivals(chances, MOST_BESIDE)
    anything = bool(given_traits(seen) or says.worth)
    listed = likely_listed(chances, place, says.worth) if anything else []
    enough = chances[order[0]] > ENOUGH and set(listed) <= {order[0]}
    beside = (leading if len(leading) > 1 else order[:2]) if anything else []
    look = next_trait(seen, chances, leading, frozenset(unseen or ()))
    cannot = look is None and len(leading) > 1
    return Identification(
        best=order[0] if anything else None,
        ranked=[
            ranked_row(key, seen, says, chances, place) for key in order[: count or MOST_LISTED]
        ],
        ask_next=look,
        enough=enough,
        not_in_book_percent=round(100 * chances[SOMETHING_ELSE], RESULT_DIGITS),
        side_by_side=differing(beside),
        told_apart=told_apart(beside),
        notes=(
            *(law_note(chances, place, says) if anything or says.listed else []),
            verdict(chances, order, enough=enough, anything=anything),
            *label_notes(label, says),
            *([Note("info", cannot_be_told(leading))] if cannot else []),
            Note("info", WHAT_IS_SHARED),
            Note("info", LISTS_CHANGE),
        ),
    )
