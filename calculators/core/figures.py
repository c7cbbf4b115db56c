"""A figure inside a sentence, rounded as the same figure is in the table."""

import typing
from typing import Any

from calculators.core.numbers import show_number
from calculators.core.quantity import Digits, Quantity


def figure(kind: Any, value: float) -> str:
    """Write a metric value without its unit, to the digits of its kind.

    ``kind`` is an ``Annotated`` of the vocabulary, with a ``Digits`` mark or without. What is less
    than the least worth showing is said so. Raises ``TypeError`` for a kind without a quantity.
    """
    marks = {type(mark): mark for mark in typing.get_args(kind)[1:]}  # a later one overrides
    quantity: Quantity | None = marks.get(Quantity)
    if quantity is None:
        raise TypeError(f"{kind} has no quantity, so nothing says how many digits it shows")
    if 0 < abs(value) < quantity.least:
        return f"under {show_number(quantity.least)}"
    digits: Digits | None = marks.get(Digits)
    return show_number(value, digits.number if digits else quantity.digits)
