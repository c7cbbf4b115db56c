"""A leaf of each class of sizes beside a fingertip, to one scale within its picture."""

import math

from calculators.science.conversions import MM_PER_CM
from scripts.drawings.geometry import Path, Run
from scripts.drawings.leaves import leaf
from scripts.drawings.scene import Item, Shape, Symbols
from scripts.drawings.trait_leaves import LONG, framed
from scripts.drawings.veins import Form

FINGERTIP_MM = (
    16.0  # about the width of a grown person's forefinger at its tip: common practice, no source
)
OPEN_END = math.sqrt(2)  # an open class is drawn at this many times its least


def size_symbol(name: str, trait: str, low: float, high: float) -> str:
    """What is measured, at the middle of its class, over a fingertip."""
    middle = high / OPEN_END if low == 0 else low * OPEN_END
    size = middle * (MM_PER_CM if trait.endswith("_cm") else 1)
    length, width = (size, size * 0.3) if trait != "width_mm" else (size * 2, size)
    scale = LONG / max(length, FINGERTIP_MM * 1.4)
    blade = leaf(Form("lanceolate", length * scale, max(width * scale, 0.8)))
    tip = fingertip(FINGERTIP_MM * scale / 2, width * scale / 2)
    items: list[Item] = [tip, *blade]
    return framed(name, items, Symbols())


def fingertip(half: float, beside: float) -> Shape:
    """The end of a finger to the right of the leaf."""
    left = beside + 2.0
    side = ((0.0, 0.0), (0.02, 1.4), (0.3, 2.15), (1.0, 2.5), (1.7, 2.15), (1.98, 1.4), (2.0, 0.0))
    points = tuple((left + x * half, y * half) for x, y in side)
    return Shape("root", (Path((Run(points),), closed=False),), 1.0)
