"""A keeper's photograph and marks, checked and changed into a picture and the room on it."""

from collections.abc import Sequence
from typing import Annotated, Any, Literal, NamedTuple

from calculators.core.quantities import Percent
from calculators.core.quantity import Choices, Label
from calculators.core.result import Refusal, Refused
from calculators.surface_cover.channels import CHANNELS, Photo, colour_near, decoded, picture
from calculators.surface_cover.counted_area import CountedArea, Pieces
from calculators.surface_cover.discs import disc_at, edge_in_front
from calculators.surface_cover.drawn_surface import drawn_surface
from calculators.surface_cover.homography import Point
from calculators.surface_cover.leaf_sorts import PLANTS
from calculators.surface_cover.plant_colours import ColourMark
from calculators.surface_cover.water_outline import NoOutline, outline

LONGEST_SIDE = 320  # pixels; more takes time and no longer changes the answer
MOST_OCTETS = CHANNELS * LONGEST_SIDE * LONGEST_SIDE
LEAST_POINTS = 200  # of room: below, chance alone moves the answer by more than 3 points
LEAST_CORNERS, MOST_CORNERS = 3, 12
NOT_DRAGGED = {(10, 10), (90, 10), (90, 90), (10, 90)}  # percent: where the page first puts corners
MOST_TAPS = 60
COVER_PLACES = 1  # decimals of the cover that goes on to the floaters calculator
LEAST_COVER_PERCENT = 0.1  # what the floaters calculator takes


class Corner(NamedTuple):
    """One corner of the water in the picture."""

    x_percent: Annotated[Percent, Label("From the left")]
    y_percent: Annotated[Percent, Label("From the top")]


class Tap(NamedTuple):
    """A place that the keeper pointed out."""

    what: Annotated[
        Literal["plant", "water", "leave-out", "ring"],
        Label("What is there"),
        Choices(("plant", "water", "leave out", "ring around it")),
    ]
    x_percent: Annotated[Percent, Label("From the left")]
    y_percent: Annotated[Percent, Label("From the top")]


class Sizes(NamedTuple):
    """Lengths in cm: the surface's, a ring's inner diameter (0 for none), and a left out disc's."""

    length: float
    width: float
    ring: float
    left_out: float


def not_dragged(corners: Sequence[Corner]) -> bool:
    """Whether the corners still stand where the page puts them over a new photo."""
    return {(corner.x_percent, corner.y_percent) for corner in corners} == NOT_DRAGGED


def shown_picture(pixels: str | None, width: int, height: int) -> Photo:
    """The picture given, or the drawn example; its ``width`` and ``height`` are in pixels.

    Raises ``Refused`` for octets that are not a picture of that size.
    """
    if pixels is None:
        return drawn_surface()
    octets = decoded(pixels)
    needed = CHANNELS * width * height
    if len(octets) != needed:
        why = f"it holds {len(octets)} octets, but {width} by {height} points of three colours are {needed}"
        raise Refused(Refusal("pixels", why))
    return picture(width, height, octets)


def room_of(
    shown: Photo, corners: Sequence[Corner], taps: Sequence[Tap], sizes: Sizes
) -> CountedArea:
    """The room that the marks describe. Raises ``Refused`` for corners and rings that cannot be."""
    check_numbers(corners, taps, sizes)
    try:
        edge = outline([pixel(corner, shown) for corner in corners])
    except NoOutline as wrong:
        why = f"{wrong}; put one on each corner of the water"
        raise Refused(Refusal("corners", why)) from None
    sides = sorted((sizes.length, sizes.width), reverse=edge.first_side_is_longer)
    kinds = (("ring", sizes.ring), ("leave-out", sizes.left_out))
    rings, left_out = (
        [
            disc_at(edge.to_square, pixel(tap, shown), diameter, *sides)
            for tap in taps
            if tap.what == kind
        ]
        for kind, diameter in kinds
    )
    to_picture = edge.to_square.inverse()
    if not all(edge_in_front(disc, to_picture) for disc in (*rings, *left_out)):
        why = "a ring or a place left out lies far outside the water; tap inside the corners"
        raise Refused(Refusal("taps", why))
    return CountedArea(edge, rings, left_out)


def check_numbers(corners: Sequence[Corner], taps: Sequence[Tap], sizes: Sizes) -> None:
    """Refuse too few or too many marks, and rings with no size or one above the surface's.

    Raises ``Refused``.
    """
    wrong = []
    if not LEAST_CORNERS <= len(corners) <= MOST_CORNERS:
        why = f"{len(corners)} corners will not do, {LEAST_CORNERS} to {MOST_CORNERS} will"
        wrong.append(Refusal("corners", why))
    if len(taps) > MOST_TAPS:
        wrong.append(Refusal("taps", f"{len(taps)} places are too many, {MOST_TAPS} will do"))
    narrow = min(sizes.length, sizes.width)
    if sizes.ring > narrow:
        wrong.append(Refusal("ring_diameter_cm", "the ring does not fit", 0, narrow))
    elif not sizes.ring and any(tap.what == "ring" for tap in taps):
        why = "a ring is pointed out: give its inner diameter"
        wrong.append(Refusal("ring_diameter_cm", why, 0.1, narrow))
    if wrong:
        raise Refused(*wrong)


def check_size(pieces: Pieces) -> None:
    """Refuse a room of so few points of the picture that chance would decide.

    Raises ``Refused``.
    """
    points = sum(last - first for row in pieces for first, last in row)
    if points < LEAST_POINTS:
        why = (
            f"the room to count has {points} points of the picture, {LEAST_POINTS} are needed; "
            "go nearer, or set the marks further apart"
        )
        raise Refused(Refusal("corners", why))


def pixel(place: Corner | Tap, shown: Photo) -> Point:
    """A place of the picture in pixels."""
    return place.x_percent / 100 * shown.width, place.y_percent / 100 * shown.height


def marks_of(shown: Photo, taps: Sequence[Tap]) -> list[ColourMark]:
    """The colours that were pointed out as plant or water."""
    return [
        ColourMark(colour_near(shown, *pixel(tap, shown)), tap.what == "plant")
        for tap in taps
        if tap.what in ("plant", "water")
    ]


def mask(sorted_pixels: bytes, width: int, pieces: Pieces) -> bytes:
    """One octet a pixel: 1 where a pixel of the room is counted as plant.

    The ``width`` of the picture is in pixels.
    """
    plants = bytes(int(sort in PLANTS) for sort in range(256))
    made = bytearray(len(sorted_pixels))
    for row, parts in enumerate(pieces):
        for first, last in parts:
            here = slice(row * width + first, row * width + last)
            made[here] = sorted_pixels[here].translate(plants)
    return bytes(made)


def shapes(room: CountedArea, shown: Photo) -> list[dict[str, Any]]:
    """What to draw over the picture: its kind, and its points in percent of the picture."""
    return [
        {
            "what": what,
            "points": [
                [round(100 * x / shown.width, 2), round(100 * y / shown.height, 2)]
                for x, y in points
            ],
        }
        for what, points in room.shapes()
    ]


def for_floaters(cover: float, sizes: Sizes, rings: int) -> dict[str, float]:
    """The inputs of the floaters calculator that follow from the count, by key.

    The ``cover`` is in percent of the room, ``rings`` is how many there are.
    """
    lengths = {
        "cover_percent": max(LEAST_COVER_PERCENT, round(cover, COVER_PLACES)),
        "length_cm": sizes.length,
        "width_cm": sizes.width,
    }
    return lengths | ({"ring_diameter_cm": sizes.ring, "ring_count": rings} if rings else {})
