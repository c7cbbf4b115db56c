"""An animal to scale over a rule, and a small one for lists where all are drawn at one scale."""

from collections.abc import Callable
from math import cos, pi, sin

from scripts.drawings.animals import fish, shells_and_claws
from scripts.drawings.animals.outline import BodyOutline, closed
from scripts.drawings.animals.pattern_marks import marks
from scripts.drawings.draw import svg
from scripts.drawings.geometry import Affine
from scripts.drawings.scale_rule import foot_rule
from scripts.drawings.scene import Item, Shape, Symbols, Writer, bounds, moved
from scripts.drawings.svg import number
from scripts.records.animal import Animal

OUTLINES: dict[str, Callable[[], BodyOutline]] = {
    "spindle": fish.spindle,
    "round-tailed": fish.round_tailed,
    "gourami": fish.gourami,
    "tall": fish.tall,
    "cichlid": fish.cichlid,
    "armoured": fish.armoured,
    "sucker": fish.sucker,
    "eel": fish.eel,
    "globe": fish.globe,
    "shrimp": shells_and_claws.shrimp,
    "crayfish": shells_and_claws.crayfish,
    "turret": shells_and_claws.turret,
    "cone": shells_and_claws.cone,
    "round-shell": shells_and_claws.round_shell,
    "cap": shells_and_claws.cap,
    "coil": shells_and_claws.coil,
    "clam": shells_and_claws.clam,
}
COLOURS = {
    "fish": "bronze",
    "shrimp": "red-brown",
    "crayfish": "red-brown",
    "snail": "brown",
    "clam": "olive",
}
EYE_SHARE = 0.06  # radius of an eye, in depths of the body
RULE_SHARE = 0.055  # height of the rule's figures, in lengths of the rule
PX_PER_MM = 0.8  # in lists, where all animals are drawn at one scale
LINE_MM = 0.3


def pieces(animal: Animal, length_mm: float) -> list[Item]:
    """The animal at a length, its nose at the origin; 1 unit is 1 mm."""
    shape = animal.body.shape
    outline = OUTLINES[shape.form]()
    depth = length_mm * shape.depth_percent / 100
    drawn: list[Item] = [
        *(Shape("blade back", (fin,)) for fin in outline.behind),
        Shape("blade", (outline.body,)),
        *(Shape("mass", (mark,)) for mark in marks(outline, shape.marks)),
        *(Shape("rib", (run,)) for run in outline.lines),
    ]
    placed = [moved(item, Affine(length_mm, 0, 0, depth, 0, 0)) for item in drawn]
    if outline.eye:
        x, y = outline.eye[0] * length_mm, outline.eye[1] * depth
        r = max(EYE_SHARE * depth, LINE_MM)
        ring = closed(*((x + r * cos(i * pi / 4), y + r * sin(i * pi / 4)) for i in range(8)))
        placed += [Shape("mass", (ring,)), Shape("rib", (ring,))]
    return placed


def in_words(animal: Animal, form: str, length_mm: float) -> str:
    """What the picture shows, for one who does not see it."""
    deep = animal.body.shape.depth_percent
    return f"{animal.name} at {length_mm:g} mm: {form}, {deep:g} % as deep as long."


def picture(slug: str, animal: Animal, form: str) -> str:
    """At its middle length over a rule as long as the greatest length recorded."""
    length, rule = float(animal.body.typical_mm), animal.body.length_mm.high
    items, size = pieces(animal, length), rule * RULE_SHARE
    box, edge = bounds(items, Symbols()), rule * 0.03
    left = max(-box.left, 0) + edge
    width = left + max(box.right, rule) + size * 1.6 + edge
    pen = Writer(slug, (left, box.top + edge), 2)
    y = box.top - box.bottom + 2 * edge
    body = (
        f'<g class="plant leaf-{COLOURS[animal.group]}">{pen.items(items)}</g>'
        f"{foot_rule(left, y, rule, size)}"
    )
    return svg(body, (width, y + 2 * size), in_words(animal, form, length), size, "drawing animal")


def small_picture(slug: str, animal: Animal) -> str:
    """At its middle length, for a list in which all have one scale."""
    items = pieces(animal, float(animal.body.typical_mm))
    box = bounds(items, Symbols())
    pen = Writer(slug, (-box.left + 1, box.top + 1), 1)
    width, height = (box.right - box.left + 2), (box.top - box.bottom + 2)
    shown = " ".join(
        f'{side}="{number(mm * PX_PER_MM, 0)}"'
        for side, mm in (("width", width), ("height", height))
    )
    return (
        f'<svg class="small-animal leaf-{COLOURS[animal.group]}" viewBox="0 0 {number(width, 1)} '
        f'{number(height, 1)}" {shown} aria-hidden="true">{pen.items(items)}</svg>'
    )
