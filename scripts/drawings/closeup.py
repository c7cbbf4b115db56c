"""Close up: one leaf, one node, one ring or one shoot beside a rule in millimetres."""

from collections.abc import Iterable

from scripts.drawings.above import piece
from scripts.drawings.draw import svg
from scripts.drawings.geometry import Affine, Path, Run, line, placed
from scripts.drawings.habits import FLOATING
from scripts.drawings.leaves import form_of, leaf
from scripts.drawings.mosses import shoot
from scripts.drawings.nodes import count, stalk_of
from scripts.drawings.outlines import SIDES
from scripts.drawings.scale_rule import foot_rule
from scripts.drawings.scene import Copy, Item, Shape, Symbols, Writer, bounds, moved
from scripts.drawings.shared_shapes import second, stem_css
from scripts.drawings.size import Subject, subject
from scripts.drawings.words import leaves_in_words
from scripts.records.plant import Plant

PRESSED = "a piece of stem with its leaves laid flat"
NODED = ("stem", "rootless-stem", "creeping-stem", "carpet", "marginal")
LONG = 9.0  # a leaf longer than so many widths shows its end only
BORDER, FONT_SHARE = 0.03, 0.042  # of the picture's width
HIGHEST = 0.8  # of the picture's width
MOSS_SHOOT_MM = 22.0


def closeup(slug: str, plant: Plant) -> str | None:
    """The part by which look-alikes are told apart; 1 unit is 1 mm. None without traits."""
    if plant.traits is None:
        return None
    s, symbols = subject(slug, plant, plant.traits), Symbols()
    words, items = part(s, symbols)
    box = bounds(items, symbols)
    width = max(box.right - box.left, (box.top - box.bottom) / HIGHEST)
    border, font = width * BORDER, width * FONT_SHARE
    middle = width / 2 + border
    origin = (middle - (box.left + box.right) / 2, border + box.top)
    foot = box.top - box.bottom + 2 * border
    pen = Writer(f"{slug}_near", origin, 2 if width < 60 else 1)
    length = max(int(width), 1) if width < 45 else int(width / 5) * 5
    body = (
        pen.defs(symbols)
        + f'<g class="plant leaf-{s.traits.colour}">{pen.items(items)}</g>'
        + foot_rule(middle - width / 2 + font, foot, min(length, width - font * 2.6), font)
    )
    label = f"Close-up of {plant.name}, to scale: {words}. {leaves_in_words(s)}."
    return svg(body, (width + 2 * border, foot + font * 2), label, font, "drawing near")


def shown(slug: str, plant: Plant) -> str:
    """What the close-up shows, in words. Empty without traits."""
    if plant.traits is None:
        return ""
    s = subject(slug, plant, plant.traits)
    words, _ = part(s, Symbols())
    turned = words == PRESSED and s.traits.colour_where == "underside"
    return f"{words}, those on the left turned to show the underside" if turned else words


def part(s: Subject, symbols: Symbols) -> tuple[str, list[Item]]:
    """What is shown, in words and as items."""
    kind, arrangement = s.traits.draw, s.traits.arrangement
    if kind == "moss":
        return "one shoot", list(shoot(s, max(MOSS_SHOOT_MM, s.leaf * 6), 1.0, fine=True))
    if kind in FLOATING and kind != "floating-rosette":
        return "one piece from above", piece(s, symbols)
    if kind in NODED and arrangement == "whorled":
        return "one ring of leaves from above", ring_above(s, symbols)
    if (
        kind in NODED
        and (arrangement in ("opposite", "alternate", "spiral"))
        and s.traits.stalk != "long"
    ):
        return PRESSED, pressed(s, symbols)
    return single_leaf(s)


def fine_leaf(s: Subject) -> tuple[Shape, ...]:
    """A middling leaf with its details, its young or turned colour left out."""
    return leaf(form_of(s.traits, s.leaf, s.width, fine=True))


def ring_above(s: Subject, symbols: Symbols) -> list[Item]:
    """A ring of leaves round its stem."""
    name = symbols.need("l", fine_leaf(s))
    thick, leaves = max(s.leaf * 0.06, 0.15), count(s)
    items: list[Item] = [
        Copy(name, placed((0.0, 0.0), 360 / leaves * i).after(Affine(f=thick * 0.8)))
        for i in range(leaves)
    ]
    return [*items, Shape(stem_css(s), (line((0.0, 0.0), (0.0, 0.01)),), thick * 2)]


def pressed(s: Subject, symbols: Symbols) -> list[Item]:
    """Two or three nodes of a stem lying flat."""
    name = symbols.need("l", fine_leaf(s))
    pair = count(s) == 2
    gap = max(s.leaf * 0.5, s.width * 1.05) * (1 if pair else 0.62)
    nodes = 2 if pair else 4
    stalk, thick = stalk_of(s), max(s.leaf * 0.05, 0.12)
    items: list[Item] = [
        Shape(stem_css(s), (line((0.0, -gap * 0.4), (0.0, gap * (nodes - 0.6))),), thick)
    ]
    for i in range(nodes):
        for side in (-1, 1) if pair else ((-1, 1)[i % 2],):
            turn = side * 66
            base = placed((0.0, gap * i), turn)
            if stalk:
                items.append(
                    Shape("stem", (line((0.0, gap * i), base.at((0.0, stalk))),), thick * 0.7)
                )
            tint = second(s, "young-leaves") if i == nodes - 1 else ""
            tint = tint or (second(s, "underside") if side < 0 else "")
            items.append(Copy(name, base.after(Affine(f=stalk or thick * 0.4)), tint))
    return items


def single_leaf(s: Subject) -> tuple[str, list[Item]]:
    """One leaf lying along the rule; of a long ribbon the end."""
    shown = max(LONG * s.width, 12.0)
    if s.leaf > shown * 1.4 and s.traits.leaf_shape in SIDES:
        full_leaf = leaf(form_of(s.traits, shown * 1.4, s.width, fine=True))
        return "the end of one leaf", lying([cut_off(shape, shown * 0.4) for shape in full_leaf])
    stalk = min(stalk_of(s), s.leaf * 0.3)
    foot = Shape("stem", (line((0.0, -stalk), (0.0, 0.0)),), max(s.width * 0.05, 0.3))
    return "one leaf", lying([*([foot] if stalk else []), *fine_leaf(s)])


def lying(items: Iterable[Item]) -> list[Item]:
    """What grows up, laid down to the right."""
    return [moved(item, placed((0.0, 0.0), 90)) for item in items]


def cut_off(shape: Shape, cut: float) -> Shape:
    """The shape above a straight cut across it."""
    runs = ((run_above(run, cut) for run in path.runs) for path in shape.paths)
    paths = (
        Path(tuple(run for run in some if len(run.points) > 1), path.closed)
        for some, path in zip(runs, shape.paths, strict=True)
    )
    return Shape(shape.css, tuple(path for path in paths if path.runs), shape.stroke)


def run_above(run: Run, cut: float) -> Run:
    """The part of a run above the cut, and the point below it moved up to the cut."""
    points_above = [
        (x, max(y, cut))
        for i, (x, y) in enumerate(run.points)
        if any(point[1] > cut for point in run.points[max(i - 1, 0) : i + 2])
    ]
    return Run(tuple(points_above), run.smooth)
