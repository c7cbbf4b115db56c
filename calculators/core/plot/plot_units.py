"""Series in the units that a person chose, for pictures; the contract's series stay metric."""

from collections.abc import Mapping

from calculators.core.quantity import UsUnit
from calculators.core.result import Series
from calculators.core.shown_units import System


def in_units(series: Mapping[str, Series], system: System) -> dict[str, Series]:
    """The same series, each axis in the customary unit where it has one and that was chosen."""
    if system == "metric":
        return dict(series)
    return {key: across(up(values)) for key, values in series.items()}


def up(series: Series) -> Series:
    """The heights and named lines of a series in its customary unit."""
    us = series.us
    if us is None:
        return series
    lines = tuple(line._replace(value=changed(us, line.value)) for line in series.lines)
    values = [changed(us, y) for y in series.y]
    return series._replace(unit=us.unit, y=values, lines=lines, step=series.step * abs(us.factor))


def across(series: Series) -> Series:
    """The places and marks of a series in the customary unit of its axis across."""
    us = series.x_us
    if us is None:
        return series
    marks = tuple(mark._replace(x=changed(us, mark.x)) for mark in series.marks)
    return series._replace(x_unit=us.unit, x=[changed(us, x) for x in series.x], marks=marks)


def changed(us: UsUnit, metric: float) -> float:
    """A metric value in a customary unit."""
    return metric * us.factor + us.offset
