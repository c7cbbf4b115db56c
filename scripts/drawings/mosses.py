"""Mosses and flat thalli: a cushion on a stone, or a mat below the surface."""

from scripts.drawings.geometry import Affine, Path, Run, line, placed, polar
from scripts.drawings.leaves import THINNEST_MM, form_of, leaf
from scripts.drawings.scene import Copy, Item, Shape, ShapeGroup, Symbols, bounds, moved
from scripts.drawings.shared_shapes import fit, mass, second, trace
from scripts.drawings.size import Subject, TankFrame
from scripts.drawings.spine import Spine, grow, veering

STONE_MM = 34.0  # how far the top of the stone lies above the cap, at least
LONG_SHOOT_MM = 70.0  # longer shoots stand up, so as to stay off the soil
DROP = 0.16  # how far a stone's shoulder falls away, in half-widths


def stone(half: float, height: float) -> Path:
    """A round stone whose top is at height 0."""
    low = -height
    right = (
        (0.0, 0.0),
        (half * 0.5, -DROP * half * 0.3),
        (half * 0.86, -DROP * half),
        (half, low * 0.75),
        (half * 0.96, low),
    )
    left = tuple((-x * 1.04, y * 0.96 if y > low else y) for x, y in right[::-1])
    return Path((Run(right), Run((right[-1], left[0]), False), Run(left)), closed=True)


def moss_half(s: Subject) -> float:
    """Half the width of the stone, mm."""
    return min(max(s.spread * 0.5, 55.0), 110.0)


def moss(s: Subject, f: TankFrame, symbols: Symbols) -> list[Item]:
    """A cushion of branching shoots on a stone."""
    length = min(max(s.height * 0.9, 14.0), 130.0, f.surface * 0.8)
    for name, wild in (("m", 0.0), ("n", 1.0)):
        symbols.need(name, shoot(s, length, wild))
    return fit(
        [
            mass(moss_half(s) * 0.75, length * 0.5),
            *cushion(s, symbols, moss_half(s) * 0.9, ("m", "n")),
        ],
        symbols,
        top=min(s.height, f.surface),
    )


def cushion(s: Subject, symbols: Symbols, half: float, names: tuple[str, str]) -> list[Item]:
    """Copies of two symbols over the top of a stone, those behind first."""
    items: list[Item] = []
    lean = 74 if bounds([Copy(names[0], Affine())], symbols).top < LONG_SHOOT_MM else 42
    for row, number, size in ((0, 15, 1.0), (1, 13, 0.8), (2, 10, 0.55)):
        copies: list[Item] = []
        for i in range(number):
            share = (i + 0.5 * (row % 2)) / (number - 0.5) * 2 - 1
            base = (share * half, -DROP * half * share * share * 0.9 - row * 3 - 1)
            turn = share * lean + s.chance.uniform(-16, 16)
            big = s.about(size, 0.16)
            place = placed(base, turn, big, big * (1 if s.chance.random() < 0.5 else -1))
            tint = second(s, "young-leaves") if i % 4 == 1 else ""
            copies.append(Copy(names[i % 2], place, tint))
        items += [ShapeGroup(tuple(copies), "back")] if row == 0 else copies
    return items


def shoot(s: Subject, length: float, wild: float, *, fine: bool = False) -> list[Shape]:
    """A moss shoot: an axis, side branches, and leaves too small to draw but as dashes."""
    axis = grow((0.0, 0.0), length, lambda t: (18 - 36 * t) * (1 if wild else -0.8), 10)
    gap = max(length / (11 if fine else 9), 3.0)
    lines, dashes = [trace(axis, count=5)], dashes_along(s, axis, fine)
    side, far = 1, gap * 1.2
    while far < length * 0.92:
        point, turn = axis.at(far)
        reach = gap * (2.6 - 1.5 * far / length) * (1 + wild * s.chance.uniform(-0.45, 0.3))
        twig = grow(point, reach, veering(turn + side * 62, -side * 18), 6)
        lines.append(trace(twig, count=3))
        dashes += dashes_along(s, twig, fine)
        side, far = -side, far + gap * (0.62 if wild else 0.55)
    return [Shape("strand", (*lines, *dashes), max(s.width * 0.7, THINNEST_MM if fine else 0.65))]


def dashes_along(s: Subject, axis: Spine, fine: bool) -> list[Path]:
    """Leaves along an axis, on both sides."""
    size = max(s.leaf, 1.4 if fine else 2.6)
    number = max(int(axis.length / (size * 0.95)), 2)
    dashes = []
    for i in range(1, number + 1):
        point, turn = axis.at(axis.length * i / number)
        ends = [polar(turn + side * 46, size, point) for side in (-1, 1)]
        dashes.append(line(ends[0], point, ends[1]))
    return dashes


def thallus(s: Subject, f: TankFrame, symbols: Symbols) -> list[Item]:
    """Forked bands in a loose heap on a stone, or in a mat below the surface."""
    for name, turn in (("t", 5.0), ("u", -8.0)):
        place = placed((0.0, 0.0), turn)
        shapes = leaf(form_of(s.traits, s.leaf, s.width))
        symbols.need(
            name,
            [Shape(x.css, tuple(p.mapped(place.at) for p in x.paths), x.stroke) for x in shapes],
        )
    top = min(s.height, f.surface)
    if s.plant.habit != "floater":
        return fit(cushion(s, symbols, moss_half(s) * 0.85, ("t", "u")), symbols, top=top)
    half = f.width * 0.3
    items: list[Item] = []
    for i in range(44):
        share = (i * 0.618) % 1 * 2 - 1
        depth = -(i % 4 + 0.6) / 4 * top * (1 - 0.6 * share * share)
        place = placed((share * half, depth * 0.55), s.chance.uniform(-100, 100))
        items.append(Copy("t" if i % 2 else "u", place))
    return mat(items, symbols, top)


def mat(items: list[Item], symbols: Symbols, thick: float) -> list[Item]:
    """Fits a mat between the surface at height 0 and its thickness below."""
    box = bounds(items, symbols)
    scale = thick / (box.top - box.bottom)
    return [moved(item, Affine(1, 0, 0, scale, 0, -box.top * scale)) for item in items]
