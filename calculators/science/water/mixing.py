"""Mixing two waters: hardness adds up by volume, pH does not."""


def share_of_second(first: float, second: float, target: float) -> float | None:
    """The share of a second water, 0 to 1, that brings the mix to a target; None if out of reach.

    The ``first`` and the second water and the target are in one unit.
    """
    if not min(first, second) <= target <= max(first, second):
        return None
    return (target - first) / (second - first) if first != target else 0.0


def mixed(first: float, second: float, share: float) -> float:
    """What a mix reads that holds so large a share of the second water.

    Both it and the ``first`` water are in the unit of the second.
    """
    return first + share * (second - first)
