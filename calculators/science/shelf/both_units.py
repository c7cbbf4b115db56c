"""A figure of a sentence in metric units, with the customary one behind it where there is another."""

from calculators.core.numbers import show_number
from calculators.core.quantity import UsUnit

US_DIGITS = 3


def span_in_both(low: float, high: float, unit: str, us: UsUnit | None) -> str:
    """Words as ``18 to 24 °C (64.4 to 75.2 °F)``, each unit said once.

    ``low`` and ``high`` are in ``unit``.
    """
    said = f"{show_number(low)} to {show_number(high)} {unit}".rstrip()
    if us is None:
        return said
    lowest, highest = (
        show_number(value * us.factor + us.offset, US_DIGITS) for value in (low, high)
    )
    return f"{said} ({lowest} to {highest} {us.unit})"


def in_both(value: float, unit: str, us: UsUnit | None) -> str:
    """Words as ``24 °C (75.2 °F)``; without a customary unit as ``8 mg/L``, without any as ``7.2``.

    The ``value`` is in ``unit``.
    """
    said = f"{show_number(value)} {unit}".rstrip()
    if us is None:
        return said
    return f"{said} ({show_number(value * us.factor + us.offset, US_DIGITS)} {us.unit})"
