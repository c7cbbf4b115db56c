"""What a drawing shows, in words, for those who cannot see it."""

from calculators.identify.record_words import ALSO
from calculators.identify.trait_words import ARRANGEMENTS, FORMS, SHAPES
from scripts.drawings.size import Subject
from scripts.records.claim import Range


def leaves_in_words(s: Subject) -> str:
    """The traits as one phrase."""
    t = s.traits
    shape = SHAPES[t.leaf_shape]
    where = ARRANGEMENTS[t.arrangement]
    if t.whorl and t.arrangement == "whorled":
        where = f"in rings of {ends(t.whorl.low, t.whorl.high)}"
    what = (
        "bands"
        if t.leaf_shape == "thallus"
        else "fronds"
        if t.draw == "floating-frond"
        else "leaves"
    )
    size = f"{span(t.leaf_length_mm)} mm long and {span(t.leaf_width_mm)} mm wide"
    colour = t.colour.replace("-", " ")
    if t.colour_second and t.colour_where:
        colour += f", {ALSO[t.colour_where]} {t.colour_second.replace('-', ' ')}"
    edge = "" if t.margin == "smooth" else f", {t.margin} at the edge"
    return f"{shape} {what} {where}, {size}{edge}; {colour}"


def tank_words(s: Subject, tank_height_cm: float) -> str:
    """The label of the picture in the tank."""
    return (
        f"Drawing of {s.plant.name} in a tank {tank_height_cm:g} cm high: "
        f"{FORMS[s.traits.draw]}; {leaves_in_words(s)}."
    )


def span(claim: Range) -> str:
    """A range in plain figures."""
    return ends(claim.low, claim.high)


def ends(low: float, high: float) -> str:
    """Two figures, or one where they are the same."""
    return f"{low:g}" if low == high else f"{low:g} to {high:g}"
