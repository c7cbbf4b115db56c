"""Low plants: creeping stems with stalked leaves, and carpets."""

from collections.abc import Callable

from scripts.drawings.geometry import Path, curve, placed
from scripts.drawings.leaves import form_of, leaf
from scripts.drawings.nodes import count, node_symbols, ring
from scripts.drawings.scene import Copy, Item, Shape, ShapeGroup, Symbols, moved
from scripts.drawings.shared_shapes import (
    NO_CEILING,
    fit,
    grow_under,
    leaf_at_end,
    mass,
    roots,
    second,
    stem_css,
    stretched_to_height,
    trace,
)
from scripts.drawings.size import Subject, TankFrame
from scripts.drawings.spine import Spine, grow, veering
from scripts.drawings.stems import leafy

CLIMBERS = ("kidney", "round", "heart")  # stalked leaves on stems that climb
CLIMBS_FROM = 4.5  # a plant higher than so many leaves climbs
MOST_SPRIGS = 60


def creeping(s: Subject, f: TankFrame, symbols: Symbols) -> list[Item]:
    """Stems along the soil, rooting at the nodes; long-stalked leaves stand, others climb with the tip."""
    top = min(s.height, f.surface)
    climbs = s.traits.leaf_shape in CLIMBERS and top > CLIMBS_FROM * s.leaf
    if s.traits.stalk == "long" and not climbs:
        return fit(umbrellas(s, f, top, symbols), symbols, top=top)
    return climbing(s, f, top, symbols)


def umbrellas(s: Subject, f: TankFrame, top: float, symbols: Symbols) -> list[Item]:
    """One leaf at a node on a stalk of its own."""
    leaf_at_end(s, symbols)
    gap = min(max(s.width * 0.6, 10.0), 40.0)
    nodes = min(int(f.width * 0.62 / gap), 13)
    half = gap * (nodes - 1) / 2
    runner = curve(*((-half + gap * i, 1.2 + (i % 2) * 1.4) for i in range(nodes)), (half + gap, 3))
    items: list[Item] = [Shape(stem_css(s), (runner,), max(1.0, s.width * 0.05))]
    for i in range(nodes):
        x = -half + gap * i
        age = 1 - 0.55 * max(i - nodes * 0.6, 0) / (nodes * 0.4)
        tall = (
            (1.0 if i == nodes // 2 else s.about(0.72, 0.22))
            * age
            * max(top - s.leaf * 0.3, s.leaf)
        )
        lean = s.chance.uniform(-16, 16)
        stalk = grow((x, 1.5), tall, veering(lean, -1.2 * lean))
        items.append(roots(s, x, 11, 3))
        items.append(Shape("stem", (trace(stalk, count=4),), max(0.8, s.width * 0.035)))
        end, _ = stalk.at(stalk.length)
        turn = s.chance.uniform(-14, 14)
        items.append(
            Copy(
                "top",
                placed(end, turn, age, age * (1 if i % 2 else -1)),
                second(s, "young-leaves") if age < 0.8 else "",
            )
        )
    return items


def climbing(s: Subject, f: TankFrame, top: float, symbols: Symbols) -> list[Item]:
    """Stems that lie down, root, and turn up at the end."""
    names = node_symbols(s, symbols)
    lying, ceiling = f.width * 0.26, f.surface - s.leaf * 0.3
    main = grow_under((0.0, 0.0), lying + top, rising(lying / (lying + top)), ceiling)
    short = lying + top * 0.64
    side = grow_under((0.0, 0.0), short, rising(lying / short), NO_CEILING)
    symbols.need("s", leafy(s, side, names, bare=0.02))
    others = tuple(
        Copy("s", placed((x * f.width, 0.0), 0, size, mirror * size))
        for x, size, mirror in ((-0.08, 1.0, -1), (0.12, 0.9, 1))
    )
    stem = leafy(s, main, names, bare=0.02)
    left = -0.22 * f.width
    feet = [roots(s, left + lying * k / 4, 11, 3) for k in range(6)]
    stems: list[Item] = [
        ShapeGroup(others, "back"),
        *(moved(shape, placed((left, 0.0), 0)) for shape in stem),
    ]
    return [*feet, *stretched_to_height(stems, symbols, top)]


def rising(turn: float) -> Callable[[float], float]:
    """A heading along the soil that turns up about a share of the way."""
    return lambda t: 86 - 74 * min(max((t - turn * 0.7) / 0.25, 0.0), 1.0)


def carpet(s: Subject, f: TankFrame, symbols: Symbols) -> list[Item]:
    """A mat of short sprigs: those behind stand higher in the picture."""
    top = min(s.height, f.surface)
    sprig_symbols(s, symbols, top)
    half = f.width * 0.36
    number = min(max(int(half * 2 / max(s.leaf * 0.9, top * 0.16)), 14), MOST_SPRIGS // 3)
    runner = Shape("runner", (curve((-half, -1.0), (0.0, -2.0), (half * 1.05, -1.0)),))
    items: list[Item] = [
        mass(half, top * 0.55),
        runner,
        *(roots(s, half * (i - 3) / 3.4, 11, 3) for i in range(7)),
    ]
    for row, tall in ((0, 1.0), (1, 0.8), (2, 0.55)):
        copies: list[Item] = []
        for i in range(number):
            share = (i + row % 2 * 0.5) / (number - 0.5) * 2 - 1
            edge = 1 - 0.5 * abs(share) ** 3
            size = s.about(tall, 0.13) * edge
            place = placed((share * half, 0.0), share * 16 + s.chance.uniform(-9, 9), size, size)
            tint = second(s, "young-leaves") if i % 3 == 0 else ""
            copies.append(Copy("sa" if i % 2 else "sb", place, tint))
        items += [ShapeGroup(tuple(copies), "back")] if row == 0 else copies
    return fit(items, symbols, top=top)


def sprig_symbols(s: Subject, symbols: Symbols, top: float) -> None:
    """Two sprigs: a short stem with its nodes, or where leaves rise from the runner, the leaves."""
    for name, lean in (("sa", 7.0), ("sb", -9.0)):
        spine = grow((0.0, 0.0), top * 0.9, veering(1.4 * lean, -2 * lean), 8)
        basal = count(s) == 1 or s.leaf > top * 0.55
        symbols.need(name, blades(s, top, lean) if basal else sprig(s, symbols, spine))


def sprig(s: Subject, symbols: Symbols, spine: Spine) -> list[Item]:
    """A short upright stem, leaves close together."""
    items: list[Item] = [Shape("stem", (trace(spine, count=4),), max(0.5, s.leaf * 0.06))]
    nodes = min(max(int(spine.length / (s.leaf * 0.7)), 3), 8)
    leaves = count(s)
    for name, azimuth in (("a", 20.0), ("b", 100.0)):
        around = [azimuth + 360 / leaves * k for k in range(leaves)]
        symbols.need(name, ring(s, symbols, around, 30))
    for i in range(nodes):
        point, turn = spine.at(spine.length * (0.15 + 0.85 * i / (nodes - 1)))
        size = 1 - 0.25 * i / nodes
        items.append(Copy("b" if i % 2 else "a", placed(point, turn, size, size)))
    return items


def blades(s: Subject, top: float, lean: float) -> list[Shape]:
    """Leaves straight from the runner, as long as the carpet is high."""
    shapes: list[Shape] = []
    for turn, share in ((-24 + lean, 0.8), (22 + lean, 0.86), (lean, 1.0)):
        place = placed((turn * 0.04, 0.0), turn)
        for shape in leaf(form_of(s.traits, max(top * share, s.leaf * 0.6), s.width)):
            paths: tuple[Path, ...] = tuple(path.mapped(place.at) for path in shape.paths)
            shapes.append(Shape(shape.css, paths, shape.stroke))
    return shapes
