"""A figure of the shelf in the customary unit of its quantity: how the browser shows it and reads it back.

The file and the log hold metric figures whatever is shown.
"""

from typing import Any

from calculators.core.quantity import UsUnit

TYPED_DIGITS = 4  # significant, as shown in a form: a figure as it is typed comes back as it was
# Steps worth offering, by unit; common practice, no source.
STEPS: dict[str, tuple[float, ...]] = {
    "US gal": (0.5, 0.1, 1), "oz": (0.5, 0.1, 2), "in": (0.5, 0.1, 1), "sq in": (10, 1, 100),
    "°F": (1, 0.2, 2),
}  # fmt: skip


def customary(us: UsUnit | None, low: float | None, high: float | None) -> dict[str, Any] | None:
    """``{"unit", "factor", "zero", "low", "high", "steps", "digits"}``; None where there is none.

    The metric figure is (shown - zero) x factor. ``low`` and ``high`` are given in the metric unit,
    None where there is no limit, and come back in the customary one.
    """
    if us is None:
        return None
    return {
        "unit": us.unit,
        "factor": 1 / us.factor,
        "zero": us.offset,
        "low": limit(us, low),
        "high": limit(us, high),
        "steps": list(STEPS[us.unit]),
        "digits": TYPED_DIGITS,
    }


def limit(us: UsUnit, metric: float | None) -> float | None:
    """A limit as a keeper of customary units has it; given ``metric``, it comes back in that unit."""
    return None if metric is None else float(f"{metric * us.factor + us.offset:.{TYPED_DIGITS}g}")
