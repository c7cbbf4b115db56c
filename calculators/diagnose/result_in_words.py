"""The answer of the form in a keeper's words: causes by name, days as sentences, links to pages."""

from collections.abc import Mapping
from typing import Any

from calculators.core.in_words import RowInWords
from calculators.core.result import Link
from calculators.core.wording import upper
from calculators.diagnose.follow_up import handed_on, when
from calculators.diagnose.problem_table import CAUSES
from calculators.science.evidence.weighing import shown_percent, words_for

Values = Mapping[str, Any]


def chance_in_words(percent: float) -> str:
    """How sure a cause is: in words, then in whole percent."""
    return f"{words_for(percent)}, {shown_percent(percent)}"


def danger_in_words(inputs: Values, outputs: Values) -> list[RowInWords]:
    """Whether animals may be in danger; never a plain no, which nobody can know who has not tested."""
    if outputs["urgent"]:
        return [RowInWords("yes")]
    readings = inputs.get("readings") or {}
    tested = all(readings.get(key) is not None for key in ("ammonia_mg_n_l", "nitrite_mg_n_l"))
    untested = "" if tested else "; ammonia and nitrite were not both tested"
    return [RowInWords(f"nothing that was said shows it{untested}")]


def something_else(_inputs: Values, outputs: Values) -> list[RowInWords]:
    """How likely it is that no record of the book is right."""
    return [RowInWords(chance_in_words(outputs["something_else_percent"]))]


def first_step_in_words(_inputs: Values, outputs: Values) -> list[RowInWords]:
    """What to do first, as wide as the answer: in a column of the table it would be a thread of words."""
    return [RowInWords(outputs["first_action"])]


def problem_of_first_step(_inputs: Values, outputs: Values) -> list[RowInWords]:
    """The problem that the first step is for, by its name and with its page; none where it is for none."""
    problem = outputs["first_action_for"]
    if problem is None:
        return []
    name = CAUSES[problem].name
    return [RowInWords(name, link=Link(name, f"problems/{problem}/"))]


def check_in_words(_inputs: Values, outputs: Values) -> list[RowInWords]:
    """The question to answer next, and why; none where no question would tell enough."""
    check = outputs["next_check"]
    return [RowInWords(check["question"], check["why"])] if check else []


def days_in_words(_inputs: Values, outputs: Values) -> list[RowInWords]:
    """What to expect, below the days or weeks in which it comes."""
    return [
        RowInWords(when(day["from_day"], day["to_day"]), day["text"]) for day in outputs["expect"]
    ]


def otherwise(_inputs: Values, outputs: Values) -> list[RowInWords]:
    """What to do where the change that was expected does not come."""
    return [RowInWords(outputs["if_not"])] if outputs["if_not"] else []


def calculators_in_words(inputs: Values, outputs: Values) -> list[RowInWords]:
    """The calculators that help, each with why, and a link that hands on the keeper's own figures."""
    if not outputs["calculators"]:
        return []
    problem = outputs["first_action_for"]
    return [
        calculator_in_words(record, given)
        for record, given in zip(
            CAUSES[problem].calculators, handed_on(problem, inputs), strict=True
        )
    ]


def calculator_in_words(record: Values, given: dict[str, Any]) -> RowInWords:
    """One calculator of a problem's record, with what its link fills in, by its keys."""
    title = upper(record["calculator"].replace("-", " "))
    link = Link(title, f"calculators/{record['calculator']}/", given)
    return RowInWords(title, record["why"], link)
