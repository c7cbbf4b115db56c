"""How green, red and light a colour is.

Excess green is the index of Woebbecke and others 1995, 2g - r - b, of red, green and blue. Divided by
their sum it hardly changes with the light, and says what is a leaf. Not divided it is linear: a pixel half
of leaf and half of water has half of it, and so says how much of a pixel is leaf.
"""

from typing import NamedTuple

from calculators.surface_cover.channels import Colour

DARK = 160  # added to the sum, so that the noise of nearly black pixels stays small; our choice
WHITE = 3 * 255
GLARE_FROM = 236  # in every channel: no leaf is so white, a lamp's image is; our choice


class LeafColour(NamedTuple):
    """A colour by its ``excess`` of green (-510 to 510), and its greenness, redness and light as shares."""

    excess: int
    green: float
    red: float
    red_blue: float
    light: float


SEEN: dict[Colour, LeafColour] = {}  # worked out once each: photographs repeat their colours


def colour_of_leaf(colour: Colour) -> LeafColour:
    """What a colour looks like."""
    judged = SEEN.get(colour)
    if judged is None:
        judged = SEEN[colour] = worked_out(*colour)
    return judged


def worked_out(red: int, green: int, blue: int) -> LeafColour:
    """The figures of a colour, each channel 0 to 255.

    These are ``red``, ``green`` and ``blue``, of no unit.
    """
    total = red + green + blue
    size = total + DARK
    excess = 2 * green - red - blue
    return LeafColour(
        excess,
        excess / size,
        (2 * red - green - blue) / size,
        (red - blue) / size,
        total / WHITE,
    )


def is_glare(colour: Colour) -> bool:
    """Whether a colour is the image of a lamp or window on the water rather than a thing."""
    return min(colour) >= GLARE_FROM


def distance(first: LeafColour, other: LeafColour) -> float:
    """How different two colours look; lightness counts half, since it changes across a tank."""
    return (
        (first.green - other.green) ** 2
        + (first.red_blue - other.red_blue) ** 2
        + (0.5 * (first.light - other.light)) ** 2
    )
