"""The table of the diagnosis: what of findings, problems and plants it needs."""

from typing import Any

from scripts.records.finding import Finding
from scripts.records.load import Library
from scripts.records.plant import Plant
from scripts.records.problem import Problem


def finding_entry(finding: Finding) -> dict[str, Any]:
    """One finding; what is empty is left out."""
    derived = finding.derived_from.model_dump() if finding.derived_from else {}
    fields = {
        "where": finding.where,
        "label": finding.label,
        "question": finding.question,
        "usual": finding.usual,
        "danger": finding.danger,
        **derived,
        "implies": finding.implies,
        "excludes": finding.excludes,
    }
    return {key: value for key, value in fields.items() if value not in (None, False, [])}


def cause_entry(problem: Problem) -> dict[str, Any]:
    """One problem: its prior, its evidence, and what to do and expect."""
    return {
        "name": problem.name,
        "urgency": problem.urgency,
        "prior": problem.prior,
        "shared_root": problem.shared_root,
        "first_action": problem.first_action.text,
        "slowly": problem.slowly,
        "change": problem.change.model_dump() if problem.change else None,
        "besides": problem.besides.text if problem.besides else None,
        "this_week": [step.text for step in problem.this_week],
        "expect": [
            {"text": outlook.text, "from_day": outlook.by_days.low, "to_day": outlook.by_days.high}
            for outlook in problem.expect
        ],
        "ask": problem.stop_and_ask.text,
        "calculators": [filled.model_dump() for filled in problem.calculators],
        "rows": {
            evidence.finding: [evidence.strength, evidence.hallmark, evidence.why]
            for evidence in problem.evidence
        },
    }


def plant_entry(plant: Plant) -> dict[str, Any]:
    """One plant: what of its record is evidence, and the problems it names."""
    assert plant.nitrogen, "a plant that is offered has it"
    assert plant.care, "a plant that is offered has it"
    return {
        "name": plant.name,
        "habit": plant.habit,
        "genus": plant.name.split()[0],
        "nitrogen_role": plant.nitrogen.role.value,
        "bought_as": plant.care.bought_as.value,
        "troubles": sorted({trouble.problem for trouble in plant.troubles if trouble.problem}),
    }


def table(library: Library) -> dict[str, Any]:
    """The places where one looks, the findings in the order of their file, and problems and plants by key."""
    return {
        "where": {key: word["label"] for key, word in library.vocabulary["looks"].items()},
        "findings": {key: finding_entry(sign) for key, sign in library.findings.items()},
        "causes": {key: cause_entry(problem) for key, problem in sorted(library.problems.items())},
        "plants": {key: plant_entry(plant) for key, plant in sorted(library.offered().items())},
    }
