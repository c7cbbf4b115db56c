"""What the calculator for a medicine's volume says: copper and the vet before any dose."""

from typing import NamedTuple

from calculators.core.numbers import show_number
from calculators.core.result import Link, Note
from calculators.science.animals.reading_lines import edge_of, standing

HARMS_UG_L = edge_of("copper_ug_l", "harmful_high")
KILLS_UG_L = edge_of("copper_ug_l", "deadly_high")
ODD_LABEL_PER_L = 2.0  # in the label's unit; a judgement, no source: salt alone is dosed so high
COPPER_LINK = (Link("Copper in the water", "problems/copper-poisoning/"),)


class MedicineDose(NamedTuple):
    """The waters in L, the doses in the label's unit, and copper in micrograms a litre or None.

    ``per_l`` is the label's amount for one litre of water, in its own unit.
    """

    gross_l: float
    net_l: float
    dose: float
    redose: float
    change_percent: float
    copper_ug_l: float | None
    per_l: float


def notes(here: MedicineDose) -> tuple[Note, ...]:
    """A label that cannot be, copper, then the dose with who decides, then how a treatment goes wrong."""
    return (
        *odd_label(here),
        about_copper(here.copper_ug_l),
        answer(here),
        *nothing_displaced(here),
        TAKE_OUT, ADD_AIR, TRUE_VOLUME,
        about_changes(here),
        IN_A_TANK_OF_ITS_OWN, KEEP_AWAY,
    )  # fmt: skip


def is_odd(per_l: float) -> bool:
    """Whether so much for each litre, in the label's own unit, is likely a slip of two figures."""
    return per_l >= ODD_LABEL_PER_L


def odd_label(here: MedicineDose) -> list[Note]:
    """A label's dose that hardly any medicine asks for, where two figures were likely swapped."""
    if not is_odd(here.per_l):
        return []
    text = (
        "Read the label again before you give any, and see whether its two figures stand in their places. "
        f"By them each litre of water gets {show_number(here.per_l, 2)} mL, drops, tablets or grams: salt "
        "apart, hardly any medicine is dosed so high, and an overdose kills."
    )
    return [Note("danger", text, True)]


def about_copper(copper_ug_l: float | None) -> Note:
    """Copper kills shrimp and snails, whatever the label says for fish."""
    if copper_ug_l is None:
        text = (
            "Look for copper on the label, under its chemical names too (copper sulfate, cupric, CuSO₄). "
            f"Shrimp and snails suffer from about {show_number(HARMS_UG_L, 1)} µg/L and die of "
            f"{show_number(KILLS_UG_L)}. Other remedies, against worms and lice above all, kill them as "
            "well: the label says which."
        )
        return Note("caution", text, True, COPPER_LINK)
    if copper_ug_l == 0:
        text = (
            "No copper by your figure. Other remedies, against worms and lice above all, kill shrimp and "
            "snails as well: the label says which."
        )
        return Note("caution", text, True)
    shown = f"This dose brings {show_number(copper_ug_l, 2)} µg/L of copper"
    level = standing("copper_ug_l", copper_ug_l).level
    if level == "in-range":
        text = (
            f"{shown}, below {show_number(HARMS_UG_L)} µg/L, where it harmed young amphipods. Each further "
            f"dose adds to it. {NEVER_WITH} {SOFT}"
        )
        return Note("caution", text, True, COPPER_LINK)
    does = "can kill" if level == "deadly" else "harms"
    text = f"{shown}, which {does} shrimp and snails. {NEVER_WITH} {SOFT}"
    return Note("danger", text, True, COPPER_LINK)


NEVER_WITH = (
    "Do not give it in a tank with shrimp or snails, nor in one where they are to live: soil and stones "
    "hold it and give it back for weeks."
)
SOFT = (
    "In soft water it kills fish too: half of a small rasbora at 5.6 µg/L in four days, half of young "
    "catfish at 50 in very soft water. Ask a vet, and test copper."
)


def answer(here: MedicineDose) -> Note:
    """The dose, by the label's unit, after the vet and the label."""
    first = "A vet who treats fish, and the label, come before this page."
    units = f"{show_number(here.dose)} of its units (mL, drops, tablets or grams)"
    if is_odd(here.per_l):  # nobody should pour what a slip of two figures comes to
        text = (
            f"{first} These two figures would be {units} for {show_number(here.net_l)} L of water: give that "
            "only if the label, read again, says so."
        )
    else:
        text = f"{first} By the label, {show_number(here.net_l)} L of water take {units}."
    return Note("caution", text, True)


def nothing_displaced(here: MedicineDose) -> list[Note]:
    """A tank with soil that is dosed as if it held water alone."""
    if here.net_l < here.gross_l:
        return []
    text = (
        "Nothing is taken off for soil, stones and wood. A bare tank alone is so: with soil under a cap a "
        "tenth to a quarter of it is no water, and this dose is too much."
    )
    return [Note("caution", text, True)]


TAKE_OUT = Note(
    "caution",
    "Never mix medicines, nor give a second one before the first is out of the water. Take out carbon "
    "and zeolite and turn off an ultraviolet lamp while it works, and put fresh carbon in at the end.",
)
ADD_AIR = Note(
    "caution",
    "Add air before the first drop and as long as it works: medicine, sick gills and dying algae leave less "
    "oxygen. If animals gasp or lie down after a dose, add more air, put in fresh carbon and ask the vet; "
    "change part of the water where a test shows no ammonia. Test "
    "ammonia and nitrite daily: some medicines harm the filter.",
    links=(Link("Animals in danger", "danger/"),),
)
TRUE_VOLUME = Note(
    "info",
    "Measure the water as it stands: a tank filled to 5 cm below the rim, or let down for the treatment, "
    "holds less. Where in doubt take the smaller volume; too little can be made up, too much cannot.",
    links=(Link("Work out the free water", "calculators/tank/"),),
)


def about_changes(here: MedicineDose) -> Note:
    """What a change takes out, and that the label decides on putting it back."""
    if here.change_percent == 0:
        return Note(
            "info",
            "After a change put back no more than the share it took out, only where the label says so.",
        )
    text = (
        f"A change of {show_number(here.change_percent)} % takes out at most {show_number(here.redose)} of "
        "those units. Put back no more than that, into the new water, and only where the label says so. "
        "The full dose again would add up."
    )
    return Note("info", text)


IN_A_TANK_OF_ITS_OWN = Note(
    "info",
    "Sick fish are better treated in a bare tank of their own, with a heater, air and an old filter "
    "sponge: soil takes up medicine, plants and shrimp suffer, and the dose is easier to get right.",
)
KEEP_AWAY = Note(
    "info",
    "Some fish medicines need a prescription; your place's law says. Wear gloves, keep them from "
    "children and food, and pour no treated water into a pond, stream or drain outdoors.",
)
