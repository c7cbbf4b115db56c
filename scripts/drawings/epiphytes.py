"""Plants that hold on to wood: a rhizome with leaves along it."""

from scripts.drawings.geometry import Path, Run, curve
from scripts.drawings.rosettes import stalk_length
from scripts.drawings.scene import Item, Shape, ShapeGroup, Symbols
from scripts.drawings.shared_shapes import BROAD_EASE, fit, grow_under, second, stalked
from scripts.drawings.size import Subject, TankFrame

WOOD_MM = 26.0  # how far the top of the wood lies above the cap


def epiphyte(s: Subject, f: TankFrame, symbols: Symbols) -> list[Item]:
    """A creeping rhizome that grips with its roots; leaves along it, youngest at its tip."""
    top = min(s.height, f.surface)
    half = min(max(s.spread * 0.22, 18.0), 70.0)
    thick = min(max(3.0, s.leaf * 0.045), 9.0)
    rhizome = curve((-half, 1.5), (-half * 0.3, 2.6), (half * 0.4, 1.6), (half, 3.6))
    grips = [
        curve((x, 1.0), (x + s.chance.uniform(-4, 4), -7), (x + s.chance.uniform(-9, 9), -15))
        for x in (half * (i / 3.5 - 1) for i in range(8))
    ]
    number = 9 if s.width > s.leaf * 0.2 else 12
    leaves: list[Item] = []
    for i in range(number):
        share = i / (number - 1)
        shown = rhizome_leaf(s, symbols, f, -half + 2 * half * share, share, i)
        tint = second(s, "young-leaves") if share > 0.8 else ""
        tint = tint or (second(s, "underside") if i % 3 == 1 else "")
        leaves.append(ShapeGroup(tuple(shown), tint or ("back" if i % 3 == 1 else "")))
    leaves.sort(key=lambda item: 0 if isinstance(item, ShapeGroup) and item.css == "back" else 1)
    grown = fit(leaves, symbols, top=top, spread=min(s.spread, f.width * 0.85))
    return [Shape("root", tuple(grips)), *grown, Shape("rhizome", (rhizome,), thick)]


def rhizome_leaf(
    s: Subject, symbols: Symbols, f: TankFrame, x: float, share: float, i: int
) -> list[Item]:
    """One leaf, leaning away from the others."""
    blade = s.traits.leaf_length_mm
    size = (blade.low + (blade.high - blade.low) * (0.55 + 0.4 * (i * 7 % 5) / 4)) * (
        1 - 0.45 * max(share - 0.75, 0) / 0.25
    )
    side = 1 if share > 0.5 else -1
    lean = (share - 0.5) * 84 + s.chance.uniform(-12, 12) + (14 if i % 2 else -14)
    spine = grow_under(
        (x, 2.0),
        size + stalk_length(s, blade.high) * s.about(0.85, 0.15),
        lambda t: lean + side * (4 + 34 * t * t),
        f.surface - s.width / 3,
        BROAD_EASE,
    )
    return stalked(s, symbols, spine, size, s.width * size / s.leaf if size < s.leaf else s.width)


def wood(half: float, height: float) -> Path:
    """A branch lying on the cap, its upper edge at height 0."""
    top = (
        (-half, -height * 0.8),
        (-half * 0.8, -2.0),
        (-half * 0.2, 1.0),
        (half * 0.5, 0.0),
        (half * 0.92, 3.0),
        (half * 1.25, 12.0),
    )
    under = (
        (half * 1.3, 6.0),
        (half * 0.98, -height * 0.5),
        (half * 0.5, -height),
        (-half * 0.6, -height),
        (-half, -height * 0.8),
    )
    return Path((Run(top), Run((top[-1], under[0]), False), Run(under)), closed=True)
