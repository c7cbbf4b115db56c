"""Floating plants from above, mm, y away from the eye: one piece of each kind about the origin."""

from scripts.drawings.geometry import Affine, curve, line, placed
from scripts.drawings.leaves import form_of, leaf
from scripts.drawings.nodes import STALKS
from scripts.drawings.scene import Copy, Item, Shape, Symbols, bounds, moved
from scripts.drawings.shared_shapes import second
from scripts.drawings.size import Subject
from scripts.drawings.spine import grow

ROSETTE_LEAVES = 9
GOLDEN = 137.5  # degrees between successive leaves of a rosette


def floating_leaf(s: Subject, symbols: Symbols) -> str:
    """One leaf with its stalk, as a symbol."""
    stalk = STALKS[s.traits.stalk] * s.leaf
    shapes = [
        moved(shape, Affine(1, 0, 0, 1, 0, stalk))
        for shape in leaf(form_of(s.traits, s.leaf, s.width))
    ]
    parts = [shape for shape in shapes if isinstance(shape, Shape)]
    if s.traits.surface == "hairy":
        parts.append(hairs(s, stalk))
    if s.traits.surface == "folded":
        parts.append(
            Shape(
                "fold",
                (line((0, stalk + s.leaf * 0.08), (0, stalk + s.leaf * 0.92)),),
                s.width * 0.09,
            )
        )
    if stalk:
        parts.insert(0, Shape("stem", (line((0, 0), (0, stalk)),), max(0.9, s.width * 0.08)))
    return symbols.need("l", parts)


def hairs(s: Subject, stalk: float) -> Shape:
    """Rows of hairs as dots."""
    dots = []
    for row in range(1, 6):
        y = stalk + s.leaf * (0.12 + 0.14 * row)
        for column in (0.14, 0.28):
            dots += [
                line((side * column * s.width, y), (side * column * s.width, y + 0.1))
                for side in (-1, 1)
            ]
    return Shape("hair", tuple(dots), max(s.leaf * 0.04, 0.3))


def rosette_above(s: Subject, symbols: Symbols) -> list[Item]:
    """Leaves all round, the young ones on top in the middle, to its spread."""
    name = floating_leaf(s, symbols)
    items: list[Item] = []
    for i in range(ROSETTE_LEAVES):
        share = i / (ROSETTE_LEAVES - 1)
        size = (1 - 0.62 * share) * s.about(1, 0.06)
        tint = (
            second(s, "young-leaves")
            if share > 0.7
            else second(s, "old-leaves")
            if share < 0.2
            else ""
        )
        items.append(Copy(name, placed((0.0, 0.0), GOLDEN * i + 20, size, size), tint))
    box = bounds(items, symbols)
    scale = s.spread / max(box.right - box.left, box.top - box.bottom)
    middle = ((box.left + box.right) / 2, (box.top + box.bottom) / 2)
    scale = min(max(scale, 0.5), 2.5)
    return [
        moved(item, Affine(scale, 0, 0, scale, -middle[0] * scale, -middle[1] * scale))
        for item in items
    ]


def stem_above(s: Subject, symbols: Symbols) -> list[Item]:
    """A floating stem with leaves on both sides, smallest at its tip."""
    name = floating_leaf(s, symbols)
    gap = s.width * 0.86
    nodes = min(max(int(s.spread / gap), 3), 9)
    length = gap * (nodes - 0.4)
    axis = grow((-length / 2, 0.0), length, lambda t: 78 + 26 * t, 12)
    items: list[Item] = [
        Shape(
            "stem",
            (curve(*(axis.at(length * k / 5)[0] for k in range(6))),),
            max(0.8, s.width * 0.08),
        )
    ]
    pair = s.traits.arrangement in ("floating-pair", "opposite", "whorled")
    for i in range(nodes):
        point, turn = axis.at(length * (0.06 + 0.94 * i / (nodes - 1)))
        size = 1 - 0.6 * max(i / (nodes - 1) - 0.55, 0) / 0.45
        for side in (-1, 1) if pair else ((-1, 1)[i % 2],):
            tint = (
                second(s, "young-leaves")
                if size < 0.8
                else second(s, "old-leaves")
                if i < 2
                else ""
            )
            items.append(
                Copy(
                    name,
                    placed(
                        point, turn + side * (74 - 22 * (1 - size)), size * s.about(1, 0.05), size
                    ),
                    tint,
                )
            )
    box = bounds(items, symbols)
    return [
        moved(item, Affine(1, 0, 0, 1, -(box.left + box.right) / 2, -(box.top + box.bottom) / 2))
        for item in items
    ]
