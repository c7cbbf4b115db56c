"""The diagnosis at the tank, a question at a time: what the page asks of Python beside the answer."""

from collections.abc import Mapping
from typing import Any

from calculators.core.declare import Spec
from calculators.core.fields import InputField
from calculators.core.shown_units import System
from calculators.diagnose.case import figures_of
from calculators.diagnose.case_read import Case, NewWater, read_case
from calculators.diagnose.cause_posterior import posterior
from calculators.diagnose.problem_table import CAUSES, FINDINGS, PLANTS, WHERE
from calculators.diagnose.questioning_answers import (
    paint_answers,
    paint_causes,
    paint_lines,
)
from calculators.diagnose.questions import next_question, question
from calculators.diagnose.ranking import explaining_first
from calculators.diagnose.triage import IN_DANGER, NOT_ENOUGH, SEE_TO_IT_FIRST, complained_of
from calculators.diagnose.water_step import water_of
from calculators.science.evidence.weighing import shown_percent

MOST_TAPS = 6
UNSURE = {  # what the calculator says where too little is known, and what the page says in its place
    NOT_ENOUGH: "Not enough to tell yet. Change nothing on the strength of this list; answer on, or look "
    "again in a few days.",
    SEE_TO_IT_FIRST: SEE_TO_IT_FIRST,
}
PLAIN = 85.0  # percent: from here on asking further would hardly change the answer
CHECK_THE_ANIMALS = (
    "You have not said how the animals are. Look at them now: how they breathe, and whether "
    "they eat."
)


def diagnosis_and_question(
    spec: Spec, answer: Mapping[str, Any], asked: Mapping[str, Any], system: System
) -> dict[str, Any]:
    """The painted diagnosis, and the next question.

    ``answer`` is what ``run`` made of the keeper's inputs. ``asked`` holds ``place`` (where the
    keeper stands), ``asked`` (the keys answered so far, in order) and ``on`` (ask beyond six taps).
    """
    inputs, outputs = answer["inputs"], answer["outputs"]
    taps = answers_tapped(asked)
    answered = {*(inputs["findings"] or ()), *(inputs["absent"] or ())}
    passed = [key for key in taps if key in FINDINGS and key not in answered]
    case, chances = read(inputs)
    where = str(asked.get("place"))
    question = next_question(case, complained_of(case, chances, where), where, frozenset(passed))
    done = question is None or (is_settled(outputs, len(taps)) and not asked.get("on"))
    first = outputs["first_action_for"]
    causes = [cause._asdict() for cause in explaining_first(case, chances, inputs["plant"])]
    return {
        "urgent": outputs["urgent"],
        "enough": outputs["enough"],
        "unsure": next(
            (UNSURE[note["text"]] for note in answer["notes"] if note["text"] in UNSURE), ""
        ),
        "first_action": outputs["first_action"],
        "first_for": first and {"problem": first, "name": CAUSES[first].name},
        "findings": inputs["findings"] or [],
        "absent": inputs["absent"] or [],
        "plant_key": inputs["plant"] or "",
        "asked": taps,
        "taps": len(taps),
        "most_taps": MOST_TAPS,
        "done": done,
        "ask": question and paint_question(question, spec, system),
        "causes": paint_causes(causes, inputs, water_of(case)),
        "something_else": shown_percent(outputs["something_else_percent"]),
        "answers": paint_answers(inputs, passed),
        "notes": [*animals_note(case, outputs), *further_notes(answer["notes"])],
        "lines": paint_lines(causes, outputs),
        "plant": PLANTS[inputs["plant"]].name if inputs["plant"] else "",
    }


def answers_tapped(asked: Mapping[str, Any]) -> list[str]:
    """The answers given so far: findings, and places of which nothing fitted."""
    return [
        key
        for key in asked.get("asked", ())
        if isinstance(key, str) and (key in FINDINGS or key in WHERE)
    ]


def read(inputs: Mapping[str, Any]) -> tuple[Case, dict[str, float]]:
    """The case, and the chance of each cause."""
    figures = figures_of(
        inputs["plant"], inputs["readings"] or {}, inputs["light_hours"], inputs["feed_g_week"],
        inputs["volume_l"], inputs["cover_percent"], inputs["days_since_planting"],
        inputs["tank_age_days"],
    )  # fmt: skip
    tap = NewWater(*(inputs[key] for key in NewWater._fields))
    case = read_case(inputs["findings"] or (), inputs["absent"] or (), figures, tap)
    return case, posterior(case, PLANTS[inputs["plant"]].troubles if inputs["plant"] else ())


def is_settled(outputs: Mapping[str, Any], taps: int) -> bool:
    """Whether to stop asking: after six answers, or once one cause is plain.

    Here ``taps`` is how many answers were given.
    """
    plain = outputs["enough"] and outputs["ranked"][0]["probability_percent"] >= PLAIN
    return taps >= MOST_TAPS or bool(plain)


def paint_question(finding: str, spec: Spec, system: System) -> dict[str, Any]:
    """A question as plain data."""
    made = question(finding, fields_of(spec), system)
    return {
        "finding": made.finding,
        "words": made.words,
        "chips": [
            {"words": chip.words, "present": list(chip.present), "absent": list(chip.absent)}
            for chip in made.chips
        ],
    }


def fields_of(spec: Spec) -> dict[str, InputField]:
    """The calculator's fields by dotted key."""
    fields = {field.key: field for field in spec.inputs}
    for field in spec.inputs:
        fields |= {f"{field.key}.{part.key}": part for part in field.row}
    return fields


def further_notes(notes: list[dict[str, str]]) -> list[dict[str, str]]:
    """Notes but those that the page says in a place of their own."""
    return [note for note in notes if note["text"] not in (IN_DANGER, *UNSURE)]


def animals_note(case: Case, outputs: Mapping[str, Any]) -> list[dict[str, str]]:
    """A reminder, where no answer is about the animals."""
    answered = {key for answer in case.answers.values() for key in (answer.present, *answer.absent)}
    about = {key for key, finding in FINDINGS.items() if finding.where == "animals"}
    if outputs["urgent"] or not about.isdisjoint(answered):
        return []
    return [{"level": "info", "text": CHECK_THE_ANIMALS}]
