"""One leaf as shapes for a picture: its outline or threads, its veins, its second colour."""

from scripts.drawings import divided
from scripts.drawings.geometry import Path, line
from scripts.drawings.outlines import SIDES, outline
from scripts.drawings.scene import Shape
from scripts.drawings.veins import PARALLEL, Form, surface, veins
from scripts.records.traits import Traits

THREADED = ("feathery", "forked", "fan")
SHOWS_MARGIN_MM = 12.0  # on a narrower leaf in a tank its margin is too small to see
THINNEST_MM = 0.5  # a thread drawn thinner than this is lost on a phone
STRIPE = 0.3  # width of a stripe, in widths of the blade


def form_of(traits: Traits, length: float, width: float, *, fine: bool = False) -> Form:
    """The leaf of a record's traits at one size, mm."""
    return Form(
        traits.leaf_shape,
        length,
        width,
        traits.margin if fine or width >= SHOWS_MARGIN_MM else "smooth",
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
    width = divided.full_width(form.shape, form.length, form.width)
    stroke = max(THINNEST_MM, form.length * 0.028) if not form.fine else form.length * 0.022
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
    width = divided.full_width("thallus", form.length, form.length * 0.05)
    paths = tuple(divided.thallus(form.length, width))
    band = max(form.width, THINNEST_MM)
    if band < 2 and not form.fine:
        return (Shape("strand", paths, band),)
    return (Shape("band", paths, band * 1.18), Shape("strand", paths, band), Shape("rib", paths))


def tint(form: Form, paths: tuple[Path, ...]) -> tuple[Shape, ...]:
    """A stripe or a rim in the second colour."""
    if form.where == "edge":
        rim = max(form.width * 0.05, 0.4) if form.shape in SIDES else form.length * 0.008
        return (Shape(f"tint {form.second}", paths, rim),)
    if form.where == "stripe" and form.shape in PARALLEL and not form.fine:
        middle = line((0.0, form.length * 0.02), (0.0, form.length * 0.93))
        return (Shape(f"tint {form.second}", (middle,), form.width * STRIPE),)
    if form.where == "stripe":
        narrow = (path.mapped(lambda p: (p[0] * STRIPE, p[1] * 0.94)) for path in paths)
        return (Shape(f"patch {form.second}", tuple(narrow)),)
    return ()
