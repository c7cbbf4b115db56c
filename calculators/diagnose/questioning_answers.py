"""A diagnosis as the page at the tank shows it: plain texts and addresses, ready to paint."""

from collections.abc import Mapping
from typing import Any

from calculators.diagnose.follow_up import filled, when
from calculators.diagnose.problem_table import CAUSES, FINDINGS, question_of
from calculators.diagnose.water_step import Water, safe_action
from calculators.diagnose.words import upper

MOST_SHOWN = 5
SURE = (  # from this percentage on, in words
    (80.0, "very likely"),
    (50.0, "likely"),
    (25.0, "quite possible"),
    (10.0, "possible"),
    (0.0, "less likely"),
)
URGENCY = {
    "now": "act now",
    "this-week": "this week",
    "this-month": "this month",
    "watch": "watch",
}


def words_for(percent: float) -> str:
    """How sure a probability is, in words."""
    return next(words for least, words in SURE if percent >= least)


def shown_percent(percent: float) -> str:
    """A probability in whole percent."""
    return f"{round(percent)} %" if percent >= 1 else "under 1 %"


def paint_cause(one: Mapping[str, Any], inputs: Mapping[str, Any], water: Water) -> dict[str, Any]:
    """One cause with its reasons, what to do, and what to expect."""
    cause = CAUSES[one["problem"]]
    calculators = filled(one["problem"], inputs)
    return {
        "problem": one["problem"],
        "name": one["name"],
        "percent": shown_percent(one["probability_percent"]),
        "sure": words_for(one["probability_percent"]),
        "share": round(one["probability_percent"]),
        "urgency": one["urgency"],
        "urgency_words": URGENCY[one["urgency"]],
        "because": one["because"],
        "against": one["against"],
        "first_action": safe_action(one["problem"], water),
        "this_week": list(cause.this_week),
        "expect": [
            f"{when(day['from_day'], day['to_day'])}: {day['text']}" for day in cause.expect
        ],
        "if_not": cause.ask,
        "calculators": [
            {"name": made.calculator, "inputs": made.inputs, "why": given["why"]}
            for made, given in zip(calculators, cause.calculators, strict=True)
        ],
    }


def paint_causes(
    ranked: list[dict[str, Any]], inputs: Mapping[str, Any], water: Water
) -> list[dict[str, Any]]:
    """The leading causes, each with its first step as this water allows it."""
    return [paint_cause(one, inputs, water) for one in ranked[:MOST_SHOWN]]


def paint_answers(inputs: Mapping[str, Any], passed: list[str]) -> list[dict[str, Any]]:
    """What the keeper has said so far: the keys of the answer, yes or no, and the finding in words.

    A reading that was said to be none of its bands is one answer with all their keys.
    """
    said = (("Yes", inputs["findings"]), ("No", inputs["absent"]), ("Not known", passed))
    rows: dict[tuple[str, str], list[str]] = {}
    for word, keys in said:
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
        f"{one['name']}: {words_for(one['probability_percent'])}, "
        f"{shown_percent(one['probability_percent'])}"
        for one in ranked[:2]
    ]
    if not outputs["enough"]:
        causes.insert(0, "Not enough to tell.")
    return [*causes, f"First: {outputs['first_action']}"]
