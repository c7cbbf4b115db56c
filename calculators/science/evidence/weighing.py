"""Bayes' rule over several candidates, with room for something that stands in no record.

The numbers here are our judgement, not measurements, and the same for every question put to the book.
"""

import math
from collections.abc import Mapping, Sequence

from calculators.science.rounding import COMPARED_DIGITS

# Pieces of evidence hang together in ways we do not know. The one that speaks most for a candidate
# counts in full; each further one counts with this power of its likelihood ratio.
SHARED = 0.8

# The book itself may be wrong about a case: no probability shown is above 1 less this.
BOOK_MAY_ERR = 0.05

LEADING = 0.25  # of the first candidate's chance: from here on a candidate is a rival

SOMETHING_ELSE = "something-else"  # the candidate that stands in no record

SURE = (  # from this percentage on, in words
    (80.0, "very likely"),
    (50.0, "likely"),
    (25.0, "quite possible"),
    (10.0, "possible"),
    (0.0, "less likely"),
)


def together(log_ratios: Sequence[float]) -> float:
    """The logarithm of what several answers say together: the strongest for the candidate in full."""
    strongest = max([0.0, *log_ratios])
    return SHARED * math.fsum(log_ratios) + (1 - SHARED) * strongest


def normal(weights: Sequence[float]) -> list[float]:
    """Weights as probabilities that add up to 1, as many and in order."""
    total = sum(weights)
    return [weight / total for weight in weights]


def chances_of(logs: Mapping[str, float]) -> dict[str, float]:
    """The probability of each candidate from the logarithm of its weight, ``SOMETHING_ELSE`` among them.

    A share ``BOOK_MAY_ERR`` of the whole always goes to something else.
    """
    highest = max(logs.values())
    chances = normal([math.exp(log - highest) for log in logs.values()])
    by_candidate = {
        candidate: round((1 - BOOK_MAY_ERR) * chance, COMPARED_DIGITS)
        for candidate, chance in zip(logs, chances, strict=True)
    }
    return {**by_candidate, SOMETHING_ELSE: by_candidate[SOMETHING_ELSE] + BOOK_MAY_ERR}


def words_for(percent: float) -> str:
    """How sure a probability is, in words."""
    return next(words for least, words in SURE if percent >= least)


def shown_percent(percent: float) -> str:
    """A probability in whole percent."""
    return f"{round(percent)} %" if percent >= 1 else "under 1 %"
