"""Veins, dents and windows of a blade, and the form of a leaf that they all need."""

from typing import NamedTuple

from scripts.drawings.geometry import Path, curve, line, placed
from scripts.drawings.outlines import SIDES, TIPS, half_width
from scripts.drawings.scene import Shape

MIDRIB_MM = 6.0  # a narrower leaf shows no midrib in a tank
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
    paths = [line((0.0, 0.0), (0.0, top))] if form.fine or shows_midrib(form) else []
    if form.fine and form.shape in SIDES:
        paths += side_veins(form)
    return paths


def shows_midrib(form: Form) -> bool:
    """Whether the midrib can be seen in a tank; a strap's is hidden or no thicker than its veins."""
    return form.width >= MIDRIB_MM and form.shape not in PARALLEL


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
    veins = []
    for i in range(5):
        share = end * (0.08 + 0.14 * i)
        reach = 0.78 * half_width(form.shape, share + 0.12) * form.width
        base, y = (0.0, share * form.length), (share + 0.12) * form.length
        veins += [
            curve(base, (s * reach * 0.6, (base[1] + y) / 2), (s * reach, y)) for s in (-1, 1)
        ]
    return veins


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
