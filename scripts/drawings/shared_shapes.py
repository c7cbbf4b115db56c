"""What the habits share: axes that stop below the surface, leaves along an axis, roots, a fit to size."""

import math
from collections.abc import Callable, Iterable

from scripts.drawings.geometry import Affine, Path, Point, Run, curve, placed, polar
from scripts.drawings.leaves import form_of, leaf
from scripts.drawings.outlines import SIDES
from scripts.drawings.scene import Copy, Item, Shape, Symbols, bounds, moved
from scripts.drawings.size import Subject
from scripts.drawings.spine import Spine

NO_CEILING = 1e6  # mm; for what grows in free water or in the air
SINK_MM = 12.0  # how far leaves that lie on the soil towards the eye reach below its edge
STIFF_MM = 15.0  # a shorter line stays straight
EASE = 0.3  # share of the water left above that one step of an axis may take
BROAD_EASE = 0.13  # the same for a broad blade, which bends in a wider arc


def grow_under(
    base: Point,
    length: float,
    heading: Callable[[float], float],
    ceiling: float,
    ease: float = EASE,
) -> Spine:
    """An axis that turns aside below ``ceiling`` and runs along it, as leaves do at the surface."""
    steps = 28
    step = length / steps
    points = [base]
    side = 1.0 if heading(0.5) >= 0 else -1.0
    for i in range(steps):
        degrees = heading((i + 0.5) / steps)
        room = max(ceiling - points[-1][1], 0.0) * ease / step
        if math.cos(math.radians(degrees)) > room:
            degrees = side * math.degrees(math.acos(min(room, 1.0)))
        points.append(polar(degrees, step, points[-1]))
    return Spine(tuple(points), step)


def bent(shapes: Iterable[Shape], spine: Spine, start: float = 0.0) -> list[Shape]:
    """Shapes that grow straight up, laid along an axis from a distance on."""

    def bend(path: Path) -> Path:
        return supple(path).mapped(lambda point: spine.bend(point, start))

    return [shape._replace(paths=tuple(map(bend, shape.paths))) for shape in shapes]


def supple(path: Path) -> Path:
    """A straight line gets points on its way, so that it can bend."""
    if len(path.runs) > 1 or len(path.runs[0].points) > 2:
        return path
    (x0, y0), (x1, y1) = path.runs[0].points
    if math.hypot(x1 - x0, y1 - y0) < STIFF_MM:
        return path
    return curve(*((x0 + (x1 - x0) * k / 4, y0 + (y1 - y0) * k / 4) for k in range(5)))


def trace(spine: Spine, start: float = 0.0, end: float | None = None, count: int = 7) -> Path:
    """The axis itself as a smooth line."""
    stop = spine.length if end is None else end
    return curve(*(spine.at(start + (stop - start) * i / (count - 1))[0] for i in range(count)))


def stalked(s: Subject, symbols: Symbols, spine: Spine, length: float, width: float) -> list[Item]:
    """A leaf whose stalk fills what the blade leaves of the axis.

    A plain blade bends with the axis; a divided one has too many parts for that and is copied.
    """
    start = max(spine.length - length, 0.0)
    items: list[Item] = []
    if start > length * 0.04:
        stroke = min(max(0.9, width * 0.07), 3.5)
        items.append(Shape(stem_css(s), (trace(spine, 0, start * 1.02, 5),), stroke))
    form = form_of(s.traits, length, width)
    if s.traits.leaf_shape in SIDES:
        return items + list(bent(leaf(form), spine, start))
    symbols.need("l", leaf(form_of(s.traits, s.leaf, s.width)))
    base, turn = spine.at(start)
    _, tip = spine.at(spine.length)
    place = placed(base, (turn + tip) / 2, length / s.leaf, width / s.width)
    return [*items, Copy("l", place)]


def stem_css(s: Subject) -> str:
    """Classes of stems and stalks."""
    if s.traits.colour_where == "stem" and s.traits.colour_second:
        return f"strand leaf-{s.traits.colour_second}"
    return "stem"


def second(s: Subject, *places: str) -> str:
    """The class of the second colour, where the record has it in one of these places."""
    where, colour = s.traits.colour_where, s.traits.colour_second
    return f"leaf-{colour}" if colour and where in places else ""


def roots(s: Subject, x: float, reach: float, count: int = 5) -> Shape:
    """Roots in the soil."""
    paths = []
    for i in range(count):
        turn = 180 + (i - (count - 1) / 2) * 70 / count
        far = s.about(reach, 0.25)
        middle = polar(turn + s.chance.uniform(-14, 14), far * 0.5, (x, 0.0))
        paths.append(curve((x, 0.0), middle, polar(turn, far, (x, 0.0))))
    return Shape("root", tuple(paths))


def fit(
    items: list[Item], symbols: Symbols, *, top: float | None = None, spread: float | None = None
) -> list[Item]:
    """Stretches a plant standing on height 0 to its height, and to its spread about x = 0."""
    box = bounds(items, symbols)
    tall = top / box.top if top else 1.0
    wide = min(spread / (box.right - box.left), 1.35) if spread else 1.0
    move = Affine(wide, 0, 0, tall, 0, 0)
    return [moved(item, move) for item in items]


def set_down(items: Iterable[Item], x: float, y: float = 0.0, scale: float = 1.0) -> list[Item]:
    """Items set down elsewhere, smaller or larger; a negative scale mirrors them too."""
    return [moved(item, placed((x, y), 0, abs(scale), scale)) for item in items]


def leaf_at_end(s: Subject, symbols: Symbols) -> str:
    """The symbol of a blade on an upright stalk's end, tilted towards the eye."""
    tilt = 0.5 if s.traits.leaf_shape in ("peltate", "round", "kidney", "lobed", "clover") else 0.8
    place = Affine(1, 0, 0, tilt, 0, 0)
    shapes = [moved(shape, place) for shape in leaf(form_of(s.traits, s.leaf, s.width))]
    return symbols.need("top", [shape for shape in shapes if isinstance(shape, Shape)])


def mass(half: float, height: float) -> Shape:
    """The inside of a mat or cushion, where single shoots can no longer be told apart."""
    low = ((-half * 1.04, 0.0), (-half * 0.9, height * 0.8), (-half * 0.4, height))
    points = (*low, *((-x, y) for x, y in reversed(low)))
    return Shape("mass", (Path((Run(points), Run((points[-1], points[0]), False)), closed=True),))


def stretched_to_height(items: list[Item], symbols: Symbols, top: float) -> list[Item]:
    """Stretches what creeps over the soil to its height; its nearer leaves cover the soil's edge."""
    box = bounds(items, symbols)
    tall = (top + SINK_MM) / (box.top - box.bottom)
    place = Affine(1, 0, 0, tall, 0, -SINK_MM - box.bottom * tall)
    return [moved(item, place) for item in items]
