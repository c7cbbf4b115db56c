"""What the tank calculator says beside its figures. No floor is ever called good enough here."""

from calculators.core.numbers import show_number
from calculators.core.quantities import POUND_KG, US_GALLON_L
from calculators.core.result import Note
from calculators.science.substrate.layers import depth_notes

ASK_FROM_KG = 100  # common practice, no source: a small tank is no heavier than a grown person
TWO_PEOPLE_KG = 20  # common practice, no source

LIFTING = Note(
    "caution",
    "Never lift or push a tank that has water or soil in it: glass breaks without warning, and backs "
    f"too. Above about {TWO_PEOPLE_KG} kg lift with two people, with gloves and bent knees.",
    True,
)
LEVEL = Note(
    "info",
    "Stand it level and on its whole bottom, as the maker says, out of the way of doors and children. "
    "Sockets belong above the water line or behind a loop of cable; an electrician knows.",
)


def about_glass(glass_mm: float, trade_mm: float | None) -> Note:
    """Glass that is thinner than the trade would use; of thicker glass nothing is promised."""
    if trade_mm is None:
        text = (
            "Whether a round wall is thick enough is not worked out here. Ask its maker or a tank builder "
            "before you fill it."
        )
        return Note("caution", text)
    least = show_number(trade_mm, 2)
    glass = show_number(glass_mm)
    if glass_mm < trade_mm:
        text = (
            f"Glass of {glass} mm is thinner than the trade would use for a wall of this size and depth "
            f"with no rim and no brace: about {least} mm (common practice, and a plate formula). A wall that "
            "breaks lets all the water out at once, with people beside it. Do not fill it before a "
            "tank builder has seen it. A rim or braces may change this; they are not known here."
        )
        return Note("danger", text, True)
    text = (
        f"Glass of {glass} mm is not thinner than the trade would use for such a wall, about {least} mm. "
        "That proves nothing about this tank: seams, chips, the bottom pane and the stand are not known "
        "here. A second-hand or self-built tank wants a builder's look, and days full outdoors first."
    )
    return Note("info", text)


def verdict(net_l: float, mass_kg: float) -> Note:
    """The answer in plain words, in both systems of units."""
    litres, gallons = show_number(net_l), show_number(net_l / US_GALLON_L)
    kilograms, pounds = show_number(mass_kg, 2), show_number(mass_kg / POUND_KG, 2)
    text = (
        f"It holds {litres} L ({gallons} US gal) of free water and weighs about {kilograms} kg "
        f"({pounds} lb) filled, with its stand."
    )
    return Note("info", text, True)


def notes(mass_kg: float, soil_cm: float, cap_cm: float) -> list[Note]:
    """The building first, then backs, then the layers."""
    collected = [about_floor(mass_kg), LIFTING, *depth_notes(soil_cm, cap_cm)]
    if soil_cm > 0:
        text = (
            "Weights of soil and cap differ by a fifth from bag to bag: weigh a litre of yours dry."
        )
        collected.append(Note("info", text))
    return [*collected, LEVEL]


def about_floor(mass_kg: float) -> Note:
    """Whom to ask about the floor."""
    rooms = (
        "Rooms are built for a load spread over the whole room (in the United States often 195 kg/m², "
        "in bedrooms 146), not for one spot, so the figure here cannot be held against that."
    )
    if mass_kg < ASK_FROM_KG:
        return Note("info", f"Choose a sound, level piece of furniture or stand. {rooms}")
    return Note(
        "caution",
        "Ask about the building before you fill it: the owner, and a structural engineer where the "
        f"floor is of wood, old, upstairs, or the tank is large. {rooms} Walls, the way the joists "
        "run and the stand's feet all matter.",
    )
