"""How strongly a finding speaks: the classes of the records as numbers, and the sums behind them.

These numbers are our judgement, not measurements; they are the same for every problem, so that
none can be tuned alone. Steps are wide (about fourfold) since nobody can judge finer than that.
"""

from collections.abc import Collection, Mapping

# How often a problem is the one, as weights: fourfold between classes would drown the evidence of
# the rare ones, so neighbours differ about twofold.
PRIOR_WEIGHT = {"common": 8.0, "usual": 4.0, "uncommon": 2.0, "rare": 1.0}

# The weight of all that stands in no record, about a tenth of the whole before anything is known.
SOMETHING_ELSE_WEIGHT = 20.0

# A plant whose record names the problem shows it more often than others do.
NAMED_BY_PLANT = 2.5

# How often a finding shows where the trouble is something else, as a probability.
# "hardly-ever" is for what cannot be mistaken, such as a polyp with arms.
USUAL = {
    "mostly": 0.65,
    "often": 0.3,
    "sometimes": 0.12,
    "seldom": 0.04,
    "rare": 0.01,
    "hardly-ever": 0.002,
}

# By how much a cause raises the odds of a finding.
ODDS = {"strong-for": 16.0, "for": 4.0, "neutral": 1.0, "against": 0.25, "rules-out": 0.01}

# A hallmark: with this cause the finding shows nearly always, so its absence all but rules it out.
HALLMARK_SHOWS = 0.97

LEAST = 1e-9  # a probability that is as good as none


def shares(
    usual: Mapping[str, float], odds: Mapping[str, float], hallmark: Collection[str]
) -> dict[str, float]:
    """The probability of each answer to one question, given a cause.

    ``usual`` holds the answers' probabilities without the cause; what is left of 1 is "none of
    these". ``odds`` multiplies each (1 where the cause says nothing), and the whole is scaled back
    to 1. For a question of yes or no this is p = K b / (1 - b + K b). A hallmark is set to
    ``HALLMARK_SHOWS`` and the others share the rest.
    """
    weights = {key: odds.get(key, 1.0) * share for key, share in usual.items()}
    other = max(0.0, 1 - sum(usual.values()))
    marked = sum(weights[key] for key in hallmark)
    if marked:
        rest = sum(weights.values()) + other - marked
        scale = HALLMARK_SHOWS / (1 - HALLMARK_SHOWS) * rest / marked
        weights = {key: w * scale if key in hallmark else w for key, w in weights.items()}
    total = sum(weights.values()) + other
    return {key: weight / total for key, weight in weights.items()}


def ratio(
    given_cause: Mapping[str, float],
    usual: Mapping[str, float],
    present: str | None,
    absent: Collection[str],
) -> float:
    """The likelihood ratio of an answer: one answer present, or some looked for and not there."""
    if present is not None:
        return given_cause[present] / usual[present]
    left_usual = 1 - sum(usual[key] for key in absent)
    left_cause = 1 - sum(given_cause[key] for key in absent)
    if left_usual < LEAST:  # every answer there is was denied: that tells nothing
        return 1.0
    return max(left_cause, LEAST) / left_usual
