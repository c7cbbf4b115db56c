"""A small picture as three channels, and its colours counted. Nothing here knows of plants."""

import binascii
from collections import Counter
from collections.abc import Iterable, Sequence
from itertools import chain
from typing import NamedTuple

from calculators.surface_cover.water_outline import Span

Colour = tuple[int, int, int]  # red, green, blue
CHANNELS = 3
STEP = 4  # colours closer than this in each channel are one: below the noise of a phone's camera
COARSE = bytes(value - value % STEP + STEP // 2 for value in range(256))  # the middle of each step


class Photo(NamedTuple):
    """``colours`` has one colour a pixel, row by row from the top, each channel in steps of 4."""

    width: int
    height: int
    colours: list[Colour]


def picture(width: int, height: int, octets: bytes) -> Photo:
    """A picture from its octets: red, green, blue of each pixel, row by row.

    So many pixels are its ``width`` and ``height``.
    """
    coarse = octets.translate(COARSE)
    channels = (coarse[channel::CHANNELS] for channel in range(CHANNELS))
    return Photo(width, height, list(zip(*channels, strict=True)))


def decoded(text: str) -> bytes:
    """The octets of a base64 text."""
    return binascii.a2b_base64(text)


def pixels_of(span: Span, width: int) -> tuple[int, int]:
    """The pixels whose middles lie in a piece of a row: the first, and the one after the last.

    The ``width`` of the picture is in pixels.
    """
    first = max(0, -int((0.5 - span[0]) // 1))
    return first, max(first, min(width, int((span[1] + 0.5) // 1)))


def counted(shown: Photo, rows: Sequence[Sequence[tuple[int, int]]]) -> Counter[Colour]:
    """How often each colour stands in some pieces of each row."""
    colours, width = shown.colours, shown.width
    parts: Iterable[list[Colour]] = (
        colours[row * width + first : row * width + last]
        for row, pieces in enumerate(rows)
        for first, last in pieces
    )
    return Counter(chain.from_iterable(parts))


def colour_near(shown: Photo, x: float, y: float) -> Colour:
    """The mean colour of the nine pixels around a point, fewer at the edge.

    The point's ``x`` and ``y`` are in pixels from the upper left corner.
    """
    column, row = min(int(x), shown.width - 1), min(int(y), shown.height - 1)
    near = [
        shown.colours[down * shown.width + across]
        for down in range(max(0, row - 1), min(shown.height, row + 2))
        for across in range(max(0, column - 1), min(shown.width, column + 2))
    ]
    red, green, blue = (round(sum(part) / len(near)) for part in zip(*near, strict=True))
    return red, green, blue


def bits(marks: bytes) -> str:
    """Ones and noughts, one an octet, packed eight to an octet and written as base64."""
    digits = marks.translate(AS_DIGITS).decode() + "0" * (-len(marks) % 8)
    packed = int(digits or "0", 2).to_bytes(len(digits) // 8, "big")
    return binascii.b2a_base64(packed, newline=False).decode()


AS_DIGITS = bytes(ord("1") if value else ord("0") for value in range(256))
