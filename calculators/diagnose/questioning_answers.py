"""A diagnosis as the page at the tank shows it: plain texts and addresses, ready to paint."""

from collections.abc import Mapping
from typing import Any

from calculators.core.wording import upper
from calculators.diagnose.follow_up import handed_on, when
from calculators.diagnose.problem_table import CAUSES, FINDINGS, question_of
from calculators.diagnose.water_step import safe_action
from calculators.science.evidence.weighing import shown_percent, words_for
from calculators.science.water.careful_change import WaterForChange

MOST_SHOWN = 5
URGENCY = {
    "now": "act now",
    "this-week": "act this week",
    "this-month": "act this month",
    "watch": "watch",
}


def paint_cause(
    ranked_cause: Mapping[str, Any], inputs: Mapping[str, Any], water: WaterForChange
) -> dict[str, Any]:
    """One cause with its reasons, what to do, and what to expect."""
    cause = CAUSES[ranked_cause["problem"]]
    given = handed_on(ranked_cause["problem"], inputs)
    return {
        "problem": ranked_cause["problem"],
        "name": ranked_cause["name"],
        "percent": shown_percent(ranked_cause["probability_percent"]),
        "sure": words_for(ranked_cause["probability_percent"]),
        "share": round(ranked_cause["probability_percent"]),
        "urgency": ranked_cause["urgency"],
        "urgency_words": URGENCY[ranked_cause["urgency"]],
        "because": ranked_cause["because"],
        "against": ranked_cause["against"],
        "first_action": safe_action(ranked_cause["problem"], water),
        "this_week": list(cause.this_week),
        "expect": [
            f"{when(day['from_day'], day['to_day'])}: {day['text']}" for day in cause.expect
        ],
        "if_not": cause.ask,
        "calculators": [
            {"name": record["calculator"], "inputs": filled_in, "why": record["why"]}
            for record, filled_in in zip(cause.calculators, given, strict=True)
        ],
    }


def paint_causes(
    ranked: list[dict[str, Any]], inputs: Mapping[str, Any], water: WaterForChange
) -> list[dict[str, Any]]:
    """The leading causes, each with its first step as this water allows it."""
    return [paint_cause(cause, inputs, water) for cause in ranked[:MOST_SHOWN]]


def paint_answers(inputs: Mapping[str, Any], passed: list[str]) -> list[dict[str, Any]]:
    """What the keeper has said so far: the keys of the answer, yes or no, and the finding in words.

    A reading that was said to be none of its bands is one answer with all their keys.
    """
    groups = (("Yes", inputs["findings"]), ("No", inputs["absent"]), ("Not known", passed))
    rows: dict[tuple[str, str], list[str]] = {}
    for word, keys in groups:
        for key in keys or ():
            rows.setdefault((word, question_of(key)), []).append(key)
    return [
        {
            "keys": keys,
            "answer": word,
            "words": " / ".join(upper(FINDINGS[key].label) for key in keys),
        }
        for (word, _), keys in rows.items()
    ]


def paint_lines(ranked: list[dict[str, Any]], outputs: Mapping[str, Any]) -> list[str]:
    """A few lines to keep by: the leading causes, and the first step."""
    causes = [
        f"{cause['name']}: {words_for(cause['probability_percent'])}, "
        f"{shown_percent(cause['probability_percent'])}"
        for cause in ranked[:2]
    ]
    if not outputs["enough"]:
        causes.insert(0, "Not enough to tell.")
    return [*causes, f"First: {outputs['first_action']}"]
