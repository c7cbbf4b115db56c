"""Writes calculators/data/diagnosis.json: ``python -m scripts.records.export_diagnosis``.

The calculators ship without YAML and pydantic; this is the part of findings, problems and plants
that the diagnosis needs.
"""

import json
from pathlib import Path
from typing import Any

from scripts.records.finding import Finding
from scripts.records.load import BadRecords, Reader
from scripts.records.plant import Plant
from scripts.records.problem import Problem
from scripts.setup.paths import ROOT

TABLE = ROOT / "calculators" / "data" / "diagnosis.json"


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
        "kin": problem.kin,
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


def table_text(folder: Path = ROOT / "species") -> str:
    """The table as text: one record a line, so that a change shows as a line.

    Reads the records alone, without the checks that run the calculators, so that a broken table
    can always be made anew. Raises ``BadRecords``.
    """
    reader = Reader(folder)
    findings = reader.entries("findings.yml", Finding)
    problems = reader.folder("problems", Problem)
    plants = reader.folder("plants", Plant)
    words = reader.vocabulary()["looks"]
    if reader.findings:
        raise BadRecords(reader.findings)
    parts: dict[str, dict[str, Any]] = {
        "where": {key: word["label"] for key, word in words.items()},
        "findings": {key: finding_entry(one) for key, one in findings.items()},
        "causes": {key: cause_entry(one) for key, one in sorted(problems.items())},
        "plants": {key: plant_entry(one) for key, one in sorted(plants.items())},
    }
    blocks = []
    for name, entries in parts.items():
        lines = [
            f'"{key}": {json.dumps(entry, ensure_ascii=False)}' for key, entry in entries.items()
        ]
        blocks.append(f'"{name}": {{\n' + ",\n".join(lines) + "\n}")
    return "{\n" + ",\n".join(blocks) + "\n}\n"


def main(table: Path = TABLE) -> None:
    """Write the table and say how much is in it."""
    text = table_text()
    table.write_text(text, encoding="utf-8")
    made = json.loads(text)
    sizes = ", ".join(f"{len(made[part])} {part}" for part in ("findings", "causes", "plants"))
    print(f"{table.name}: {sizes}")


if __name__ == "__main__":
    main()
