"""What the soil calculator says beside its figures: animals first, then what to buy."""

from calculators.core.figures import figure
from calculators.core.quantities import HeavyMass, Litres
from calculators.core.result import Link, Note
from calculators.core.wording import counted
from calculators.science.substrate.layers import depth_notes, thick_cap_note
from calculators.soil.outputs import BagKg, NitrogenMass, NitrogenPerArea, Soil, WeeksOfFeed

RICH_PERCENT = (
    0.5  # common practice, no source: above plain topsoil, towards compost and potting mixes
)
FREED_LOW, FREED_HIGH = 0.01, 0.04  # of a field soil's nitrogen a year (source key brady-weil-2008)
NEW_SOIL = (
    Link("Ammonia from new soil", "problems/new-soil-ammonia/"),
    Link("How toxic a reading is", "calculators/free-ammonia/"),
    Link("The first eight weeks", "guides/setting-up/"),
)
READ_THE_BAG = Note(
    "caution",
    "Read the bag: no manure, no added fertiliser, no weed or insect killer, no wetting agent. Shrimp die of "
    "traces of insect killer, and fertiliser turns to ammonia. A bag that does not say is not for animals.",
)
DUST = Note(
    "info",
    "Gloves for soil, and wet it before you sieve: its dust and that of sand harm lungs. Wash the cap until "
    "the water runs clear. Test the cap with vinegar: what fizzes makes water harder.",
)
SETTLING = Note(
    "info",
    "Soil settles by a tenth or more when wet, and weights differ by a fifth from bag to bag: where a bag "
    "is only just enough, take one more.",
)


def notes(
    layers: Soil,
    soil_cm: float,
    cap_cm: float,
    nitrogen_percent: float,
    bag_l: float,
    bag_kg: float,
) -> tuple[Note, ...]:
    """What to buy, the first weeks, then the layers and what the soil holds; a page puts danger on top."""
    with_soil = layers.soil_l > 0
    return (
        to_buy(layers, bag_l, bag_kg),
        *(first_weeks(nitrogen_percent) if with_soil else []),
        *depth_notes(soil_cm, cap_cm),
        *thick_cap_note(soil_cm, cap_cm),
        *([READ_THE_BAG, holds(layers), SETTLING] if with_soil else []),
        DUST,
    )


def first_weeks(nitrogen_percent: float) -> list[Note]:
    """Ammonia from new soil: no animals before tests say so, and rich soil is the worse for it."""
    if nitrogen_percent >= RICH_PERCENT:
        text = (
            f"Soil with {RICH_PERCENT} % of nitrogen or more gives off much ammonia in its first weeks, "
            "enough to kill. Take plainer soil, or soak it for one to two weeks and pour the water off. "
        )
        return [Note("danger", text + NO_ANIMALS, True, NEW_SOIL)]
    text = "New soil gives off ammonia in its first weeks. "
    return [Note("caution", text + NO_ANIMALS, True, NEW_SOIL)]


NO_ANIMALS = (
    "No animals before ammonia and nitrite have read zero on three days within a week, with no water "
    "change in between."
)


def to_buy(layers: Soil, bag_l: float, bag_kg: float) -> Note:
    """What to buy, in plain words."""
    parts = []
    if layers.soil_l > 0:
        litres, bag = figure(Litres, layers.soil_l), figure(Litres, bag_l)
        parts.append(f"{litres} L of soil, {counted(layers.soil_bags, 'bag')} of {bag} L")
    if layers.cap_l > 0:
        kilograms, bag = figure(HeavyMass, layers.cap_kg), figure(BagKg, bag_kg)
        parts.append(f"{kilograms} kg of cap, {counted(layers.cap_bags, 'bag')} of {bag} kg")
    if not parts:
        return Note("info", "Nothing to buy: both layers are 0 cm deep.", True)
    return Note("info", f"Buy {', and '.join(parts)}.", True)


def holds(layers: Soil) -> Note:
    """How much nitrogen lies in the soil, beside the feed, and how little of it comes free."""
    text = (
        f"The soil holds about {figure(NitrogenMass, layers.soil_n_g)} g of nitrogen "
        f"({figure(NitrogenPerArea, layers.soil_n_g_m2)} g/m²)"
    )
    if layers.feed_weeks is not None:
        text += f", as much as {figure(WeeksOfFeed, layers.feed_weeks)} weeks of your feed"
    low, high = (figure(NitrogenMass, share * layers.soil_n_g) for share in (FREED_LOW, FREED_HIGH))
    text += (
        f". Roots and bacteria get little of it at a time: in a field {low} to {high} g a year would come "
        "free. It is a store for roots, and no reason to feed less."
    )
    return Note("info", text)
