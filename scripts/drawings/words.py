"""What a drawing shows, in words, for those who cannot see it."""

from scripts.drawings.size import Subject
from scripts.records.claim import Range

KINDS = {
    "stem": "upright leafy stems",
    "creeping-stem": "creeping stems that root along the soil",
    "rootless-stem": "drifting stems without roots",
    "rosette": "a rosette from one crown",
    "grass": "grass-like tufts",
    "carpet": "a low carpet",
    "epiphyte": "leaves from a rhizome on wood",
    "moss": "a cushion of branching moss on a stone",
    "thallus": "flat forked bands without leaves or stems",
    "floating-rosette": "a floating rosette with hanging roots",
    "floating-stem": "a floating stem with leaves on both sides",
    "floating-frond": "small floating fronds",
    "marginal": "leaves in the air above the water, roots in the water",
}
SHAPES = {
    "linear": "narrow, parallel-sided",
    "ribbon": "ribbon-like",
    "needle": "needle-thin",
    "feathery": "finely cut, feathery",
    "forked": "stiff, forked",
    "fan": "cut into a fan of threads",
    "pinnate": "cut into leaflets along a midrib",
    "clover": "four-parted, like a clover",
    "heart": "heart-shaped",
    "kidney": "kidney-shaped",
    "arrow": "arrow-shaped",
    "peltate": "round, on a stalk fixed in the middle",
    "scale": "scale-like",
    "thallus": "forked, band-like",
    "narrow-lanceolate": "narrowly lance-shaped",
    "lanceolate": "lance-shaped",
    "ovate": "egg-shaped, broadest near the base",
    "obovate": "egg-shaped, broadest near the tip",
    "spatulate": "spoon-shaped",
}
ARRANGEMENTS = {
    "basal": "all from the base",
    "opposite": "in pairs",
    "alternate": "one at a node, on alternate sides",
    "whorled": "in rings",
    "spiral": "in a spiral",
    "tuft": "in tufts",
    "two-ranked": "in two rows",
    "single-at-node": "one at each node",
    "branching": "on branching shoots",
    "floating-pair": "in floating pairs",
}
PLACES = {
    "young-leaves": "young leaves",
    "underside": "underside",
    "veins": "veins",
    "stripe": "stripe",
    "edge": "edge",
    "stem": "stem",
    "old-leaves": "old leaves",
}


def leaves_in_words(s: Subject) -> str:
    """The traits as one phrase."""
    t = s.traits
    shape = SHAPES.get(t.leaf_shape, t.leaf_shape)
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
        colour += f", {PLACES[t.colour_where]} {t.colour_second.replace('-', ' ')}"
    edge = "" if t.margin == "smooth" else f", {t.margin} at the edge"
    return f"{shape} {what} {where}, {size}{edge}; {colour}"


def tank_words(s: Subject, tank_height_cm: float) -> str:
    """The label of the picture in the tank."""
    return (
        f"Drawing of {s.plant.name} in a tank {tank_height_cm:g} cm high: "
        f"{KINDS[s.traits.draw]}; {leaves_in_words(s)}."
    )


def span(claim: Range) -> str:
    """A range in plain figures."""
    return ends(claim.low, claim.high)


def ends(low: float, high: float) -> str:
    """Two figures, or one where they are the same."""
    return f"{low:g}" if low == high else f"{low:g} to {high:g}"
