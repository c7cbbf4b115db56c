"""What a keeper measures of a tank, and what nobody measures in a room.

Lengths in m. A room stands here twice, once on the sparing and once on the costly side.
"""

from typing import NamedTuple

from calculators.science.conversions import CM_PER_M

MM_PER_M = 1000


class Room(NamedTuple):
    """What bounds the loss: a still, humid room and a well-placed tank, or a draughty, dry one.

    ``glass_emissivity`` of 0.84 to 0.95 and the water's of 0.96 are handbooks' (incropera-2007); all
    others are common practice and judgement. ``leak`` is the share of the open surface's evaporation
    that still escapes beside a lid.
    """

    glass_emissivity: float
    humidity: float
    draught_m_s: float
    film_w_m2_k: float  # between water and glass: still water 100, moved water several hundred
    under_m2_k_w: float  # board and mat below the bottom
    lid_gap_w_m2_k: float  # from water to lid: radiation, air, and vapour that condenses on the lid
    leak: float
    costly: bool


SPARING = Room(0.84, 0.65, 0.0, 100.0, 0.40, 10.0, 0.03, False)
COSTLY = Room(0.95, 0.35, 0.2, 500.0, 0.14, 17.0, 0.15, True)


class GlassBox(NamedTuple):
    """The outside measures of a box in m, and the panes' thickness in m."""

    length: float
    width: float
    height: float
    pane: float
    lid: bool

    @property
    def top_m2(self) -> float:
        """The open surface."""
        return (self.length - 2 * self.pane) * (self.width - 2 * self.pane)


def glass_of(
    length_cm: float, width_cm: float, height_cm: float, glass_mm: float, lid: bool
) -> GlassBox:
    """The box from what a keeper measures."""
    return GlassBox(
        length_cm / CM_PER_M, width_cm / CM_PER_M, height_cm / CM_PER_M, glass_mm / MM_PER_M, lid
    )  # fmt: skip
