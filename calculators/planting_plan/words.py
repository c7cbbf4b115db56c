"""What the planting plan says beside its figures."""

from calculators.core.numbers import show_number
from calculators.core.result import Link, Note
from calculators.core.wording import CUTTINGS, counted

SPARSE_PERCENT = 25  # common practice, no source: a bare new tank leaves the nutrients to algae
OFTEN_DAYS = 7  # common practice, no source: few keepers trim one bed weekly for long
HARD_CUT_PERCENT = 60  # common practice, no source
WEEKS_APART = 2  # the weeks are right within this factor, as the calculator's own text says
WITH_ANIMALS = Note(
    "caution",
    "Where animals live in the tank: what was bought waits three to four weeks in a jar of its own, since "
    "insect poison on it kills shrimp. Push each stem through the cap without stirring the soil, a part of "
    "them a day where they are many, and test ammonia on the day after: stirred soil and melting leaves "
    "give it off. If it shows, ask how to change before you change water.",
    links=(
        Link("Moving plants between tanks", "guides/moving-plants/"),
        Link("How to change water when ammonia shows", "calculators/ammonia-change/"),
    ),
)


def until_full(weeks: float) -> str:
    """When a bed is full, in whole weeks with both ends: the weeks are known no finer."""
    if weeks <= 0:
        return "at once"
    if weeks < 1:
        return "within a week or two"
    low, high = (show_number(max(1, round(weeks * by)), 2) for by in (1 / WEEKS_APART, WEEKS_APART))
    return f"in about {show_number(round(weeks), 2)} weeks, {low} to {high}"


def verdict(stems: int, weeks: float, every_days: float) -> Note:
    """The answer in plain words; the weeks are right within a factor of two, so both ends are said."""
    full = f"is full {until_full(weeks)}"
    trim = f"then trim it every {show_number(every_days, 2)} days"
    if every_days < 1:
        trim = "then it would want a trim more than once a day, which no bed does: look at the doubling time"
    return Note("info", f"Plant {counted(stems, 'stem')}: the bed {full}; {trim}.", True)


def more_stems(planted: int, full: int, days_saved: float) -> list[Note]:
    """What planting twice as many would save, or a full bed where that is fewer than twice.

    Both ``planted`` and ``full`` are numbers of stems.
    """
    if planted >= full:
        return []
    more = "Twice as many" if 2 * planted <= full else "A full bed at once"
    text = (
        f"{more}, {counted(min(full, 2 * planted), 'stem')}, "
        f"would save about {show_number(days_saved, 2)} days. "
        "Tops cut from a few stems of your own cost only time."
    )
    return [Note("info", text)]


def notes(start_percent: float, every_days: float, cut_percent: float) -> list[Note]:
    """What the rhythm costs, and what the law has to do with it."""
    collected = []
    if start_percent < SPARSE_PERCENT:
        text = (
            "So sparse a start leaves light and nutrients to algae, and new soil gives ammonia: fill the "
            "gaps with fast stems or floaters that the law allows until the bed closes, and test ammonia "
            "before any animal."
        )
        collected.append(Note("caution", text))
    if 1 <= every_days < OFTEN_DAYS:
        text = (
            f"Every {show_number(every_days, 2)} days is a trim a week or more. A slower plant, or a "
            "smaller bed of this one, saves the time."
        )
        collected.append(Note("caution", text))
    if cut_percent > HARD_CUT_PERCENT:
        text = (
            "A hard trim takes away what takes up nitrogen: do it in two rounds a week apart where "
            "there are animals, and test ammonia after it."
        )
        collected.append(Note("caution", text))
    law = "Before you buy, look at the plant's page: some stems may not be kept or passed on where you live."
    return [*collected, WITH_ANIMALS, Note("caution", law), CUTTINGS]
