"""Fronds that hang below the surface in branched chains: a loose net, not a cover."""

from scripts.drawings.geometry import placed
from scripts.drawings.scene import Copy, Item, Shape, Symbols, bounds
from scripts.drawings.shared_shapes import second
from scripts.drawings.size import Subject, TankFrame

BELOW_MM = 2.0  # of water over the highest frond
SHARE_OF_WIDTH = 0.62  # of the tank over which the net drifts
LAYERS = 3
THINNEST_MM = 12.0  # so thick a net is drawn at least


def hanging_fronds(s: Subject, f: TankFrame, symbols: Symbols, group: list[Shape]) -> list[Item]:
    """The chains of ``group`` in layers below the surface (height 0), tilted each its own way."""
    symbols.need("g", group)
    box = bounds(group, symbols)
    reach = max(box.right - box.left, box.top - box.bottom)
    thick = max(THINNEST_MM, min(s.height, f.surface) * 0.4)
    number = max(int(f.width * SHARE_OF_WIDTH / (reach * 0.62)), 3)
    items: list[Item] = []
    for layer in reversed(range(LAYERS)):
        here = number - 2 * layer
        for i in range(here):
            x = (i - (here - 1) / 2 + 0.4 * (layer % 2)) * reach * 0.62
            size = s.about(0.9, 0.1)
            y = -BELOW_MM - reach * size / 2 - layer * max(0.0, thick - reach) / (LAYERS - 1)
            young = second(s, "young-leaves", "old-leaves", "edge") if i % 4 == 0 else ""
            turn = s.chance.uniform(0, 360)
            items.append(Copy("g", placed((x, y), turn, size * 0.8, size), young))
    return items
