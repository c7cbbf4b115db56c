"""A small picture of a plant for lists: one ``<symbol>`` of 48 by 48, made from the record's traits.

It shows how the plant grows, the proportions and number of its leaves, its colour, and how tall it
gets beside the others. Colours are the style sheet's variables, which a ``<use>`` inherits.
"""

from collections.abc import Callable, Iterator
from math import cos, pi, sin

from calculators.identify.trait_table import Draw
from scripts.drawings.svg import number
from scripts.records.plant import Plant
from scripts.records.traits import Traits

SIDE = 48
GROUND, SURFACE, MIDDLE = 45.0, 17.0, 24.0  # heights in the picture, counted from its top
TALL_CM = 50.0  # from here on a plant fills the picture
CUT_LEAVES = ("feathery", "forked", "fan", "pinnate", "needle")
Point = tuple[float, float]


def joined(*values: float) -> str:
    """Coordinates of a path, to a tenth."""
    return " ".join(number(value, 1) for value in values)


def leaf(traits: Traits, base: Point, angle: float, length: float) -> str:
    """The path of one leaf; ``angle`` in degrees from upright, to the right."""
    x, y = base
    dx, dy = sin(angle * pi / 180), -cos(angle * pi / 180)
    tip = (x + dx * length, y + dy * length)
    if traits.leaf_shape in CUT_LEAVES:
        return "".join(
            f"M{joined(x, y)}L{joined(x + length * sin(a), y - length * cos(a))}"
            for a in ((angle + turn) * pi / 180 for turn in (-16, 0, 16))
        )
    wide = length * min(max(traits.leaf_width_mm.middle / traits.leaf_length_mm.middle, 0.12), 1)
    left = (x + dx * length / 2 - dy * wide, y + dy * length / 2 + dx * wide)
    right = (x + dx * length / 2 + dy * wide, y + dy * length / 2 - dx * wide)
    return f"M{joined(x, y)}Q{joined(*left, *tip)}Q{joined(*right, x, y)}z"


def height(plant: Plant) -> float:
    """How much of the picture the plant takes, 0.35 to 1."""
    tall = plant.size.height_cm.high if plant.size.height_cm else TALL_CM / 2
    return min(max(tall / TALL_CM, 0.35), 1.0)


def stem(plant: Plant, traits: Traits) -> Iterator[str]:
    """An upright stem with its leaves; it ends in a leaf."""
    top = GROUND - 34 * height(plant)
    yield f"M24 {joined(GROUND)}V{joined(top)}"
    yield from along(traits, [(MIDDLE, y) for y in steps(GROUND - 5, top, 5.0)], 62, 9.5)
    yield leaf(traits, (MIDDLE, top), 0, 8)


def along(traits: Traits, nodes: list[Point], lean: float, length: float) -> Iterator[str]:
    """The leaves at the nodes of a stem: on one side in turn, or on both."""
    for i, node in enumerate(nodes):
        sides = (1 if i % 2 else -1,) if traits.arrangement in ("alternate", "spiral") else (-1, 1)
        yield from (leaf(traits, node, side * lean, length) for side in sides)


def steps(start: float, end: float, step: float) -> Iterator[float]:
    """Figures from one end to the other. Each is one step on from the last."""
    for i in range(int(abs(end - start) / step) + 1):
        yield start + (step if end > start else -step) * i


def creeping(plant: Plant, traits: Traits) -> Iterator[str]:
    """A stem that lies along the ground."""
    yield f"M6 {joined(GROUND - 2)}H42"
    for x in steps(8, 40, 5.3):
        yield from (
            leaf(traits, (x, GROUND - 2), turn, 4 + 9 * height(plant)) for turn in (-28, 28)
        )


def rosette(plant: Plant, traits: Traits) -> Iterator[str]:
    """Leaves from one crown."""
    count, reach = (9, 62) if traits.leaf_shape in ("linear", "ribbon") else (7, 68)
    for i in range(count):
        angle = -reach + 2 * reach * i / (count - 1)
        yield leaf(traits, (MIDDLE, GROUND), angle, 40 * height(plant) * (1 - abs(angle) / 260))


def carpet(plant: Plant, traits: Traits) -> Iterator[str]:
    """Small tufts side by side."""
    for x in steps(6, 42, 6):
        yield from (
            leaf(traits, (x, GROUND), turn, 4 + 16 * height(plant)) for turn in (-24, 0, 24)
        )


def epiphyte(plant: Plant, traits: Traits) -> Iterator[str]:
    """Stalked leaves on a rhizome."""
    yield f"M8 {joined(GROUND - 3)}H40"
    for i, x in enumerate(steps(11, 37, 6.5)):
        foot, lean = (x, GROUND - 3), -34 + 17 * i
        long = 34 * height(plant)
        stalk = 0 if traits.stalk == "none" else long * 0.35
        at = (x + stalk * sin(lean * pi / 180), foot[1] - stalk * cos(lean * pi / 180))
        yield f"M{joined(*foot)}L{joined(*at)}"
        yield leaf(traits, at, lean, long - stalk)


def moss(plant: Plant, traits: Traits) -> Iterator[str]:
    """Short strands out of a dome."""
    for ring in (10, 17, 24):
        for i in range(9):
            angle = (-80 + 20 * i) * pi / 180
            x, y = MIDDLE + ring * 0.7 * sin(angle), GROUND - ring * 0.7 * cos(angle)
            yield f"M{joined(x, y)}q{joined(4 * sin(angle) - 2, -5, 6 * sin(angle), -6 * cos(angle))}"


def thallus(plant: Plant, traits: Traits) -> Iterator[str]:
    """Flat lobes over one another."""
    floats = plant.habit == "floater"
    for i, x in enumerate((10, 19, 29, 38, 15, 24, 33)):
        yield disc((x, (SURFACE + 4 if floats else GROUND - 6) - 5 * (i > 3)), 6, 4)


def disc(centre: Point, wide: float, high: float) -> str:
    """An oval."""
    x, y = centre
    half = f"a{joined(wide, high)} 0 1 0 "
    return f"M{joined(x - wide, y)}{half}{joined(2 * wide)} 0{half}{joined(-2 * wide)} 0z"


def roots(plant: Plant, traits: Traits, places: tuple[float, ...]) -> str:
    """Roots that hang in the water, as long as the record has them beside 30 cm."""
    if traits.root_length_mm is None:
        return ""
    long = min(max(traits.root_length_mm.high / 12, 3), 26)
    return "".join(f"M{joined(x, SURFACE)}q-1 {joined(long / 2)} 1 {joined(long)}" for x in places)


def floating_rosette(plant: Plant, traits: Traits) -> Iterator[str]:
    """Leaves on the water around a middle."""
    for angle in (-84, -52, -20, 20, 52, 84):
        yield leaf(traits, (MIDDLE, SURFACE), angle, 17)


def floating_stem(plant: Plant, traits: Traits) -> Iterator[str]:
    """Leaves in pairs along a stem on the water."""
    yield f"M4 {joined(SURFACE)}H44"
    for x in steps(7, 41, 7):
        yield from (leaf(traits, (x, SURFACE), turn, 9) for turn in (-38, 38))


def floating_frond(plant: Plant, traits: Traits) -> Iterator[str]:
    """Single fronds on the water."""
    wide = min(max(traits.leaf_width_mm.middle / 2, 2), 5)
    for i, x in enumerate((7, 15, 23, 31, 40, 19, 36)):
        yield disc((x, SURFACE - 5 * (i > 4)), wide + 1, wide * 0.6)


def marginal(plant: Plant, traits: Traits) -> Iterator[str]:
    """Stems that stand out of the water."""
    for x, top in ((17, 12), (24, 5), (31, 14)):
        yield f"M{x} {joined(GROUND)}V{top}"
        yield from along(traits, [(x, y) for y in steps(26, top, 6)], 50, 8)


ROUTINES: dict[Draw, Callable[[Plant, Traits], Iterator[str]]] = {
    "stem": stem,
    "rootless-stem": stem,
    "creeping-stem": creeping,
    "rosette": rosette,
    "grass": rosette,
    "carpet": carpet,
    "epiphyte": epiphyte,
    "moss": moss,
    "thallus": thallus,
    "floating-rosette": floating_rosette,
    "floating-stem": floating_stem,
    "floating-frond": floating_frond,
    "marginal": marginal,
}


def thumbnail(slug: str, plant: Plant) -> str:
    """The plant's ``<symbol>``, its id the slug; where traits are not known, a plain leaf outline."""
    traits = plant.traits
    if traits is None:
        body = '<path d="M24 44Q4 24 24 4Q44 24 24 44z" fill="none" stroke="var(--soft)"/>'
    else:
        edge, fill = f"var(--{traits.colour}-edge)", f"var(--{traits.colour})"
        water = traits.draw.startswith("floating") or plant.habit == "floater"
        body = f'<path d="M1 {joined(SURFACE)}H47" stroke="var(--water-line)"/>' if water else ""
        hanging = roots(plant, traits, (17, 24, 31)) if water else ""
        body += f'<path d="{hanging}" fill="none" stroke="var(--root)"/>' if hanging else ""
        shapes = "".join(ROUTINES[traits.draw](plant, traits))
        cut = traits.leaf_shape in CUT_LEAVES or traits.draw == "moss"
        inner, line = ("none", fill) if cut else (fill, edge)
        body += f'<path d="{shapes}" fill="{inner}" stroke="{line}"/>'
    return f'<symbol id="{slug}" viewBox="0 0 {SIDE} {SIDE}">{body}</symbol>'
