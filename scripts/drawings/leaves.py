"""One leaf as shapes for a picture: its outline or threads, its veins, its second colour."""

from typing import NamedTuple

from scripts.drawings import divided
from scripts.drawings.geometry import Path, curve, line, placed
from scripts.drawings.outlines import SIDES, TIPS, half_width, outline
from scripts.drawings.scene import Shape
from scripts.records.traits import Traits

THREADED = ("feathery", "forked", "fan")
MIDRIB_MM = 2.5  # a narrower leaf shows no midrib in a tank
THINNEST_MM = 0.45  # a thread drawn thinner than this is lost on a phone
STRIPE = 0.3  # width of a stripe, in widths of the blade
PARALLEL = ("linear", "ribbon", "needle")


class Form(NamedTuple):
    """A leaf of one size; ``fine`` asks for the details of a close-up."""

    shape: str
    length: float
    width: float
    margin: str = "smooth"
    tip: str = "pointed"
    surface: str = "flat"
    second: str = ""  # class of the second colour on the blade itself
    where: str = ""
    fine: bool = False


def form_of(traits: Traits, length: float, width: float, *, fine: bool = False) -> Form:
    """The leaf of a record's traits at one size, mm."""
    return Form(
        traits.leaf_shape,
        length,
        width,
        traits.margin if fine or length >= 25 else "smooth",
        traits.tip,
        traits.surface,
        f"leaf-{traits.colour_second}" if traits.colour_second else "",
        traits.colour_where or "",
        fine,
    )


def leaf(form: Form) -> tuple[Shape, ...]:
    """The leaf's shapes, growing up from the stalk at the origin."""
    if form.shape in THREADED:
        return threads(form)
    if form.shape == "thallus":
        return thallus(form)
    if form.shape == "needle" and form.width < 1:
        stroke = max(form.width, THINNEST_MM)
        return (Shape("strand", (line((0.0, 0.0), (0.0, form.length)),), stroke),)
    paths = tuple(blades(form))
    return (Shape("blade", paths), *surface(form), *veins(form), *tint(form, paths))


def blades(form: Form) -> list[Path]:
    """The closed edges."""
    if form.shape == "pinnate":
        return divided.pinnate(form.length, form.width, 6, wavy=form.fine)
    if form.shape == "clover":
        return divided.clover(form.length, form.width)
    if form.shape == "lobed":
        return divided.lobed(form.length, form.width)
    return [outline(form.shape, form.length, form.width, tip=form.tip, margin=form.margin)]


def threads(form: Form) -> tuple[Shape, ...]:
    """Leaves cut down to the veins."""
    width = divided.whole_width(form.shape, form.length, form.width)
    stroke = max(THINNEST_MM, form.length * 0.02) if not form.fine else form.length * 0.022
    if form.shape == "feathery":
        pairs = divided.THREADS if form.fine else 6
        paths = divided.feathery(form.length, width, pairs, twice=form.fine)
    elif form.shape == "forked":
        paths = divided.forked(form.length, width)
    else:
        paths = divided.fan(form.length, width)
    return (Shape("strand", tuple(paths), stroke),)


def thallus(form: Form) -> tuple[Shape, ...]:
    """Forked bands with a faint midrib."""
    width = divided.whole_width("thallus", form.length, form.length * 0.05)
    paths = tuple(divided.thallus(form.length, width))
    band = max(form.width, THINNEST_MM)
    if band < 2 and not form.fine:
        return (Shape("strand", paths, band),)
    return (Shape("band", paths, band * 1.18), Shape("strand", paths, band), Shape("rib", paths))


def veins(form: Form) -> tuple[Shape, ...]:
    """The midrib, and in a close-up the side veins; tinted where the record says so."""
    paths = vein_paths(form)
    if not paths:
        return ()
    return (Shape(f"tint {form.second}" if form.where == "veins" else "rib", tuple(paths)),)


def vein_paths(form: Form) -> list[Path]:
    """Where the veins run."""
    if form.shape == "clover":
        return []
    if form.shape == "peltate" or (form.fine and radiate(form)):
        reach = 0.42 if form.shape == "peltate" else 0.36
        turns = range(0, 360, 45) if form.shape == "peltate" else (-100, -50, 0, 50, 100)
        spoke = line((0.0, 0.0), (0.0, reach * min(form.length, form.width)))
        return [spoke.mapped(placed((0.0, 0.0), turn).at) for turn in turns]
    top = form.length * (TIPS.get(form.shape, 1.0) - 0.06)
    paths = [line((0.0, 0.0), (0.0, top))] if form.width >= MIDRIB_MM or form.fine else []
    if form.fine and form.shape in SIDES:
        paths += side_veins(form)
    return paths


def radiate(form: Form) -> bool:
    """Whether the veins spread from the stalk."""
    return form.shape == "kidney" or (form.shape == "lobed" and form.width >= 0.8 * form.length)


def side_veins(form: Form) -> list[Path]:
    """Parallel in straps, else rising from the midrib."""
    end = TIPS.get(form.shape, 1.0)
    if form.shape in PARALLEL:
        if form.width < 3:
            return []
        x = form.width * 0.25
        return [line((s * x, form.length * 0.06), (s * x, form.length * 0.9)) for s in (-1, 1)]
    found = []
    for i in range(5):
        share = end * (0.08 + 0.14 * i)
        reach = 0.78 * half_width(form.shape, share + 0.12) * form.width
        base, y = (0.0, share * form.length), (share + 0.12) * form.length
        found += [
            curve(base, (s * reach * 0.6, (base[1] + y) / 2), (s * reach, y)) for s in (-1, 1)
        ]
    return found


def surface(form: Form) -> tuple[Shape, ...]:
    """Dents of a hammered leaf, windows of a lace leaf."""
    window = form.surface == "windowed"
    if not (window or (form.fine and form.surface == "hammered")) or form.shape not in SIDES:
        return ()
    columns, rows = (2, 15) if window and form.fine else (1, 9)
    dashes = []
    for row in range(1, rows):
        share = row / rows * TIPS.get(form.shape, 1.0)
        for column in range(columns):
            x0 = half_width(form.shape, share) * form.width * (0.16 + 0.4 * column)
            x1 = x0 + half_width(form.shape, share) * form.width * (0.28 if window else 0.5)
            y = share * form.length
            dashes += [line((s * x0, y), (s * x1, y + form.length * 0.01)) for s in (-1, 1)]
    return (
        Shape("window" if window else "rib", tuple(dashes), form.length * 0.02 if window else None),
    )


def tint(form: Form, paths: tuple[Path, ...]) -> tuple[Shape, ...]:
    """A stripe or a rim in the second colour."""
    if form.where == "edge":
        return (Shape(f"tint {form.second}", paths, max(form.width * 0.05, 0.4)),)
    if form.where == "stripe":
        narrow = (path.mapped(lambda p: (p[0] * STRIPE, p[1] * 0.94)) for path in paths)
        return (Shape(f"patch {form.second}", tuple(narrow)),)
    return ()
