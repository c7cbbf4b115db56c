"""Fronds from above: duckweeds in clusters or chains on stalks, and the scaly fronds of Azolla."""

from scripts.drawings.geometry import Path, Point, Run, line, placed, polar
from scripts.drawings.leaves import form_of, leaf
from scripts.drawings.scene import Item, Shape, moved
from scripts.drawings.shared_shapes import second
from scripts.drawings.size import Subject


def frond_above(s: Subject) -> list[Item]:
    """Fronds that hang together: a feathery cluster of scales, a chain, or a few broad ones."""
    if s.traits.leaf_shape == "scale":
        return scales(s)
    form = form_of(s.traits, s.leaf, s.width)
    if form.shape == "elliptic":  # a frond is round at both ends
        form = form._replace(shape="round")
    frond = leaf(form)
    if hangs(s):
        return chain(s, frond, (0.0, 0.0), 0.0, 1.0, GENERATIONS)
    items: list[Item] = []
    for turn, size, start in CLUSTER:
        base = (0.0, start * s.leaf)
        items += [moved(shape, placed(base, turn, size, size)) for shape in frond]
    return items


def hangs(s: Subject) -> bool:
    """Whether the fronds hang below the surface in chains, on stalks, instead of lying on it."""
    return s.traits.arrangement == "branching" and s.traits.stalk != "none"


# Each frond: direction, size, and where it hangs on the mother, in fronds from her base.
CLUSTER = ((72, 0.62, 0.24), (-66, 0.8, 0.2), (172, 0.55, 0.1), (0, 1.0, 0.0))
GENERATIONS = 2  # of daughters, and theirs, that still hang on the first frond
POUCH = 0.28  # where a daughter leaves the mother, in fronds from her base
STALK = 0.62  # a daughter's stalk, in fronds
CROSSWISE = 68.0  # degrees between mother and daughter
YOUNGER = 0.84  # size of a daughter, in mothers


def chain(
    s: Subject, frond: tuple[Shape, ...], base: Point, turn: float, size: float, left: int
) -> list[Item]:
    """A frond with a daughter on a stalk to each side, and theirs; the youngest lie at the back."""
    pouch = polar(turn, POUCH * s.leaf * size, base)
    items: list[Item] = []
    for side in (-1, 1) if left else ():
        away = turn + side * CROSSWISE
        end = polar(away, STALK * s.leaf * size, pouch)
        items += chain(s, frond, end, away, size * YOUNGER, left - 1)
        items.append(Shape("stem", (line(pouch, polar(away, 0.3, end)),), s.width * 0.09))
    return items + [moved(shape, placed(base, turn, size, size)) for shape in frond]


def scales(s: Subject) -> list[Item]:
    """Azolla's way: branches to both sides, each hidden by scales that overlap like tiles."""
    length = min(max(s.spread * 0.9, s.leaf * 6), s.leaf * USUAL_SCALES)
    size = max(s.leaf * 1.6, length / 12)
    inner: list[Path] = []
    outer: list[Path] = []
    for i in range(BRANCHES):
        base = (0.0, length * (0.02 + 0.7 * i / BRANCHES))
        reach = length * (0.52 - 0.36 * i / BRANCHES)
        row = scale_row(base, (1 if i % 2 else -1) * (60 - 3 * i), reach, size)
        cut = len(row) // 4
        outer += row[:cut]
        inner += row[cut:]
    inner += scale_row((0.0, 0.0), 0.0, length * 0.9, size)
    rim = second(s, "edge", "old-leaves")
    parts = [(f"blade {rim}".strip(), outer), ("blade", inner)]
    return [
        Shape(css, tuple(path.mapped(lambda p: (p[0], p[1] - length / 2)) for path in paths))
        for css, paths in parts
    ]


BRANCHES = 7
USUAL_SCALES = 24  # a usual plant's length in scales; crowded ones grow longer
OVERLAP = 0.8  # step from scale to scale, in scales
SCALE = ((0.0, 0.0), (0.48, 0.4), (0.34, 0.9), (-0.34, 0.9), (-0.48, 0.4), (0.0, 0.0))


def scale_row(base: Point, turn: float, reach: float, size: float) -> list[Path]:
    """Round scales to both sides of one branch, its tip first, so that each covers the next one's foot."""
    number = max(int(reach / (size * OVERLAP)), 2)
    scale_path = Path((Run(tuple((x * size, y * size) for x, y in SCALE), True),), closed=True)
    paths = []
    for i in reversed(range(number)):
        point = polar(turn, reach * i / number, base)
        paths += [scale_path.mapped(placed(point, turn + side * 38).at) for side in (-1, 1)]
    return paths
