"""How many leaves stand in a ring, counted with a keeper's error."""

import math
from functools import cache

from calculators.identify.seen import MOST_IN_A_RING
from calculators.identify.trait_table import BookTraits, Ends

COUNT_ERROR, ERROR_A_LEAF = (
    0.25,
    0.06,
)  # scale of a miscount: of few leaves, and more for each; judgement
# Leaves at a joint where they stand in no ring.
AT_A_JOINT = {
    "opposite": (2.0, 2.0), "floating-pair": (2.0, 3.0), "alternate": (1.0, 1.0),
    "two-ranked": (1.0, 1.0), "spiral": (1.0, 1.0), "single-at-node": (1.0, 1.0),
}  # fmt: skip


def ring_of(traits: BookTraits) -> Ends | None:
    """The leaves at a joint by the record; None where there is none to count."""
    return traits.whorl if traits.arrangement == "whorled" else AT_A_JOINT.get(traits.arrangement)


@cache
def counting(ends: Ends) -> tuple[float, ...]:
    """The probability of each count from 1 on, where the true one lies evenly between the ends."""
    true = range(int(ends[0]), int(ends[1]) + 1)
    counts = range(1, MOST_IN_A_RING + 1)
    rows = []
    for leaves in true:
        scale = COUNT_ERROR + ERROR_A_LEAF * leaves
        weights = [math.exp(-abs(count - leaves) / scale) for count in counts]
        rows.append([weight / sum(weights) for weight in weights])
    return tuple(math.fsum(column) / len(rows) for column in zip(*rows, strict=True))
