"""The unit a person sees. Keys and formulas are metric; this is the only place that changes units."""

from typing import Literal

from calculators.core.declare import Field
from calculators.core.quantity import UsUnit

System = Literal["metric", "us"]


def us_unit(field: Field, system: System) -> UsUnit | None:
    """The customary unit to show for a field, or None where the metric one stands."""
    return field.quantity.us if system == "us" and field.quantity else None


def unit_shown(field: Field, system: System) -> str:
    """The unit's symbol as the person sees it."""
    unit = us_unit(field, system)
    return unit.unit if unit else field.unit


def to_shown(field: Field, value: float, system: System) -> float:
    """Change a metric value to the unit shown."""
    unit = us_unit(field, system)
    return value * unit.factor + unit.offset if unit else value


def from_shown(field: Field, value: float, system: System) -> float:
    """Change a value in the unit shown to metric."""
    unit = us_unit(field, system)
    return (value - unit.offset) / unit.factor if unit else value
