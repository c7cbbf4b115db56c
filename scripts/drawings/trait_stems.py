"""A piece of stem for each way in which leaves may stand, and the whole plant for each form."""

from scripts.drawings.geometry import line, placed
from scripts.drawings.leaves import leaf
from scripts.drawings.scene import Copy, Item, Shape, Symbols
from scripts.drawings.thumbnail import ROUTINES, disc, joined
from scripts.drawings.trait_leaves import THICK, framed, symbol
from scripts.drawings.veins import Form
from scripts.records.load import Library
from scripts.records.plant import Plant
from scripts.records.traits import Traits

BLADE = Form("lanceolate", 20.0, 8.0, fine=True)
GAP, NODES = 13.0, 4
# The angles of the leaves at each node, in turn, from upright.
STANDING: dict[str, tuple[tuple[float, ...], ...]] = {
    "opposite": ((-62.0, 62.0),),
    "alternate": ((-62.0,), (62.0,)),
    "two-ranked": ((-80.0,), (80.0,)),
    "spiral": ((-62.0,), (10.0,), (62.0,), (-20.0,)),
    "whorled": ((-75.0, -38.0, 38.0, 75.0),),
    "single-at-node": ((0.0,),),
}
# What stands otherwise is shown by the whole of a plant that has it so.
BY_FORM = {
    "basal": "rosette",
    "tuft": "carpet",
    "branching": "moss",
    "floating-pair": "floating-stem",
}
STONE = disc((24.0, 44.0), 17.0, 5.0)
BELOW = "".join(
    f"M{joined(x, 45)}q{joined(turn, 5, turn * 1.6, 9)}"
    for x, turn in ((22, -3), (24, 0.5), (26, 3))
)  # roots


def standing_symbol(name: str, arrangement: str) -> str:
    """How leaves stand on a stem; a creeping one lies."""
    symbols = Symbols()
    creeping = arrangement == "single-at-node"
    long = BLADE._replace(length=26.0, width=5.0) if creeping else BLADE
    blade = symbols.need("l", leaf(long))
    angles = STANDING[arrangement]
    nodes = NODES if len(angles) < NODES else NODES + 2
    gap = GAP if len(angles) == 1 else GAP * 0.62
    end = (gap * nodes, 0.0) if creeping else (0.0, gap * nodes)
    items: list[Item] = [Shape("stem", (line((0.0, 0.0), end),), 2 * THICK)]
    for node in range(nodes):
        at = gap * (node + 0.5)
        base = (at, 0.0) if creeping else (0.0, at)
        items += [Copy(blade, placed(base, turn)) for turn in angles[node % len(angles)]]
    return framed(name, items, symbols)


def of_form(form: str, library: Library) -> tuple[Plant, Traits]:
    """The first plant of a form, by its key."""
    made = ((plant, plant.traits) for _, plant in sorted(library.plants.items()) if plant.traits)
    return next((plant, traits) for plant, traits in made if traits.draw == form)


def form_symbol(name: str, form: str, library: Library, beside: str = "") -> str:
    """A whole plant, as the lists show it; ``beside`` is a path drawn behind it."""
    plant, traits = of_form(form, library)
    shapes = "".join(ROUTINES[traits.draw](plant, traits))
    water = '<path d="M1 17H47" stroke="var(--water-line)"/>' if form.startswith("floating") else ""
    cut = form == "moss"
    fill, edge = ("none", "var(--green-edge)") if cut else ("var(--green)", "var(--green-edge)")
    behind = f'<path d="{beside}" fill="none" stroke="var(--root)"/>' if beside else ""
    body = f'{water}{behind}<path d="{shapes}" fill="{fill}" stroke="{edge}"/>'
    return symbol(name, body, 48)
