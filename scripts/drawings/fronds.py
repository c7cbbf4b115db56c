"""Fronds from above: duckweeds in clusters or chains, and the scaly fronds of Azolla."""

from scripts.drawings.build import second
from scripts.drawings.geometry import Path, Point, Run, placed, polar
from scripts.drawings.leaves import form_of, leaf
from scripts.drawings.scene import Item, Shape, moved
from scripts.drawings.size import Subject


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
