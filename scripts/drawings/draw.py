"""A plant's pictures: in a tank, from above, and close up. Each is one inline ``<svg>``."""

from html import escape

from scripts.drawings import glass_tank
from scripts.drawings.geometry import Affine, Point, placed
from scripts.drawings.habits import drawn
from scripts.drawings.not_to_scale import remark
from scripts.drawings.scene import Item, Symbols, Writer, bounds, moved
from scripts.drawings.size import TANK_HEIGHT_CM, frame, subject
from scripts.drawings.svg import number
from scripts.drawings.words import tank_words
from scripts.records.plant import Plant

EDGE = 6.0  # empty border, mm
DIGITS = 1  # a tenth of a millimetre is less than a pixel


def drawing(slug: str, plant: Plant, tank_height_cm: float = TANK_HEIGHT_CM) -> str | None:
    """The plant from the side in a tank; 1 unit of the picture is 1 mm. None without traits."""
    if plant.traits is None:
        return None
    s, f = subject(slug, plant, plant.traits), frame(tank_height_cm)
    symbols = Symbols()
    items, base = drawn(s, f, symbols)
    lifted: list[Item] = [moved(item, placed((0.0, base.height), 0)) for item in items]
    if plant.traits.draw != "marginal":
        lifted = between_walls(lifted, symbols, f.width / 2 - EDGE / 2)
    supports: list[Item] = [moved(item, placed((0.0, base.height), 0)) for item in base.supports]
    box = bounds([*lifted, *supports], symbols)
    half = max(f.width / 2 + f.tank * glass_tank.SIDE, -box.left + EDGE, box.right + EDGE)
    cap = max(f.rim + f.tank * glass_tank.FONT, box.top + EDGE)
    pen = Writer(slug, (half, cap), DIGITS)
    body = (
        pen.defs(symbols)
        + glass_tank.behind(f, half - f.width / 2, cap)
        + pen.items(supports)
        + f'<g class="plant leaf-{plant.traits.colour}">{pen.items(lifted)}</g>'
        + glass_tank.before(f, half - f.width / 2, cap)
    )
    label = f"{tank_words(s, tank_height_cm)} {remark(plant, tank_height_cm)}".strip()
    size = (2 * half, cap + f.cap + f.soil + EDGE)
    return svg(body, size, label, f.tank * glass_tank.FONT)


def between_walls(items: list[Item], symbols: Symbols, half: float) -> list[Item]:
    """Moves the plant off a wall that it would pass; what is wider than the tank is pressed together."""
    box = bounds(items, symbols)
    scale = min(2 * half / (box.right - box.left), 1.0)
    left = min(max(box.left * scale, -half), half - (box.right - box.left) * scale)
    push = Affine(scale, 0, 0, 1, left - box.left * scale, 0)
    return items if push == Affine() else [moved(item, push) for item in items]


def svg(body: str, size: Point, label: str, font: float, css: str = "drawing") -> str:
    """The element around a picture."""
    width, height = (number(side, 1) for side in size)
    words = escape(label)
    return (
        f'<svg class="{css}" viewBox="0 0 {width} {height}" font-size="{number(font, 2)}" '
        f'role="img" aria-label="{words}"><title>{words}</title>{body}</svg>'
    )
