"""The worked example's picture: round leaves on dark water, seen at a slant. Demo data, drawn here."""

from functools import cache

from calculators.surface_cover.channels import Photo, picture
from calculators.surface_cover.homography import Point, square_to

WIDTH, HEIGHT = 120, 90
CORNERS: list[Point] = [(24.0, 12.0), (96.0, 12.0), (110.0, 80.0), (10.0, 80.0)]  # pixels
BESIDE, WATER, LEAF = (120, 104, 88), (34, 44, 40), (104, 168, 72)
ACROSS, DOWN = 10, 5  # leaves in a grid, each in the middle of its square
RADIUS = 0.36  # of a square's side: pi * 0.36 * 0.36 is a cover of 40.7 %


@cache
def drawn_surface() -> Photo:
    """The picture; its cover is known from the radius of its leaves."""
    to_square = square_to(CORNERS).inverse()
    octets = bytearray()
    for row in range(HEIGHT):
        for column in range(WIDTH):
            octets += bytes(colour_at(to_square.at(column + 0.5, row + 0.5)))
    return picture(WIDTH, HEIGHT, bytes(octets))


def colour_at(place: Point) -> tuple[int, int, int]:
    """The colour of a place of the surface, 0 to 1 across and down; outside it, what stands beside."""
    across, down = place
    if not (0 <= across < 1 and 0 <= down < 1):
        return BESIDE
    off_x, off_y = across * ACROSS % 1 - 0.5, down * DOWN % 1 - 0.5
    return LEAF if off_x * off_x + off_y * off_y < RADIUS * RADIUS else WATER
