"""The unit a person sees. Keys and formulas are metric; this is the only place that changes units."""

from typing import Literal

from calculators.core.fields import Field, InputField
from calculators.core.quantity import Quantity, UsUnit

System = Literal["metric", "us"]
EDGE = 1e-5  # a limit shown in another unit and typed back may miss itself by this share


def us_unit(quantity: Quantity | None, system: System) -> UsUnit | None:
    """The customary unit to show for a quantity, or None where the metric one stands."""
    return quantity.us if system == "us" and quantity else None


def unit_shown(field: Field, system: System) -> str:
    """A field's unit as the person sees it."""
    unit = us_unit(field.quantity, system)
    return unit.unit if unit else field.unit


def to_shown(field: Field, value: float, system: System) -> float:
    """Change a field's metric value to the unit shown."""
    return converted(field.quantity, value, system)


def converted(quantity: Quantity | None, value: float, system: System) -> float:
    """Change a metric value of a quantity to the unit shown."""
    unit = us_unit(quantity, system)
    return value * unit.factor + unit.offset if unit else value


def from_shown(field: InputField, value: float, system: System) -> float:
    """Change a value in the unit shown to metric; a limit that was rounded for the screen is that limit."""
    unit = us_unit(field.quantity, system)
    return at_limit(field, (value - unit.offset) / unit.factor) if unit else value


def at_limit(field: InputField, metric: float) -> float:
    """A value that misses one of the field's limits by no more than rounding is put on it.

    Both are ``metric``, in the field's own unit.
    """
    slack = EDGE * max(abs(field.low or 0), abs(field.high or 0))
    if field.low is not None and field.low - slack <= metric < field.low:
        return field.low
    if field.high is not None and field.high < metric <= field.high + slack:
        return field.high
    return metric
