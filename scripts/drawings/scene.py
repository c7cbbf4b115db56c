"""What stands in a picture: shapes and copies of symbols, back to front, with their bounds."""

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from scripts.drawings.geometry import Affine, Path, Point, convex, flattened
from scripts.drawings.svg import matrix, number, path_data

FLIP = Affine(1, 0, 0, -1, 0, 0)


class Shape(NamedTuple):
    """Paths that look alike; ``css`` are classes of the style sheet, ``stroke`` is in mm."""

    css: str
    paths: tuple[Path, ...]
    stroke: float | None = None


class Copy(NamedTuple):
    """A symbol set down once more."""

    symbol: str
    place: Affine
    css: str = ""


class ShapeGroup(NamedTuple):
    """Shapes and copies under one class, such as ``back`` for what stands behind."""

    items: tuple["Item", ...]
    css: str = ""


Item = Shape | Copy | ShapeGroup


class Bounds(NamedTuple):
    """The box around something, mm."""

    left: float
    bottom: float
    right: float
    top: float


class Symbols(dict[str, tuple[Item, ...]]):
    """What is drawn many times, by short name; a symbol may hold copies of earlier ones."""

    def __init__(self) -> None:
        super().__init__()
        self.rims: dict[str, tuple[Point, ...]] = {}

    def need(self, name: str, items: Sequence[Item]) -> str:
        """Keep the items under the name; gives the name."""
        self[name] = tuple(items)
        self.rims.clear()  # others may hold copies of this one
        return name

    def rim(self, name: str) -> tuple[Point, ...]:
        """The corners of the convex hull of a symbol, which bound its copies too."""
        if name not in self.rims:
            self.rims[name] = convex(points_of(self[name], self))
        return self.rims[name]


def moved(item: Item, affine: Affine) -> Item:
    """The item after an affine map."""
    if isinstance(item, Shape):
        return Shape(item.css, tuple(path.mapped(affine.at) for path in item.paths), item.stroke)
    if isinstance(item, Copy):
        return Copy(item.symbol, affine.after(item.place), item.css)
    return ShapeGroup(tuple(moved(inner, affine) for inner in item.items), item.css)


def points_of(items: Iterable[Item], symbols: Symbols) -> Iterable[Point]:
    """Points that hold all the items between them, widened by their strokes."""
    for item in items:
        if isinstance(item, ShapeGroup):
            yield from points_of(item.items, symbols)
        elif isinstance(item, Copy):
            for point in symbols.rim(item.symbol):
                yield item.place.at(point)
        else:
            half = (item.stroke or 0.0) / 2
            for path in item.paths:
                for x, y in flattened(path):
                    yield from ((x - half, y - half), (x + half, y + half)) if half else ((x, y),)


def bounds(items: Iterable[Item], symbols: Symbols) -> Bounds:
    """The box around the items."""
    xs, ys = zip(*points_of(items, symbols), strict=True)
    return Bounds(min(xs), min(ys), max(xs), max(ys))


def classes(css: str) -> str:
    """Names as the style sheet has them: colours as they are, parts of a drawing with their prefix."""
    return " ".join(name if name.startswith("leaf-") else f"d-{name}" for name in css.split())


class Writer:
    """Turns items into SVG, with y pointing down from ``origin``, and ids under a prefix.

    The underscore after it keeps them apart from the ids of headings, which have none: that of a
    plant named by L. ends in ``-l``.
    """

    def __init__(self, prefix: str, origin: Point, digits: int) -> None:
        self.prefix, self.digits = prefix, digits
        self.place = Affine(1, 0, 0, -1, *origin)

    def defs(self, symbols: Symbols) -> str:
        """The symbols."""
        if not symbols:
            return ""
        body = "".join(
            f'<g id="{self.prefix}_{name}">{"".join(self.item(item, FLIP) for item in items)}</g>'
            for name, items in symbols.items()
        )
        return f"<defs>{body}</defs>"

    def items(self, items: Iterable[Item]) -> str:
        """The items in their order."""
        return "".join(self.item(item, self.place) for item in items)

    def item(self, item: Item, place: Affine) -> str:
        """One item."""
        if isinstance(item, Shape):
            return self.shape(item, place)
        css = f' class="{classes(item.css)}"' if item.css else ""
        if isinstance(item, ShapeGroup):
            return f"<g{css}>{''.join(self.item(inner, place) for inner in item.items)}</g>"
        moves = matrix(place.after(item.place).after(FLIP), self.digits)
        return f'<use href="#{self.prefix}_{item.symbol}"{css} transform="{moves}"/>'

    def shape(self, shape: Shape, place: Affine) -> str:
        """One shape."""
        stroke = f' stroke-width="{number(shape.stroke, 2)}"' if shape.stroke else ""
        data = path_data((path.mapped(place.at) for path in shape.paths), self.digits)
        return f'<path class="{classes(shape.css)}"{stroke} d="{data}"/>'
