"""The leaves of one node seen from the side, as symbols that a stem sets down many times."""

import math

from scripts.drawings.geometry import Affine, line
from scripts.drawings.leaves import form_of, leaf
from scripts.drawings.scene import Copy, Item, Shape, Symbols
from scripts.drawings.shared_shapes import second
from scripts.drawings.size import Subject

FLAT = 0.34  # how much of its depth a ring of leaves shows to an eye a little above it
SHORTEST = 0.36  # a leaf pointing at the eye is drawn at least this long
STALKS = {"none": 0.0, "short": 0.12, "long": 0.6}  # stalk, in lengths of the blade


def stalk_of(s: Subject) -> float:
    """The stalk of a stem leaf, mm."""
    return STALKS[s.traits.stalk] * s.leaf


def lay(azimuth: float, rise: float, stalk: float = 0.0) -> Affine:
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


def ring(s: Subject, symbols: Symbols, azimuths: list[float], rise: float) -> list[Item]:
    """Leaves about a node, those behind first."""
    symbols.need("l", leaf(form_of(s.traits, s.leaf, s.width)))
    items: list[Item] = []
    stalk = stalk_of(s)
    for azimuth in sorted(azimuths, key=lambda turn: math.sin(math.radians(turn))):
        place = lay(azimuth, rise, stalk)
        tinted = second(s, "underside") if math.sin(math.radians(azimuth)) > 0.5 else ""
        if stalk:
            items.append(stalk_shape(place, s.width))
        items.append(Copy("l", place, tinted))
    return items


def stalk_shape(place: Affine, width: float) -> Shape:
    """The stalk up to where the blade starts."""
    return Shape("stem", (line((0.0, 0.0), (place.e, place.f)),), min(max(0.6, width * 0.06), 1.6))


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
            symbols.need("a", ring(s, symbols, [10, 130, 250], 30))
            symbols.need("b", ring(s, symbols, [65, 165, 290], 18))
            return ["a", "b"]
        return [symbols.need("a", ring(s, symbols, [12], 32))]
    step = 360 / leaves
    turn = 90 / leaves if leaves > 2 else 0
    symbols.need("a", ring(s, symbols, [turn + step * i for i in range(leaves)], 26))
    other = 90.0 if leaves == 2 else turn + step / 2
    symbols.need("b", ring(s, symbols, [other + step * i for i in range(leaves)], 26))
    return ["a", "b"]
