"""What a forecast says in words: animals before leaves, the verdict first."""

from collections.abc import Sequence

from calculators.core.numbers import show_number as show
from calculators.core.result import Note
from calculators.core.wording import CHANGE_WITH_CARE, CUTTINGS
from calculators.nitrogen_forecast.animal_words import animals
from calculators.nitrogen_forecast.course_words import course_note
from calculators.nitrogen_forecast.run_harm import HarmfulReading
from calculators.science.light.lamps import CLOSED_COVER_PERCENT
from calculators.science.nitrogen.balance_words import FEED_IN_STEPS
from calculators.science.nitrogen.constants import KH_GROWTH_FULL_DH
from calculators.science.nitrogen.course import Course
from calculators.science.nitrogen.forecast_tank import Event, Tank
from calculators.science.nitrogen.simulate import Outcome

NO_MORE_YET = Note(
    "caution",
    "Animals before leaves: neither feed nor dose more for the plants while what stands above harms "
    "animals. Brown leaves can wait.",
)
UNSURE = Note(
    "info",
    "A forecast from guesses: growth and rot are right within a factor of two at best. Choose low, "
    "middle and high to see how unsure it is, test once a week, and correct the doubling times until "
    "the curve meets your readings.",
)


def notes(
    outcome: Outcome,
    harms: Sequence[HarmfulReading],
    course: Course,
    tank: Tank,
    events: Sequence[Event],
    days: float,
    calm: float | None,
) -> list[Note]:
    """All that is to be said about one run; what harms animals stands before the course.

    Ammonia and nitrite are ``calm`` from that day on, None where not before the end.
    """
    collected = [note._replace(first=True) for note in animals(harms, tank, events, calm)]
    unread = unread_hardness(outcome, tank.kh_dh)
    verdict = [course_note(outcome, course, days, harmless=not harms)._replace(first=True)]
    collected += [*unread, *verdict] if harms else [*verdict, *unread]
    spells = outcome.record.hunger.spells
    if spells and spells[-1].end is None:
        collected.append(NO_MORE_YET if any(harm.is_danger for harm in harms) else FEED_IN_STEPS)
    collected += water(outcome, tank)
    return [*collected, UNSURE, CHANGE_WITH_CARE, CUTTINGS]


def water(outcome: Outcome, tank: Tank) -> list[Note]:
    """Hardness and shade worth a word."""
    notes = hardness(outcome, tank.kh_dh)
    if outcome.last.floating_cover > CLOSED_COVER_PERCENT:
        notes.append(
            Note(
                "caution",
                "The floaters close the surface: plants below starve for light and the water for "
                "air. Thin them each week.",
            )
        )
    return notes


def unread_hardness(outcome: Outcome, kh_dh: float | None) -> list[Note]:
    """That hardness which nobody gave (None, °dH) may run out."""
    used = hardness_used(outcome)
    if kh_dh is not None or used <= 1:
        return []
    text = (
        f"Carbonate hardness was not given, and the filter uses up about {show(used, 2)} °dH of it. "
        "Water that has little more than that runs out: the filter stops, pH drops, and ammonia rises "
        "where this forecast shows none. Test KH and enter it."
    )
    return [Note("caution", text, first=True)]


def hardness_used(outcome: Outcome) -> float:
    """How far carbonate hardness falls against the start at its lowest, °dH."""
    return -min(line.kh_drift for line in outcome.record.lines)


def hardness(outcome: Outcome, kh_dh: float | None) -> list[Note]:
    """Known hardness, °dH, that is used up; where it gets low, ``doubts.soft`` says more."""
    used = hardness_used(outcome)
    if (
        kh_dh is None
        or used <= 1
        or min(line.kh for line in outcome.record.lines) < KH_GROWTH_FULL_DH
    ):
        return []
    text = (
        f"Carbonate hardness falls by about {show(used, 2)} °dH against the start. In soft water pH can "
        "drop with it: test KH each month."
    )
    return [Note("caution", text)]
