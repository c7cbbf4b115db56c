"""One leaf for each word of a leaf's traits, drawn as the plants' own drawings draw it."""

from collections.abc import Iterable, Iterator
from statistics import median

from scripts.drawings.geometry import Affine, Path, line, placed
from scripts.drawings.leaves import leaf
from scripts.drawings.outlines import half_width
from scripts.drawings.scene import Copy, Item, Shape, Symbols, Writer, bounds
from scripts.drawings.svg import number
from scripts.drawings.veins import Form
from scripts.records.plant import Plant

LONG = 44.0  # of a leaf in its picture, in the picture's units
SIDE = 56.0  # of the picture
PLAIN = Form("lanceolate", LONG, LONG * 0.42, fine=True)
STALKS = {"none": 0.0, "short": 10.0, "long": 40.0}  # beside a blade of ``LONG``
THICK = 1.2


def framed(name: str, items: list[Item], symbols: Symbols, colour: str = "green") -> str:
    """A ``<symbol>`` around items; drawings smaller than the picture are not made larger."""
    box = bounds(items, symbols)
    side = max(box.right - box.left, box.top - box.bottom, SIDE - 8) + 6
    origin = (side / 2 - (box.left + box.right) / 2, side / 2 + (box.top + box.bottom) / 2)
    pen = Writer(name, origin, 1)
    return symbol(
        name, f'{pen.defs(symbols)}<g class="plant leaf-{colour}">{pen.items(items)}</g>', side
    )


def symbol(name: str, body: str, side: float = SIDE) -> str:
    """The ``<symbol>`` itself."""
    extent = number(side, 1)
    return f'<symbol id="{name}" viewBox="0 0 {extent} {extent}">{body}</symbol>'


def proportions(shape: str, plants: Iterable[Plant]) -> tuple[float, float]:
    """Length and width of the middling leaf of a shape, by the records that have it."""
    shares = [
        plant.traits.leaf_width_mm.middle / plant.traits.leaf_length_mm.middle
        for plant in plants
        if plant.traits and plant.traits.leaf_shape == shape
    ]
    share = median(shares) if shares else PLAIN.width / PLAIN.length
    return (LONG, LONG * share) if share <= 1 else (LONG / share, LONG)


def leaf_items(form: Form, stalk: float = 6.0) -> list[Item]:
    """A leaf on its stalk."""
    foot = Shape("stem", (line((0.0, -stalk), (0.0, 0.0)),), THICK)
    return [*([foot] if stalk else []), *leaf(form)]


def leaf_symbol(name: str, form: Form, colour: str = "green", stalk: float = 6.0) -> str:
    """One leaf as a ``<symbol>``."""
    return framed(name, leaf_items(form, stalk), Symbols(), colour)


def face_symbol(name: str, surface: str, form: Form) -> str:
    """A leaf by its face: bristles round a hairy one, pleats along a folded one."""
    items = leaf_items(form._replace(surface=surface))
    if surface == "hairy":
        items.append(Shape("root", tuple(bristles(form)), THICK * 0.7))
    if surface == "folded":
        items.append(Shape("rib", tuple(pleats(form)), THICK))
    return framed(name, items, Symbols())


def bristles(form: Form) -> Iterator[Path]:
    """Short hairs out of the edge."""
    for row in range(2, 10):
        share = row / 11
        x, y = half_width(form.shape, share) * form.width, share * form.length
        for side in (-1, 1):
            yield line((side * x, y), (side * (x + 4), y + 3))


def pleats(form: Form) -> Iterator[Path]:
    """Ribs from the stalk to the tip."""
    for share in (-0.6, -0.3, 0.3, 0.6):
        x = share * half_width(form.shape, 0.4) * form.width
        yield line((x * 0.3, form.length * 0.04), (x, form.length * 0.4))
        yield line((x, form.length * 0.4), (x * 0.3, form.length * 0.92))


def stalk_symbol(name: str, stalk: str) -> str:
    """A leaf on a piece of stem, by its stalk."""
    length = LONG * 0.6 if stalk == "long" else LONG * 0.8
    symbols = Symbols()
    blade = symbols.need("l", leaf(PLAIN._replace(length=length, width=length * 0.42)))
    reach = STALKS[stalk] * length / LONG
    base = placed((0.0, 0.0), 60)
    items: list[Item] = [
        Shape("stem", (line((0.0, -14.0), (0.0, 16.0)),), 2 * THICK),
        Shape("stem", (line((0.0, 0.0), base.at((0.0, reach + 0.1))),), THICK),
        Copy(blade, base.after(Affine(f=reach))),
    ]
    return framed(name, items, symbols)


def ring_symbol(name: str, count: int) -> str:
    """A ring of so many leaves from above."""
    symbols = Symbols()
    blade = symbols.need("l", leaf(Form("narrow-lanceolate", 24.0, 6.0, fine=True)))
    items: list[Item] = [
        Copy(blade, placed((0.0, 0.0), 360 / count * turn).after(Affine(f=2.0)))
        for turn in range(count)
    ]
    dot = Shape("stem", (line((0.0, 0.0), (0.0, 0.01)),), 5.0)
    return framed(name, [*items, dot], symbols)
