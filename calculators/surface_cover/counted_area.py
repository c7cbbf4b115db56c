"""The room that floaters have in a picture: the surface, or the rings on it, less what is left out."""

from collections.abc import Sequence
from typing import NamedTuple

from calculators.surface_cover.channels import pixels_of
from calculators.surface_cover.discs import Disc, common, drawn, joined, span, without
from calculators.surface_cover.homography import Homography, Point
from calculators.surface_cover.water_outline import Outline, spans

Pieces = list[list[tuple[int, int]]]


class CountedArea(NamedTuple):
    """The water's edge in the picture, the rings on it and the discs to leave out."""

    edge: Outline
    rings: Sequence[Disc]
    left_out: Sequence[Disc]

    @property
    def to_square(self) -> Homography:
        """The map from the picture to the surface."""
        return self.edge.to_square

    def pieces(self, width: int, height: int, *, whole_surface: bool = False) -> Pieces:
        """For each row of the picture, the pixels of the room, or of the surface inside and outside rings.

        Both ``width`` and ``height`` of the picture are in pixels.
        """
        return [
            [pixels_of(piece, width) for piece in self.row(row + 0.5, whole_surface)]
            for row in range(height)
        ]

    def row(self, y: float, whole_surface: bool) -> list[tuple[float, float]]:
        """The pieces of a row of pixels that are counted.

        Each is a pair of ends, from left to right; ``y`` and they are in pixels.
        """
        open_spans = spans(self.edge.points, y)
        if not open_spans:
            return open_spans
        if self.rings and not whole_surface:
            open_spans = common(open_spans, self.across(self.rings, y))
        return without(open_spans, self.across(self.left_out, y)) if self.left_out else open_spans

    def across(self, discs: Sequence[Disc], y: float) -> list[tuple[float, float]]:
        """The pieces of a row inside any of some discs.

        Each is a pair of ends, from left to right; ``y`` and they are in pixels.
        """
        return joined([piece for disc in discs for piece in span(disc, self.to_square, y)])

    def shapes(self) -> list[tuple[str, list[Point]]]:
        """What to draw over the picture: kind and points, in pixels."""
        to_picture = self.to_square.inverse()
        return [
            ("edge", self.edge.points),
            *(("ring", drawn(disc, to_picture)) for disc in self.rings),
            *(("left-out", drawn(disc, to_picture)) for disc in self.left_out),
        ]
