"""Plants with roots in the water and leaves in the air above it."""

from collections.abc import Callable

from scripts.drawings.floating import hanging_roots
from scripts.drawings.geometry import placed
from scripts.drawings.nodes import node_symbols
from scripts.drawings.rosettes import crown
from scripts.drawings.scene import Copy, Item, Shape, ShapeGroup, Symbols
from scripts.drawings.shared_shapes import NO_CEILING, fit, roots, trace
from scripts.drawings.size import TALLEST_MM, Subject, TankFrame
from scripts.drawings.spine import grow
from scripts.drawings.stems import leafy, swaying

BASAL = ("basal", "tuft", "two-ranked")
ROOT_MM = 120.0  # hanging roots of a cutting, where the record gives none


def marginal(s: Subject, f: TankFrame, symbols: Symbols) -> list[Item]:
    """A crown or stems; the base is the cap, or the water's surface for roots that hang."""
    top = min(s.height, TALLEST_MM)
    if s.traits.arrangement in BASAL:
        grown = fit(
            crown(s, symbols, NO_CEILING), symbols, top=top, spread=min(s.spread, f.width * 0.9)
        )
    elif s.traits.arrangement == "whorled":
        grown = fit(umbels(s, top, symbols), symbols, top=top)
    else:
        grown = fit(bunch(s, top, symbols), symbols, top=top)
    return [*feet(s, f, symbols), *grown]


def feet(s: Subject, f: TankFrame, symbols: Symbols) -> list[Item]:
    """Roots in the soil, or hanging in the water."""
    if s.plant.roots == "in-soil":
        return [roots(s, 0.0, 24, 7)]
    claim = s.traits.root_length_mm
    reach = min(claim.high if claim else ROOT_MM, f.surface - 10)
    return hanging_roots(s, symbols, reach, 9, 16)


def bunch(s: Subject, top: float, symbols: Symbols) -> list[Item]:
    """Three stems from one place."""
    names = node_symbols(s, symbols)
    main = grow((0.0, 0.0), top * 0.94, swaying(2.0, 8.0))
    side = grow((0.0, 0.0), top * 0.84, lambda t: 24 * (1 - 0.55 * t))
    symbols.need("s", leafy(s, side, names, bare=0.12))
    others = tuple(
        Copy("s", placed((x, 0.0), 0, size, x / 8)) for x, size in ((8.0, 0.92), (-8.0, 1.0))
    )
    return [ShapeGroup(others, "back"), *leafy(s, main, names, bare=0.12)]


def umbels(s: Subject, top: float, symbols: Symbols) -> list[Item]:
    """Bare stalks, each with one ring of leaves at its end."""
    name = node_symbols(s, symbols)[0]
    items: list[Item] = []
    for turn, share in ((-22, 0.8), (20, 0.86), (-10, 0.93), (11, 0.72), (2, 1.0)):
        stalk = grow((turn * 0.4, 0.0), max(top * share - s.leaf * 0.5, s.leaf), leaning(turn))
        end, _ = stalk.at(stalk.length)
        items.append(Shape("stem", (trace(stalk, count=4),), 2.0))
        items.append(Copy(name, placed(end, turn, 0.9, 0.9)))
    return items


def leaning(turn: float) -> Callable[[float], float]:
    """A heading that rights itself a little."""
    return lambda t: turn * (1 - 0.4 * t)
