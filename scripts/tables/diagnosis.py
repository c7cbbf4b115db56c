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
        "besides": problem.besides.text if problem.besides else None,
        "this_week": [one.text for one in problem.this_week],
        "expect": [
            {"text": one.text, "from_day": one.by_days.low, "to_day": one.by_days.high}
            for one in problem.expect
        ],
        "ask": problem.stop_and_ask.text,
        "calculators": [one.model_dump() for one in problem.calculators],
        "rows": {one.finding: [one.strength, one.hallmark, one.why] for one in problem.evidence},
    }


def plant_entry(plant: Plant) -> dict[str, Any]:
    """One plant: what of its record is evidence, and the problems it names."""
    return {
        "name": plant.name,
        "habit": plant.habit,
        "genus": plant.name.split()[0],
        "nitrogen_role": plant.nitrogen.role.value,
        "bought_as": plant.care.bought_as.value,
        "troubles": sorted({one.problem for one in plant.troubles if one.problem}),
    }


def table(library: Library) -> dict[str, Any]:
    """The places where one looks, the findings in the order of their file, and problems and plants by key."""
    return {
        "where": {key: word["label"] for key, word in library.vocabulary["looks"].items()},
        "findings": {key: finding_entry(sign) for key, sign in library.findings.items()},
        "causes": {key: cause_entry(one) for key, one in sorted(library.problems.items())},
        "plants": {key: plant_entry(one) for key, one in sorted(library.plants.items())},
    }
