"""The leaves of one node seen from the side, as symbols that a stem sets down many times."""

import math

from scripts.drawings.build import second
from scripts.drawings.geometry import Affine, line
from scripts.drawings.leaves import Form, form_of, leaf
from scripts.drawings.scene import Shape, Symbols, moved
from scripts.drawings.size import Subject

FLAT = 0.34  # how much of its depth a ring of leaves shows to an eye a little above it
SHORTEST = 0.36  # a leaf pointing at the eye is drawn at least this long
STALKS = {"none": 0.0, "short": 0.12, "long": 0.6}  # stalk, in lengths of the blade


def stalk_of(s: Subject) -> float:
    """The stalk of a stem leaf, mm."""
    return STALKS[s.traits.stalk] * s.leaf


def lay(form: Form, azimuth: float, rise: float, stalk: float = 0.0) -> Affine:
    """Sets a leaf at a node: azimuth 0 to the right, 90 towards the eye; ``rise`` above level."""
    turn, up = math.radians(azimuth), math.radians(rise)
    x = math.cos(turn) * math.cos(up)
    y = math.sin(up) - math.sin(turn) * FLAT * math.cos(up)
    far = math.hypot(x, y)
    if far < SHORTEST:
        x, y = (x * SHORTEST / far, y * SHORTEST / far) if far > 0.05 else (0.0, -SHORTEST)
        far = SHORTEST
    across = 0.72 + 0.28 * abs(math.sin(turn))
    return Affine(y / far * across, -x / far * across, x, y, x * stalk, y * stalk)


def ring(
    s: Subject, azimuths: list[float], rise: float, *, other: bool = False
) -> tuple[Shape, ...]:
    """Leaves about a node, those behind first."""
    form = form_of(s.traits, s.leaf, s.width)
    shapes: list[Shape] = []
    stalk = stalk_of(s)
    for azimuth in sorted(azimuths, key=lambda turn: math.sin(math.radians(turn))):
        place = lay(form, azimuth, rise, stalk)
        tinted = second(s, "underside") if other or math.sin(math.radians(azimuth)) > 0.5 else ""
        if stalk:
            shapes.append(stalk_shape(place, stalk, s.width))
        for one in leaf(form):
            set_down = moved(one, place)
            assert isinstance(set_down, Shape)
            css = f"{one.css} {tinted}".strip() if one.css in ("blade", "strand") else one.css
            shapes.append(set_down._replace(css=css))
    return merged(shapes)


def stalk_shape(place: Affine, stalk: float, width: float) -> Shape:
    """The stalk up to where the blade starts."""
    return Shape("stem", (line((0.0, 0.0), (place.e, place.f)),), min(max(0.6, width * 0.06), 1.6))


def merged(shapes: list[Shape]) -> tuple[Shape, ...]:
    """Threads of one look as one path; blades stay apart, since each hides what is behind it."""
    if any(one.css.startswith("blade") for one in shapes):
        return tuple(shapes)
    kinds: dict[tuple[str, float | None], tuple[object, ...]] = {}
    for one in shapes:
        kinds[one.css, one.stroke] = (*kinds.get((one.css, one.stroke), ()), *one.paths)
    return tuple(Shape(css, paths, stroke) for (css, stroke), paths in kinds.items())  # type: ignore[arg-type]


def count(s: Subject) -> int:
    """Leaves at a node; no more than can be told apart in a picture."""
    if s.traits.arrangement == "whorled":
        whorl = s.traits.whorl
        return round((whorl.low + whorl.high) / 2) if whorl else 4
    return {"opposite": 2, "floating-pair": 2}.get(s.traits.arrangement, 1)


def node_symbols(s: Subject, symbols: Symbols) -> list[str]:
    """The nodes in the order in which they follow each other up a stem."""
    leaves = count(s)
    if leaves == 1:
        if s.traits.arrangement == "spiral":
            symbols.need("a", ring(s, [10, 130, 250], 30))
            symbols.need("b", ring(s, [65, 165, 290], 18))
            return ["a", "b"]
        return [symbols.need("a", ring(s, [12], 32))]
    step = 360 / leaves
    turn = 90 / leaves if leaves > 2 else 0
    symbols.need("a", ring(s, [turn + step * i for i in range(leaves)], 26))
    other = 90.0 if leaves == 2 else turn + step / 2
    symbols.need("b", ring(s, [other + step * i for i in range(leaves)], 26))
    return ["a", "b"]
