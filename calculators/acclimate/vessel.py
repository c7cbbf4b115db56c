"""A vessel that fills with tank water by drops: time, volume and what the mix reads."""

from calculators.science.conversions import ML_PER_L
from calculators.science.water.mixing import mixed


def full_vessel_l(bag_l: float, tank_share: float) -> float:
    """What the vessel holds once so large a share, 0 to under 1, of it is tank water, in litres."""
    return bag_l / (1 - tank_share)


def minutes_to(bag_l: float, tank_share: float, drip_ml_min: float) -> float:
    """Minutes of drops until then."""
    return (full_vessel_l(bag_l, tank_share) - bag_l) * ML_PER_L / drip_ml_min


def at_end(bag: float, tank: float, tank_share: float) -> float:
    """Hardness or temperature of the mix, in the unit in which ``bag`` and ``tank`` are given.

    ``tank_share`` is the part that is tank water, 0 to 1; neither air nor walls are counted.
    """
    return mixed(bag, tank, tank_share)
