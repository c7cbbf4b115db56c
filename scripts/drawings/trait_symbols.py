"""A small drawing for each answer to each question about a plant, by the id that the answers use."""

from collections.abc import Iterator
from typing import get_args

from calculators.identify.drawn_answers import MOST_COUNTED, picture_id
from calculators.identify.misreading import TERMS
from calculators.identify.trait_evidence import MEASURED, answers_of
from calculators.identify.trait_table import Margin, Surface, Tip
from scripts.drawings.trait_leaves import (
    PLAIN,
    face_symbol,
    leaf_symbol,
    proportions,
    ring_symbol,
    stalk_symbol,
    symbol,
)
from scripts.drawings.trait_sizes import size_symbol
from scripts.drawings.trait_stems import (
    BELOW,
    BY_FORM,
    STANDING,
    STONE,
    form_symbol,
    standing_symbol,
)
from scripts.drawings.veins import Form
from scripts.records.load import Library

BROAD = PLAIN._replace(shape="ovate", width=PLAIN.length * 0.6)
VEINED = {"net": "ovate", "parallel": "ribbon", "arched": "heart", "midrib": "linear"}
PETALS = {"white": "#fffdf6", "yellow": "#e9c83f", "blue": "#6f8fd8", "green": "var(--green)"}
ROOTED = {
    "in-soil": ("rosette", BELOW), "in-water": ("floating-rosette", "M20 17v22M24 17v26M28 17v20"),
    "on-hardscape": ("epiphyte", STONE), "none": ("rootless-stem", ""),
}  # fmt: skip


def trait_symbols(library: Library) -> str:
    """Every drawing, as ``<symbol>`` elements."""
    made = (*of_leaves(library), *of_plants(library), *of_sizes(), *of_senses())
    return "".join(made)


def of_leaves(library: Library) -> Iterator[str]:
    """Shape, edge, tip, face, stalk, veins and colour."""
    for shape in TERMS["shape"].values:
        length, width = proportions(shape, library.plants.values())
        yield leaf_symbol(picture_id("shape", shape), Form(shape, length, width, fine=True))
    for margin in get_args(Margin):
        yield leaf_symbol(picture_id("margin", margin), BROAD._replace(margin=margin))
    for tip in get_args(Tip):
        shown = PLAIN._replace(shape="oblong", tip=tip)
        yield leaf_symbol(picture_id("tip", tip), shown)
    for surface in get_args(Surface):
        yield face_symbol(picture_id("surface", surface), surface, BROAD)
    for stalk in TERMS["stalk"].values:
        yield stalk_symbol(picture_id("stalk", stalk), stalk)
    for veins in TERMS["veins"].values:
        length, width = proportions(VEINED[veins], library.plants.values())
        shown = Form(VEINED[veins], length, width, fine=veins != "midrib")
        yield leaf_symbol(picture_id("veins", veins), shown)
    for colour in TERMS["colour"].values:
        yield leaf_symbol(picture_id("colour", colour), BROAD, colour)


def of_plants(library: Library) -> Iterator[str]:
    """The form, what floats, the roots, and how leaves stand."""
    for form in TERMS["form"].values:
        yield form_symbol(picture_id("form", form), form, library)
    yield form_symbol(picture_id("floats", "floating"), "floating-rosette", library)
    yield form_symbol(picture_id("floats", "rooted"), "stem", library, BELOW)
    for roots, (form, beside) in ROOTED.items():
        yield form_symbol(picture_id("roots", roots), form, library, beside)
    for arrangement in TERMS["arrangement"].values:
        name = picture_id("arrangement", arrangement)
        if arrangement in STANDING:
            yield standing_symbol(name, arrangement)
        else:
            yield form_symbol(name, BY_FORM[arrangement], library)
    for count in range(2, MOST_COUNTED + 1):
        yield ring_symbol(picture_id("whorl_count", str(count)), count)


def of_sizes() -> Iterator[str]:
    """Classes of sizes."""
    for trait in MEASURED:
        for low, high in answers_of(trait):
            name = picture_id(trait, f"{low:g}".replace(".", "-"))
            yield size_symbol(name, trait, low, high)


def of_senses() -> Iterator[str]:
    """Smell, as waves above a leaf, and flowers by their colour."""
    leaf = (
        '<path d="M28 50Q12 34 28 20Q44 34 28 50z" fill="var(--green)" stroke="var(--green-edge)"/>'
    )
    waves = {"none": 0, "spicy": 3, "fishy": 2}
    for smell, number in waves.items():
        lines = "".join(f"M{22 + 6 * i} 16q-4 -4 0 -7t0 -7" for i in range(number))
        path = f'<path d="{lines}" fill="none" stroke="var(--soft)"/>' if lines else ""
        yield symbol(picture_id("smell", smell), leaf + path)
    for flower in TERMS["flower"].values:
        yield symbol(
            picture_id("flower", flower), spathe() if flower == "spathe" else petals(flower)
        )


def petals(colour: str) -> str:
    """Five petals."""
    fill = PETALS.get(colour, f"var(--{colour})")
    made = "".join(
        f'<ellipse cx="28" cy="16" rx="7" ry="11" transform="rotate({72 * i} 28 28)"/>'
        for i in range(5)
    )
    middle = '<circle cx="28" cy="28" r="4" fill="var(--soft)"/>'
    return f'<g fill="{fill}" stroke="var(--soft)">{made}</g>{middle}'


def spathe() -> str:
    """A spike in a hood."""
    hood = '<path d="M28 50Q6 30 28 4Q48 28 28 50z" fill="var(--pale-green)" stroke="var(--green-edge)"/>'
    return hood + '<path d="M28 42V18" stroke="var(--soft)" stroke-width="6" fill="none"/>'
