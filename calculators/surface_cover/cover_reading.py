"""The count as a reading for the log of a tank: its cover is that of the whole surface."""

from typing import Any

from calculators.core.figures import figure
from calculators.core.numbers import show_number
from calculators.surface_cover.count import CoverRange
from calculators.surface_cover.words import Confidence, CoverByEye

SHOWN_DIGITS = 2  # as CoverByEye shows it


def worth_logging(
    covers: CoverRange, sure: Confidence, share_of_surface: float
) -> dict[str, Any] | None:
    """The reading, rounded as it is shown; None where the count may be far off.

    ``share_of_surface`` is the part of the water's surface that the count is of: rings hold the
    floaters in less than all of it, and the log's cover is of all. The step is the width of the
    range, since two counts so far apart may be of one surface.
    """
    if sure == "hard-to-tell":
        return None
    shares = [share_of_surface * share for share in covers]
    cover, low, high = (figure(CoverByEye, share) for share in shares)
    return {
        "value": float(show_number(shares[0], SHOWN_DIGITS)),
        "step": round(shares[2] - shares[1], 1),
        "words": f"{cover} % cover",
        "range": f"{low} to {high} %",
    }
