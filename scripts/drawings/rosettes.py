"""Plants whose leaves rise from one crown, and grasses in tufts."""

from scripts.drawings.build import at, fit, grow_under, roots, second, stalked
from scripts.drawings.geometry import Path, curve
from scripts.drawings.scene import Item, Part, Shape, Symbols
from scripts.drawings.size import Frame, Subject

NARROW = ("linear", "ribbon", "needle")
FEW, MANY = 9, 15
RUNNER_GAP = 0.62  # from crown to daughter, in spreads


def rosette(s: Subject, f: Frame, symbols: Symbols) -> list[Item]:
    """A crown of leaves to its height, and a daughter where it spreads by runners."""
    top = min(s.height, f.surface)
    mother = fit(crown(s, f.surface), symbols, top=top, spread=min(s.spread, f.width * 0.8))
    if "runners" not in s.traits.spread_by:
        return [roots(s, 0, 22, 7), *mother]
    side = min(max(s.spread * RUNNER_GAP, 30.0), f.width * 0.3)
    small = 0.42
    daughter = at(
        fit(crown(s, f.surface, 6), symbols, top=s.height * 0.5, spread=s.spread * 0.6),
        0,
        0,
        small * 1.6,
    )
    place = side * 0.55
    runner = curve((-place, 1.0), (0.0, 3.5), (side * 0.9, 0.5))
    return [
        Shape("runner", (runner,)),
        Part(tuple([roots(s, side * 0.9, 10, 3), *at(daughter, side * 0.9)]), "back"),
        roots(s, -place, 22, 7),
        *at(mother, -place),
    ]


def crown(s: Subject, surface: float, leaves: int | None = None) -> list[Item]:
    """Leaves about a crown at the origin: the outer ones first, the young ones last."""
    narrow = s.traits.leaf_shape in NARROW
    number = leaves or (MANY if narrow else FEW)
    items: list[Item] = []
    for i in range(number):
        share = i / (number - 1)  # 0 outermost and oldest, 1 innermost
        side = 1 if i % 2 else -1
        items.append(
            Part(tuple(crown_leaf(s, surface, share, side, narrow=narrow)), leaf_css(s, share, i))
        )
    return items


def leaf_css(s: Subject, share: float, i: int) -> str:
    """The second colour of young, of old, and of turned leaves."""
    if share > 0.72:
        return second(s, "young-leaves")
    if share < 0.25:
        return second(s, "old-leaves")
    return second(s, "underside") if i % 3 == 1 else ""


def crown_leaf(s: Subject, surface: float, share: float, side: int, *, narrow: bool) -> list[Item]:
    """One leaf: the outer ones lean and arch over, the inner ones stand."""
    blade = s.traits.leaf_length_mm
    size = blade.low + (blade.high - blade.low) * (1 - 0.55 * share) * s.about(0.9, 0.1)
    if share > 0.9:
        size *= 0.7
    stalk = stalk_length(s, blade.high) * (0.5 + 0.5 * (1 - abs(share - 0.45)))
    reach = size + stalk
    lean = (1 - share) * (16 if narrow else 58) + s.chance.uniform(0, 7)
    arch = (1 - share) * (26 if narrow else 44) + s.chance.uniform(0, 14)
    width = s.width * (0.75 + 0.25 * (1 - share))
    spine = grow_under(
        (side * (1 - share) * min(s.width * 0.3, 5), 0.0),
        reach,
        lambda t: side * (lean + arch * t * t),
        surface - width / 2,
    )
    return stalked(s, spine, size, width)


def stalk_length(s: Subject, blade: float) -> float:
    """A long stalk fills the plant's height, a short one is a quarter of the blade."""
    if s.traits.stalk == "none":
        return 0.0
    if s.traits.stalk == "short":
        return blade * 0.25
    return max(s.height - blade, blade * 0.6)


def grass(s: Subject, f: Frame, symbols: Symbols) -> list[Item]:
    """Tufts along a runner, of blades so thin that a line is enough; broad ones are drawn as leaves."""
    top = min(s.height, f.surface)
    gap = min(max(s.height * 0.22, 9.0), 34.0)
    tufts = 7 if s.width < 2 else 5
    items: list[Item] = [
        Shape("runner", (curve((-gap * tufts / 2, -2), (0, -3), (gap * tufts / 2, -2)),))
    ]
    for i in sorted(range(tufts), key=lambda i: -abs(i - tufts // 2)):
        x = (i - (tufts - 1) / 2) * gap * s.about(1, 0.06)
        items.append(roots(s, x, 14, 3))
        items += tuft(s, x, top * (1 if i == tufts // 2 else s.about(0.84, 0.1)), f.surface)
    return fit(items, symbols, top=top)


def tuft(s: Subject, x: float, height: float, surface: float) -> list[Item]:
    """One tuft."""
    if s.width >= 2:
        leaves = [crown_leaf(s, surface, share, side, narrow=True) for share, side in TUFT]
        return at([one for leaf in leaves for one in leaf], x)
    paths: list[Path] = []
    for i in range(9):
        lean = (i - 4) * 5 + s.chance.uniform(-4, 4)
        spine = grow_under(
            (x + (i - 4) * 0.6, 0.0),
            height * s.about(0.85, 0.17),
            lambda t, lean=lean: lean * (0.3 + 1.1 * t),
            surface,
        )  # type: ignore[misc]
        paths.append(curve(*(spine.at(spine.length * part)[0] for part in (0, 0.35, 0.7, 1))))
    return [Shape("strand", tuple(paths), max(s.width, 0.7))]


TUFT = ((0.1, 1), (0.2, -1), (0.5, 1), (0.6, -1), (0.95, 1))
