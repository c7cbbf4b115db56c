"""The threshold that parts a histogram into two classes best (Otsu 1979).

Best is where the variance between the classes is largest. The threshold and the separability are
checked against a search over every threshold with a numerical library.
"""

from collections.abc import Sequence
from typing import NamedTuple


class Split(NamedTuple):
    """Two classes of a histogram: bins up to ``last_low`` and those above it.

    Means are in bins. ``separability`` is the share of all variance that lies between the classes,
    0 to 1: for one bell-shaped heap 0.64, for two heaps far apart near 1.
    """

    last_low: int
    mean_low: float
    mean_high: float
    share_high: float
    separability: float


def otsu(histogram: Sequence[int]) -> Split | None:
    """Part a histogram in two by Otsu's method; None where all lies in one bin. Of equal thresholds, the
    middle one."""
    total = sum(histogram)
    weighted_sum = sum(place * count for place, count in enumerate(histogram))
    squares = sum(place * place * count for place, count in enumerate(histogram))
    best, firsts, lasts = 0.0, None, 0
    low_count = low_sum = 0
    for place, count in enumerate(histogram[:-1]):
        low_count += count
        low_sum += place * count
        if not low_count or low_count == total:
            continue
        # The variance between the classes, times the square of the total: all in whole numbers.
        gap = weighted_sum * low_count - low_sum * total
        between = gap * gap / (low_count * (total - low_count))
        if between > best * (1 + 1e-12):
            best, firsts = between, (place, low_count, low_sum)
        if firsts and between >= best * (1 - 1e-12):
            lasts = place
    if not firsts:
        return None
    first, low_count, low_sum = firsts
    return Split(
        last_low=(first + lasts) // 2,
        mean_low=low_sum / low_count,
        mean_high=(weighted_sum - low_sum) / (total - low_count),
        share_high=1 - low_count / total,
        separability=best / (squares * total - weighted_sum * weighted_sum),
    )
