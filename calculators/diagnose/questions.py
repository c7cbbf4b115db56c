"""The next question for someone at the tank, with the answers to tap."""

from typing import NamedTuple

from calculators.core.fields import InputField
from calculators.core.numbers import show_number
from calculators.core.shown_units import System, to_shown, unit_shown
from calculators.core.wording import upper
from calculators.diagnose.case_read import Case
from calculators.diagnose.next_check import Viewpoint, best_check, check_of_animals
from calculators.diagnose.problem_table import (
    FINDINGS,
    QUESTIONS,
    FindingEntry,
    covers_all,
    question_of,
)

# Questions with more answers than yes and no, by the input that they are about.
ASKED = {
    "readings.nitrate_mg_l": "What does the nitrate test read?",
    "readings.phosphate_mg_l": "What does the phosphate test read?",
    "readings.ammonia_mg_n_l": "What does the ammonia test read, as nitrogen?",
    "readings.nitrite_mg_n_l": "What does the nitrite test read, as nitrogen?",
    "readings.ph": "What is the pH?",
    "readings.temperature_c": "How warm is the water?",
    "readings.gh_dh": "What is the general hardness (GH)?",
    "readings.kh_dh": "What is the carbonate hardness (KH)?",
    "readings.oxygen_mg_l": "How much oxygen is there at its lowest?",
    "light_hours": "For how many hours a day is the light on?",
    "feed_g_week_100_l": "How much dry food goes in each week, for 100 L of water?",
    "cover_percent": "How much of the surface do floating plants cover?",
    "days_since_planting": "How long ago was this plant planted or moved?",
    "tank_age_days": "How old is the tank, since its soil was flooded?",
    "plant.habit": "What kind of plant is it?",
}
NONE_OF_THESE, UNKNOWN = "None of these", "Don’t know"
DAYS = {"days_since_planting", "tank_age_days"}  # their labels say weeks and months


class Chip(NamedTuple):
    """One answer to tap: its words, and the findings that it makes present and absent."""

    words: str
    present: tuple[str, ...] = ()
    absent: tuple[str, ...] = ()


class Question(NamedTuple):
    """One question: the finding it is about, its words, and the answers."""

    finding: str
    words: str
    chips: tuple[Chip, ...]


def next_question(
    case: Case, chances: dict[str, float], where: str, passed: frozenset[str]
) -> str | None:
    """The finding to ask about next; ``passed`` are findings that the keeper could not tell.

    Where animals may be in danger, one question about them goes before all others. As long as nothing is
    known of the place, questions stay there.
    """
    looking = Viewpoint(where, frozenset(question_of(key) for key in passed if key in FINDINGS))
    first = check_of_animals(case, chances, looking.passed)
    if first:
        return first.finding
    answered = {key for answer in case.answers.values() for key in (answer.present, *answer.absent)}
    if not any(key and FINDINGS[key].where == where for key in answered):
        check = best_check(case, chances, looking._replace(stays=True))
        if check:
            return check.finding
    check = best_check(case, chances, looking)
    return check.finding if check else None


def question(finding: str, fields: dict[str, InputField], system: System = "metric") -> Question:
    """A question in words with its answers; ``fields`` are the diagnosis's own, by dotted key."""
    name = question_of(finding)
    answers = tuple(QUESTIONS[name])
    if len(answers) == 1:
        yes_no = (Chip("Yes", present=answers), Chip("No", absent=answers), Chip(UNKNOWN))
        return Question(finding, FINDINGS[finding].question, yes_no)
    ordered = sorted(answers, key=lambda key: lower_edge(FINDINGS[key]))
    chips = [
        Chip(band_words(FINDINGS[key], fields.get(name), system), present=(key,)) for key in ordered
    ]
    if not covers_all([FINDINGS[key] for key in answers]):
        chips.append(Chip(NONE_OF_THESE, absent=answers))
    return Question(finding, ASKED[name], (*chips, Chip(UNKNOWN)))


def lower_edge(finding: FindingEntry) -> float:
    """The figure above which a finding holds, in its reading's metric unit; minus infinity where it is open.

    It puts bands in order.
    """
    return float("-inf") if finding.above is None else finding.above


def band_words(finding: FindingEntry, field: InputField | None, system: System) -> str:
    """A band as figures with their unit, or its label where figures would not be plainer."""
    if finding.equals is not None or field is None or field.key in DAYS:
        return upper(finding.label)
    low, high = (
        None if edge is None else show_number(to_shown(field, edge, system), 4)
        for edge in (finding.above, finding.up_to)
    )
    unit = f" {unit_shown(field, system)}".rstrip()
    if low is None:
        return f"{high}{unit} or less"
    return f"over {low}{unit}" if high is None else f"{low} to {high}{unit}"
