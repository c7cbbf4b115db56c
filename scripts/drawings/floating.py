"""Floating plants from the side: the picture from above, seen flat along the water, with hanging roots."""

import math

from scripts.drawings.divided import feathery
from scripts.drawings.fronds import frond_above, hangs
from scripts.drawings.geometry import Affine, curve, placed
from scripts.drawings.hanging_fronds import hanging_fronds
from scripts.drawings.rosettes import stalk_length
from scripts.drawings.scene import Copy, Item, Shape, ShapeGroup, Symbols, bounds, moved
from scripts.drawings.seen_above import rosette_above, stem_above
from scripts.drawings.shared_shapes import second, stalked
from scripts.drawings.size import Subject, TankFrame
from scripts.drawings.spine import grow, veering

FRINGED_MM = 40.0  # longer roots are drawn with side roots
FRINGES = 11  # pairs on a root
THINNEST_MM = 1.3  # a frond seen edge-on is drawn at least this thick
FLAT = 0.2  # how much of its breadth a leaf on the water shows to an eye a little above it
RISING = ("obovate", "spatulate", "pinnate", "lobed", "oblong", "lanceolate")
TALL_LEAF_MM = 60.0  # long-stalked leaves of this size stand up from the water


def rises(s: Subject) -> bool:
    """Whether the leaves stand up instead of lying on the water."""
    long_stalk = s.traits.stalk == "long" and s.traits.leaf_length_mm.high > TALL_LEAF_MM
    return s.traits.leaf_shape in RISING or long_stalk


def root_length(s: Subject, f: TankFrame) -> float:
    """The longest root, mm; the records of floaters give it as their height too."""
    claim = s.traits.root_length_mm
    return min(claim.high if claim else s.height, f.surface - 8)


def flat(items: list[Item]) -> list[Item]:
    """What was drawn from above, seen from the side, just above the water."""
    return [moved(item, Affine(1, 0, 0, FLAT, 0, 0.6)) for item in items]


def floating_rosette(s: Subject, f: TankFrame, symbols: Symbols) -> list[Item]:
    """A mother plant and a daughter on a runner."""
    seen = cup(s, symbols) if rises(s) else flat(rosette_above(s, symbols))
    box = bounds(seen, symbols)
    width = min(max(s.spread / (box.right - box.left), 0.4), 1.5) if rises(s) else 1.0
    seen = [moved(item, Affine(width, 0, 0, 1, 0, 0)) for item in seen]
    gap = min(s.spread * 0.8, f.width * 0.34)
    reach = root_length(s, f)
    symbols.need("r", seen)
    symbols.need("h", hanging_roots(s, symbols, reach, 11, min(s.spread * 0.1, 22)))
    items: list[Item] = [
        Shape("runner", (curve((-gap * 0.4, 0), (gap * 0.15, -3), (gap * 0.6, 0)),))
    ]
    for x, size in ((gap * 0.62, 0.5), (-gap * 0.42, 1.0)):
        items += [Copy(name, placed((x, 0.0), 0, size, size)) for name in ("h", "r")]
    return items


def cup(s: Subject, symbols: Symbols) -> list[Item]:
    """Leaves rising all round from the water; the outer ones lie lower."""
    items: list[Item] = []
    number = 9
    for i in range(number):
        share, side = i / (number - 1), 1 if i % 2 else -1
        size = s.traits.leaf_length_mm.high * (1 - 0.4 * share)
        lean = side * (78 - 70 * share)
        reach = size + stalk_length(s, size) * 0.7
        if s.traits.stalk == "long":
            reach = size * 1.8
        spine = grow((0.0, 0.5), reach, veering(lean, -0.35 * lean), 14)
        tint = second(s, "underside") if i % 2 else second(s, "young-leaves") if share > 0.7 else ""
        items.append(
            ShapeGroup(tuple(stalked(s, symbols, spine, size, s.width * 0.8 * size / s.leaf)), tint)
        )
    return items


def hanging_roots(
    s: Subject, symbols: Symbols, reach: float, number: int, half: float
) -> list[Item]:
    """Roots hanging from the surface, the middle one longest, with fine side roots where they are long."""
    root: list[Item] = [
        Shape("root", (curve((0.0, 0.0), (reach * 0.015, -reach * 0.4), (0.0, -reach)),))
    ]
    if reach > FRINGED_MM:
        fringe = feathery(reach * 0.94, 7.0, FRINGES)[1:]
        root.append(
            Shape("root fine", tuple(path.mapped(lambda p: (p[0], -p[1])) for path in fringe))
        )
    symbols.need("q", root)
    items: list[Item] = []
    for i in range(number):
        share = i / (number - 1) * 2 - 1
        length = 1.0 if i == number // 2 else min(s.about(1 - 0.4 * abs(share), 0.12), 0.97)
        swing = -share * math.degrees(math.atan2(half, reach)) + s.chance.uniform(-1.5, 1.5)
        items.append(
            Copy("q", placed((share * half, 0.0), swing if i != number // 2 else 0.0, length))
        )
    return items


def floating_stem(s: Subject, f: TankFrame, symbols: Symbols) -> list[Item]:
    """Pieces of stem on the water; below each node the roots, or the cut leaf that serves as one."""
    piece = flat(stem_above(s, symbols))
    reach = root_length(s, f)
    box = bounds(piece, symbols)
    width = box.right - box.left
    symbols.need("h", hanging_roots(s, symbols, reach, 5, min(4.0, s.leaf * 0.25)))
    hung: list[Item] = []
    for i in range(5):
        size = 1.0 if i == 2 else s.about(0.75, 0.2)
        hung.append(Copy("h", placed((width * (i / 4 - 0.5) * 0.78, 0.0), 0, size)))
    symbols.need("p", [*hung, *piece])
    pieces = 3 if width < f.width * 0.3 else 2 if width < f.width * 0.45 else 1
    return [
        Copy("p", placed(((k - (pieces - 1) / 2) * width * 1.06, 0.0), 0)) for k in range(pieces)
    ]


def floating_frond(s: Subject, f: TankFrame, symbols: Symbols) -> list[Item]:
    """Many small plants over the water; those that stay under it as a loose net."""
    group = [shape for shape in frond_above(s) if isinstance(shape, Shape)]
    if hangs(s):
        return hanging_fronds(s, f, symbols, group)
    box = bounds(group, symbols)
    thin = Affine(1, 0, 0, max(FLAT, THINNEST_MM / (box.top - box.bottom)), 0, 0.6)
    symbols.need("g", [moved(shape, thin) for shape in group])
    reach = root_length(s, f)
    gap = max((box.right - box.left) * 1.05, f.width * 0.62 / 34)
    number = min(int(f.width * 0.62 / gap), 34)
    items, hang = [], []
    for i in range(number):
        x = (i - (number - 1) / 2) * gap + s.chance.uniform(-1, 1)
        items.append(place_frond(s, x, i))
        far = reach if i == number // 2 else reach * s.about(0.7, 0.3)
        middle = (x + s.chance.uniform(-1, 1), -far * 0.5)
        hang.append(curve((x, 0), middle, (x + s.chance.uniform(-2, 2), -min(far, reach))))
    return [Shape("root", tuple(hang)), *items]


def place_frond(s: Subject, x: float, i: int) -> Item:
    """One small plant."""
    side = 1 if i % 2 else -1
    size = s.about(1, 0.12)
    return Copy(
        "g",
        placed((x, 0.0), 0, size, size * side),
        second(s, "young-leaves", "old-leaves", "edge") if i % 4 == 0 else "",
    )
