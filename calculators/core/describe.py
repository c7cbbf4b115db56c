"""The machine-readable description of a calculator, for ``--describe`` and the site's JSON."""

from typing import Any

from calculators.core.declare import Spec
from calculators.core.fields import InputField


def describe(spec: Spec) -> dict[str, Any]:
    """Name, title, purpose, inputs, outputs, sources and whatever the calculator adds, as plain data."""
    return {
        "name": spec.name,
        "title": spec.title,
        "purpose": spec.purpose,
        "inputs": [describe_input(field) for field in spec.inputs],
        "outputs": [
            {"key": field.key, "label": field.label, "unit": field.unit, "help": field.help}
            for field in spec.outputs
        ],
        "sources": list(spec.sources),
        **(spec.describe_more() if spec.describe_more else {}),
    }


def describe_input(field: InputField) -> dict[str, Any]:
    """One input; a list describes the inputs of one row as well, an object its parts, as ``row``."""
    described = {
        "key": field.key,
        "label": field.label,
        "unit": field.unit,
        "type": field.kind,
        "minimum": field.low,
        "maximum": field.high,
        "default": field.default,
        "choices": list(field.choices),
        "help": field.help,
        "nullable": field.nullable,
    }
    if field.possible_by:
        described["ranges"] = field.possible_by._asdict()
    if field.row:
        described["row"] = [describe_input(part) for part in field.row]
    return described
