"""Plants whose leaves rise from one crown, and grasses in tufts."""

from collections.abc import Callable

from scripts.drawings.geometry import Path, curve, placed
from scripts.drawings.scene import Copy, Item, Shape, ShapeGroup, Symbols
from scripts.drawings.shared_shapes import (
    BROAD_EASE,
    EASE,
    NO_CEILING,
    fit,
    grow_under,
    roots,
    second,
    set_down,
    stalked,
)
from scripts.drawings.size import Subject, TankFrame

NARROW = ("linear", "ribbon", "needle")
FEW, FAN, MANY = 9, 11, 13
TRAIL_MM = 130.0  # how far a leaf is drawn along the surface: the rest would look the same
YOUNG = 0.45  # height of a daughter, in heights of her mother
RUNNER_GAP = 0.62  # from crown to daughter, in spreads


def rosette(s: Subject, f: TankFrame, symbols: Symbols) -> list[Item]:
    """A crown of leaves to its height, and a daughter where it spreads by runners."""
    top = min(s.height, f.surface)
    trailing = s.height > f.surface and s.traits.leaf_shape in NARROW
    spread = f.width * 0.56 if trailing else min(s.spread, f.width * 0.8)
    mother = fit(crown(s, symbols, f.surface), symbols, top=top, spread=spread)
    if "runners" not in s.traits.spread_by:
        return [roots(s, 0, 22, 7), *mother]
    gap = min(max(s.spread * RUNNER_GAP, 30.0), f.width * 0.3)
    if trailing:
        young = fit(crown(s, symbols, NO_CEILING, 6), symbols, top=top * 0.66, spread=f.width * 0.2)
        daughter = set_down(young, gap * 0.9)
    else:
        symbols.need("c", mother)
        mother = [Copy("c", placed((0.0, 0.0), 0))]
        daughter = [Copy("c", placed((gap * 0.9, 0.0), 0, YOUNG, YOUNG))]
    place = gap * 0.42
    runner = curve((-place, 1.0), (0.0, 3.5), (gap * 0.9, 0.5))
    return [
        Shape("runner", (runner,)),
        ShapeGroup((roots(s, gap * 0.9, 10, 3), *daughter), "back"),
        roots(s, -place, 22, 7),
        *set_down(mother, -place),
    ]


def crown(s: Subject, symbols: Symbols, surface: float, leaves: int | None = None) -> list[Item]:
    """Leaves about a crown at the origin: the outer ones first, the young ones last."""
    narrow = s.traits.leaf_shape in NARROW
    number = leaves or (FAN if s.traits.arrangement == "two-ranked" else MANY if narrow else FEW)
    items: list[Item] = []
    for i in range(number):
        share = i / (number - 1)  # 0 outermost and oldest, 1 innermost
        side = 1 if i % 2 else -1
        items.append(
            ShapeGroup(
                tuple(crown_leaf(s, symbols, surface, share, side, narrow=narrow)),
                leaf_css(s, share, i),
            )
        )
    return items


def leaf_css(s: Subject, share: float, i: int) -> str:
    """The second colour of young, of old, and of turned leaves."""
    if share > 0.72:
        return second(s, "young-leaves")
    if share < 0.25:
        return second(s, "old-leaves")
    return second(s, "underside") if i % 3 == 1 else ""


def crown_leaf(
    s: Subject, symbols: Symbols, surface: float, share: float, side: int, *, narrow: bool
) -> list[Item]:
    """One leaf: the outer ones lean and arch over, the inner ones stand."""
    blade = s.traits.leaf_length_mm
    size = blade.low + (blade.high - blade.low) * (1 - 0.55 * share) * s.about(0.9, 0.1)
    if share > 0.9:
        size *= 0.7
    stalk = stalk_length(s, blade.high) * (0.5 + 0.5 * (1 - abs(share - 0.45)))
    reach = min(size + stalk, surface + TRAIL_MM * (0.4 + 0.6 * (1 - share)))
    lean = (1 - share) * (24 if narrow else 58) + s.chance.uniform(0, 7)
    arch = (1 - share) * (26 if narrow else 44) + s.chance.uniform(0, 14)
    width = s.width * (0.75 + 0.25 * (1 - share))
    spine = grow_under(
        (side * (1 - share) * min(s.width * 0.3, 5), 0.0),
        reach,
        lambda t: side * (lean + arch * t * t),
        surface - width / 2,
        EASE if narrow else BROAD_EASE,
    )
    return stalked(s, symbols, spine, size, width)


def stalk_length(s: Subject, blade: float) -> float:
    """A long stalk fills the plant's height, a short one is a quarter of the blade."""
    if s.traits.stalk == "none":
        return 0.0
    if s.traits.stalk == "short":
        return blade * 0.25
    return max(s.height - blade, blade * 0.6)


def grass(s: Subject, f: TankFrame, symbols: Symbols) -> list[Item]:
    """Tufts along a runner, of blades so thin that a line is enough; broad ones are drawn as leaves."""
    top = min(s.height, f.surface)
    gap = min(max(s.height * 0.15, 8.0), 26.0)
    tufts = 11 if s.width < 2 else 9
    half = gap * tufts / 2
    items: list[Item] = [Shape("runner", (curve((-half, -2.0), (0.0, -3.0), (half, -2.0)),))]
    for name in ("ta", "tb"):
        symbols.need(name, tuft(s, symbols, top, f.surface))
    for i in sorted(range(tufts), key=lambda i: -abs(i - tufts // 2)):
        size = 1.0 if i == tufts // 2 else s.about(0.84, 0.1)
        x = (i - (tufts - 1) / 2) * gap * s.about(1, 0.06)
        items.append(Copy("tb" if i % 2 else "ta", placed((x, 0.0), 0, size, size)))
    return fit(items, symbols, top=top)


def tuft(s: Subject, symbols: Symbols, height: float, surface: float) -> list[Item]:
    """One tuft with its roots."""
    items: list[Item] = [roots(s, 0.0, 14, 3)]
    if s.width >= 2:
        for share, side in TUFT:
            items += crown_leaf(s, symbols, surface, share, side, narrow=True)
        return items
    paths: list[Path] = []
    for i in range(11):
        lean = (i - 5) * 4.5 + s.chance.uniform(-4, 4)
        spine = grow_under(
            ((i - 5) * 0.6, 0.0), height * s.about(0.85, 0.17), leaning(lean), surface
        )
        paths.append(curve(*(spine.at(spine.length * part)[0] for part in (0, 0.35, 0.7, 1))))
    return [*items, Shape("strand", tuple(paths), max(s.width, 0.7))]


def leaning(lean: float) -> Callable[[float], float]:
    """A heading that leans over more towards the tip."""
    return lambda t: lean * (0.3 + 1.1 * t)


TUFT = ((0.1, 1), (0.2, -1), (0.5, 1), (0.6, -1), (0.95, 1))
