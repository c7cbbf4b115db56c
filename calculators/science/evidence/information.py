"""What an answer is expected to tell: the mutual information of candidate and answer."""

import math
from collections.abc import Iterable, Sequence

from calculators.science.rounding import COMPARED_DIGITS

Row = tuple[float, Sequence[float]]  # a candidate's chance, and the probability of each answer


def information_bits(rows: Iterable[Row]) -> float:
    """I = sum over candidates c and answers a of P(c) P(a|c) log2(P(a|c) / P(a)), in bits.

    The answers of a row must add up to 1.
    """
    table = list(rows)
    mean = [
        math.fsum(chance * row[place] for chance, row in table) for place in range(len(table[0][1]))
    ]
    bits = math.fsum(
        chance * share * math.log2(share / total)
        for chance, row in table
        for share, total in zip(row, mean, strict=True)
        if share > 0 and chance > 0
    )
    return round(bits, COMPARED_DIGITS)
