"""The second picture of a floating plant: from above, over a rule of 10 cm."""

import math

from scripts.drawings.draw import EDGE, svg
from scripts.drawings.fronds import frond_above
from scripts.drawings.geometry import line, placed
from scripts.drawings.habits import FLOATING
from scripts.drawings.scale_rule import foot_rule
from scripts.drawings.scene import Bounds, Copy, Item, Shape, Symbols, Writer, bounds, moved
from scripts.drawings.seen_above import rosette_above, stem_above
from scripts.drawings.size import Subject, subject
from scripts.drawings.words import leaves_in_words
from scripts.records.plant import Plant

RULE_MM = 100.0
FONT_SHARE = 0.042  # height of the figures, in widths of the picture
ROOMS = 0.62  # height of the water shown, in widths


def above(slug: str, plant: Plant) -> str | None:
    """The plant on the water from above; 1 unit is 1 mm. None for plants that do not float."""
    if plant.traits is None or plant.traits.draw not in FLOATING:
        return None
    s, symbols = subject(slug, plant, plant.traits), Symbols()
    plant_piece = piece(s, symbols)
    box = bounds(plant_piece, symbols)
    wide, high = box.right - box.left, box.top - box.bottom
    width = max(RULE_MM + 24, wide * 1.75)
    height = max(width * ROOMS, high * 1.08 + 4)
    items = scattered(s, symbols, plant_piece, width, height)
    font = width * FONT_SHARE
    pen = Writer(f"{slug}_above", (width / 2 + EDGE, height / 2 + EDGE), 1)
    x = EDGE + (width - RULE_MM) / 2
    body = (
        pen.defs(symbols)
        + f'<rect class="d-water" x="{EDGE:g}" y="{EDGE:g}" width="{width:.1f}" height="{height:.1f}"/>'
        + f'<g class="plant leaf-{s.traits.colour}">{pen.items(items)}</g>'
        + foot_rule(
            x, height + EDGE + font * 0.5, RULE_MM, font, figures=50 if width < 220 else RULE_MM
        )
    )
    label = (
        f"Drawing of {plant.name} from above: {leaves_in_words(s)}. The rule below is 10 cm long."
    )
    return svg(body, (width + 2 * EDGE, height + 2 * EDGE + font * 2.1), label, font)


def piece(s: Subject, symbols: Symbols) -> list[Item]:
    """One plant, or one piece of it."""
    kind = s.traits.draw
    if kind == "floating-rosette":
        return rosette_above(s, symbols)
    if kind == "floating-stem":
        return stem_above(s, symbols)
    shapes = [shape for shape in frond_above(s) if isinstance(shape, Shape)]
    symbols.need("g", shapes)
    return [Copy("g", placed((0.0, 0.0), 0))]


def scattered(
    s: Subject, symbols: Symbols, plant_piece: list[Item], width: float, height: float
) -> list[Item]:
    """As many as stand loosely on the water shown, each turned its own way, none over the edge."""
    box = bounds(plant_piece, symbols)
    reach = max(math.hypot(x, y) for x in (box.left, box.right) for y in (box.bottom, box.top))
    if reach * 2 > height * 0.7:
        return beside(s, plant_piece, box, width, height)
    columns = min(max(int(width / (reach * 2.1)), 1), 8)
    rows = min(max(int(height / (reach * 2.1)), 1), 5)
    items: list[Item] = []
    for i in range(columns * rows):
        if columns * rows > 12 and s.chance.random() < 0.2:
            continue
        x = free(s, i % columns, columns, width, reach)
        y = free(s, i // columns, rows, height, reach)
        place = placed((x, y), s.chance.uniform(0, 360))
        items += [moved(part, place) for part in plant_piece]
    return items


def free(s: Subject, i: int, number: int, room: float, reach: float) -> float:
    """A place in the i-th of some equal cells, where something of this reach stays inside the room."""
    cell = room / number
    swing = max(cell / 2 - reach, 0.0)
    return (i + 0.5) * cell - room / 2 + s.chance.uniform(-swing, swing)


def beside(
    s: Subject, plant_piece: list[Item], box: Bounds, width: float, height: float
) -> list[Item]:
    """A large rosette with a young one on a runner; pieces of stem in rows."""
    wide, high = box.right - box.left, box.top - box.bottom
    left = -(width - wide) / 2 + 2
    if s.traits.draw == "floating-rosette":
        small = min((width - wide - 6) / wide, 0.5)
        x = width / 2 - wide * small / 2 - 2
        young = [moved(part, placed((x, 0.0), 0, small, small)) for part in plant_piece]
        runner = Shape("runner", (line((left, 0), (x, 0)),))
        return [runner, *(moved(part, placed((left, 0.0), 0)) for part in plant_piece), *young]
    columns = max(int((width - 4) / (wide * 1.08)), 1)
    rows = max(min(int(height / (high * 1.15)), 4), 1)
    items: list[Item] = []
    for i in range(columns * rows):
        column, row = i % columns, i // columns
        x = (left + column * wide * 1.08) if columns * rows > 1 else 0.0
        y = (row - (rows - 1) / 2) * height / rows
        place = placed((-x if row % 2 else x, y), 180 if (row + column) % 2 else 0)
        items += [moved(part, place) for part in plant_piece]
    return items
