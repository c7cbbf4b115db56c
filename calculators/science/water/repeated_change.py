"""A level that rises or falls evenly and is pulled towards the new water's reading by each change.

With a gain in each stretch between changes, the level just before a change goes from one to the next as
before -> (1 - share) * before + share * tap + gain. It stands still at tap + gain / share.
"""

from calculators.science.water.mixing import mixed


def settled_before(tap: float, gain: float, share: float) -> float:
    """The level just before a change once it repeats, in the unit of ``tap`` and ``gain``.

    ``gain`` is what comes in less what goes between two changes, ``share`` what each replaces, above 0
    and up to 1. Below zero where more goes than comes: then the water runs empty. Raises
    ``ZeroDivisionError`` for a share of 0, with which nothing settles.
    """
    return tap + gain / share


def after_change(before: float, tap: float, share: float) -> float:
    """The level just after a change: new water in place of a ``share`` of the old, 0 to 1.

    The level ``before`` and that of the ``tap`` are in one unit.
    """
    return mixed(before, tap, share)
