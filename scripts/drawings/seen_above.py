"""Floating plants from above, mm, y away from the eye: one piece of each kind about the origin."""

from scripts.drawings.build import second
from scripts.drawings.geometry import Affine, Path, Point, Run, curve, grow, line, placed, polar
from scripts.drawings.leaves import form_of, leaf
from scripts.drawings.nodes import STALKS
from scripts.drawings.scene import Copy, Item, Shape, Symbols, bounds, moved
from scripts.drawings.size import Subject

ROSETTE_LEAVES = 9
GOLDEN = 137.5  # degrees between successive leaves of a rosette


def floating_leaf(s: Subject, symbols: Symbols) -> str:
    """One leaf with its stalk, as a symbol."""
    stalk = STALKS[s.traits.stalk] * s.leaf
    shapes = [
        moved(one, Affine(1, 0, 0, 1, 0, stalk)) for one in leaf(form_of(s.traits, s.leaf, s.width))
    ]
    parts = [one for one in shapes if isinstance(one, Shape)]
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
        moved(one, Affine(scale, 0, 0, scale, -middle[0] * scale, -middle[1] * scale))
        for one in items
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
        moved(one, Affine(1, 0, 0, 1, -(box.left + box.right) / 2, -(box.top + box.bottom) / 2))
        for one in items
    ]


def frond_above(s: Subject) -> list[Item]:
    """Fronds that hang together: a feathery cluster of scales, a chain, or a few broad ones."""
    if s.traits.leaf_shape == "scale":
        return scales(s)
    form = form_of(s.traits, s.leaf, s.width)
    if form.shape == "elliptic":  # a frond is round at both ends
        form = form._replace(shape="round")
    one = leaf(form)
    chain = s.traits.leaf_shape in CHAINED
    items: list[Item] = []
    for turn, size, start in CHAIN if chain else CLUSTER:
        base = (0.0, start * s.leaf)
        items += [moved(shape, placed(base, turn, size, size)) for shape in one]
    if chain:
        items += [moved(item, placed((0.0, s.leaf * 1.1), 8, 0.9, 0.9)) for item in list(items)]
    return items


CHAINED = ("lanceolate", "narrow-lanceolate", "oblong")  # fronds that stay joined by their stalks
# Each frond: direction, size, and where it hangs on the mother, in fronds from her base.
CHAIN = ((0, 1.0, 0.1), (75, 0.9, 0.5), (-75, 0.9, 0.5))
CLUSTER = ((72, 0.62, 0.24), (-66, 0.8, 0.2), (172, 0.55, 0.1), (0, 1.0, 0.0))


def scales(s: Subject) -> list[Item]:
    """Azolla's way: branches to both sides, each hidden by overlapping scales."""
    length = max(s.spread * 0.9, s.leaf * 6)
    size = min(max(s.leaf * 1.7, length / 10), length / 7)
    inner: list[Path] = []
    outer: list[Path] = []
    for i in range(BRANCHES):
        base = (0.0, length * (0.02 + 0.62 * i / BRANCHES))
        reach = length * (0.6 - 0.36 * i / BRANCHES)
        row = scale_row(base, (1 if i % 2 else -1) * (72 - 6 * i), reach, size)
        cut = len(row) // 3
        outer += row[:cut]
        inner += row[cut:]
    inner += scale_row((0.0, 0.0), 0.0, length * 0.92, size)
    rim = second(s, "edge", "old-leaves")
    parts = [(f"blade {rim}".strip(), outer), ("blade", inner)]
    return [
        Shape(css, tuple(one.mapped(lambda p: (p[0], p[1] - length / 2)) for one in paths))
        for css, paths in parts
    ]


BRANCHES = 9


def scale_row(base: Point, turn: float, reach: float, size: float) -> list[Path]:
    """Scales along one branch, its tip first."""
    number = max(int(reach / (size * 0.75)), 2)
    half = size / 2
    edge = ((0.0, 0.0), (half, half * 1.1), (0.0, half * 2.2), (-half, half * 1.1), (0.0, 0.0))
    one = Path((Run(edge, False),), closed=True)
    found = []
    for i in reversed(range(number)):
        point = polar(turn, reach * i / number, base)
        found += [one.mapped(placed(point, turn + side * 34).at) for side in (-1, 1)]
    return found
