"""How sure limits of a slope are: the exact distribution of Kendall's score, summed over stretches.

With no trend in what is left beside the true slope every order of a stretch's readings is as likely as
any other. The pairs in the wrong order then number D, whose distribution is the count of inversions
of permutations; over stretches, which do not depend on each other, the counts are convolved. The
true slope has just D pair slopes below it, so the limits that leave ``k`` pair slopes out at either
end hold it with probability 1 - 2 P(D <= k) (Sen 1968; Hollander and Wolfe, Nonparametric
Statistical Methods, theorem on the slope; the second from memory).

Readings that are equal because a kit is coarse make these limits hold at least as often, never less.
"""

import math
from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

TARGET_COVERAGE = 0.95
# Below it limits are not worth showing: three readings give 67 %. Our judgement.
LEAST_COVERAGE = 0.85
NORMAL_97_5 = 1.959963984540054  # of the standard normal distribution: two-sided 95 %
MOST_EXACT_PAIRS = 1_000  # beyond, the normal approximation is as good and far quicker


class Limits(NamedTuple):
    """How many pair slopes lie outside at either end, and the probability that the rest holds."""

    left_out: int
    coverage: float


def pairs_of(sizes: Sequence[int]) -> int:
    """How many pairs of readings lie inside stretches whose ``sizes`` are so many readings each."""
    return sum(math.comb(size, 2) for size in sizes)


def limits_for(sizes: Sequence[int]) -> Limits | None:
    """The narrowest limits that hold at least 95 %, else the widest with their true coverage.

    None where even the widest hold less than ``LEAST_COVERAGE``. The ``sizes`` are how many readings
    each stretch has.
    """
    used = tuple(sorted(size for size in sizes if size > 1))
    if pairs_of(used) > MOST_EXACT_PAIRS:
        return Limits(normal_left_out(used), TARGET_COVERAGE)
    limits = exact_limits(used)
    return limits if limits.coverage >= LEAST_COVERAGE else None


@lru_cache(maxsize=256)
def exact_limits(sizes: tuple[int, ...]) -> Limits:
    """The limits by the exact distribution, whatever they hold.

    The ``sizes`` are how many readings each stretch has.
    """
    all_orders = math.prod(math.factorial(size) for size in sizes)
    outside, left_out, coverage = 0, 0, 0.0
    for place, orders in enumerate(inversion_counts(sizes)):
        outside += 2 * orders
        inside = max(0.0, 1 - outside / all_orders)
        if place and inside < TARGET_COVERAGE:
            break
        left_out, coverage = place, inside
    return Limits(left_out, coverage)


def inversion_counts(sizes: Sequence[int]) -> list[int]:
    """How many orders have 0, 1, 2, … pairs the wrong way round, up to half of the pairs.

    The generating function of one stretch is the product of 1 + q + … + q^(j - 1) for j up to its size
    (MacMahon); that of several is the product of theirs. The ``sizes`` are how many readings each
    stretch has.
    """
    counts = [1] + [0] * (pairs_of(sizes) // 2)
    for factor in (factor for size in sizes for factor in range(2, size + 1)):
        running, summed = 0, []
        for place, orders in enumerate(counts):
            running += orders - (counts[place - factor] if place >= factor else 0)
            summed.append(running)
        counts = summed
    return counts


def normal_left_out(sizes: Sequence[int]) -> int:
    """How many pairs may be left out at each end, for very many pairs.

    The normal approximation with Kendall's variance; ``sizes`` are how many readings each stretch has.
    """
    variance = sum(size * (size - 1) * (2 * size + 5) for size in sizes) / 18
    return max(0, round((pairs_of(sizes) - NORMAL_97_5 * math.sqrt(variance)) / 2) - 1)
