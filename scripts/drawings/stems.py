"""Stem plants: upright in the soil, and adrift without roots."""

import math
from collections.abc import Callable

from scripts.drawings.geometry import Affine, placed
from scripts.drawings.leaves import THREADED
from scripts.drawings.nodes import count, node_symbols, stalk_of
from scripts.drawings.scene import Copy, Item, Shape, ShapeGroup, Symbols
from scripts.drawings.shared_shapes import (
    NO_CEILING,
    fit,
    grow_under,
    roots,
    second,
    stem_css,
    trace,
)
from scripts.drawings.size import Subject, TankFrame
from scripts.drawings.spine import Spine, veering

MOST_NODES = 31  # leaves further apart than in life show the same plant in less
YOUNG = 0.28  # share of a stem whose leaves are still growing
INTERNODE = 0.43  # between two nodes, in leaf lengths: middling light
CROWD = {"spiral": 0.4, "alternate": 0.55, "two-ranked": 0.5}  # single leaves stand closer
# Place, in gaps from the middle, and height of each stem of a bunch.
BUNCH = (
    *((0.0, 1.0), (1.0, 0.8), (-1.0, 0.9), (2.0, 0.62), (-2.0, 0.72)),
    *((3.0, 0.78), (-3.0, 0.58), (4.0, 0.5), (-4.0, 0.66)),
)
CROWDS = ((36.0, 3), (24.0, 5), (0.0, 9))  # from this gap on, mm: so many stems


def internode(s: Subject, length: float) -> float:
    """Between two nodes, mm."""
    crowd = CROWD.get(s.traits.arrangement, 1.0)
    broad = 0.0 if s.traits.leaf_shape in THREADED else s.width * 0.75
    return max(min(max(INTERNODE * s.leaf, broad, 2.5), 40.0) * crowd, length / MOST_NODES)


def leafy(
    s: Subject, spine: Spine, names: list[str], *, bare: float = 0.06, young: float = YOUNG
) -> list[Item]:
    """One stem with its leaves, oldest first."""
    step = internode(s, spine.length)
    thick = min(max(0.9, s.leaf * 0.05), 3.2)
    items: list[Item] = [Shape(stem_css(s), (trace(spine),), thick)]
    nodes = max(int(spine.length * (1 - bare) / step), 3)
    for i in range(nodes):
        share = i / (nodes - 1)
        point, turn = spine.at(spine.length * (bare + (1 - bare) * share))
        left = max(share - (1 - young), 0.0) / young
        size = s.about(1.0, 0.07) * (1 - 0.62 * left)
        slim = size * (1 - 0.5 * left)
        place = placed(point, turn + s.chance.uniform(-5, 5), size, slim)
        if count(s) == 1 and i % 2:
            place = place.after(MIRROR)
        tint = second(s, "young-leaves") if share > 0.7 else ""
        tint = tint or (second(s, "old-leaves") if share < 0.3 else "")
        items.append(Copy(names[i % len(names)], place, tint))
    return items


MIRROR = Affine(-1, 0, 0, 1, 0, 0)


def stem(s: Subject, f: TankFrame, symbols: Symbols) -> list[Item]:
    """A bunch of upright stems; what is taller than the water is deep runs on below the surface."""
    names = node_symbols(s, symbols)
    reach = s.leaf + stalk_of(s)
    gap = min(max(reach * 1.15, 10.0), 62.0)
    stems = BUNCH[: next(number for least, number in CROWDS if gap >= least)]
    ceiling = f.surface - min(reach * 0.5, 16.0)
    main = grow_under((0.0, 0.0), min(s.height, f.surface + 80.0), swaying(1.5, 7.0), ceiling)
    side = grow_under((0.0, 0.0), min(s.height, f.surface) * 0.94, swaying(3.5, 6.0), NO_CEILING)
    symbols.need("s", leafy(s, side, names))
    others = [
        Copy(
            "s",
            placed(
                (place * gap * s.about(1, 0.15), 0.0), place, share, math.copysign(share, place)
            ),
        )
        for place, share in reversed(stems)
        if place
    ]
    feet = [roots(s, other.place.e, 16) for other in others]
    grown = fit(leafy(s, main, names), symbols, top=min(s.height, f.surface))
    return [*feet, roots(s, 0.0, 16), ShapeGroup(tuple(others), "back"), *grown]


def swaying(lean: float, sway: float) -> Callable[[float], float]:
    """A heading that swings gently over from one side to the other."""
    return lambda t: lean + sway * (0.5 - t)


def rootless(s: Subject, f: TankFrame, symbols: Symbols) -> list[Item]:
    """Stems that drift: one from the depth up to the surface and along it, with branches."""
    names = node_symbols(s, symbols)
    ceiling = f.surface - s.leaf * 0.6
    length = min(s.height, f.surface * 1.35)
    low = max(f.surface - s.height, 0.0) if s.height < f.surface else 6.0
    main = grow_under((-f.width * 0.2, low), length, lambda t: 16 + 26 * t, ceiling)
    items: list[Item] = []
    for share, side in ((0.3, 1), (0.5, -1), (0.68, 1)):
        base, turn = main.at(length * share)
        twig = grow_under(
            base,
            length * 0.3,
            veering(turn + side * 42, -side * 20),
            ceiling,
        )
        items.append(
            ShapeGroup(tuple(leafy(s, twig, names, bare=0.12)), "back" if side < 0 else "")
        )
    items += leafy(s, main, names, bare=0.02)
    return fit(items, symbols, top=f.surface)
