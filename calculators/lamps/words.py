"""What the light calculator says beside its figures."""

from typing import TYPE_CHECKING

from calculators.core.numbers import show_number
from calculators.core.result import Note
from calculators.core.wording import LAMP_OVER_WATER
from calculators.lamps.light import CLASS_FROM_MOL

if TYPE_CHECKING:
    from calculators.light import Light

LONG_DAY_HOURS = 10  # common practice, no source: beyond it algae gain more than plants
FULL_SUN_UMOL = 2_000  # source key lux-ppfd-table
COMPENSATION_UMOL = 16  # Egeria's upper figure (source key egeria-light-2010); others 10 to 37


def notes(
    found: "Light", measured: bool, lumens: bool, lamp: str, hours: float, cover: float
) -> list[Note]:
    """How far to trust the figures, what to change, and what weak light does."""
    said = [
        verdict(found),
        *trust(found, measured, lumens, lamp),
        *wanting(found, hours, cover),
        *strength(found),
    ]
    if hours > LONG_DAY_HOURS:
        text = f"More than {LONG_DAY_HOURS} hours of light feed algae more than plants."
        said.append(Note("caution", text))
    if cover > 0:
        text = (
            f"The light at the plants is a mean. Right under a closed mat there is only about "
            f"{found.ppfd_under_mat_umol:.1f} µmol/m²/s, beside it far more."
        )
        said.append(Note("info", text))
    return [*said, LAMP_OVER_WATER]


def verdict(found: "Light") -> Note:
    """The answer in plain words."""
    here, wanted = show_number(found.dli_substrate_mol, 2), show_number(found.wanted_mol, 2)
    if found.dli_substrate_mol >= found.wanted_mol:
        text = f"Enough: the plants get {here} mol/m²/day, and {wanted} is wanted."
        return Note("info", text, True)
    text = f"Too little: the plants get {here} mol/m²/day, and {wanted} is wanted."
    ways = []
    if found.thin_percent:
        ways.append(f"taking out {found.thin_percent:.0f} % of the floaters")
    if found.hours_for_class is not None:
        ways.append(f"{found.hours_for_class:.1f} hours of light a day")
    if ways:
        text += f" It would take {' or '.join(ways)}."
    return Note("caution", text, True)


def trust(found: "Light", measured: bool, lumens: bool, lamp: str) -> list[Note]:
    """Where the light at the surface comes from."""
    if found.ppfd_surface_umol > FULL_SUN_UMOL:
        return [Note("caution", "That is more light than full sun: check the figures you gave.")]
    if measured and lumens:
        return [
            Note("info", "The measured light is used; the lumens and the kind of lamp are not.")
        ]
    if measured:
        return []
    said = [
        Note(
            "caution",
            "From lumens, each figure may be half as much or half as much again: a meter at the "
            "plants, or the plants themselves, know better.",
        )
    ]
    if lamp == "led-white":
        text = "For white LEDs only: red and blue grow lamps give more photons for their lumens."
        said.append(Note("info", text))
    return said


def wanting(found: "Light", hours: float, cover: float) -> list[Note]:
    """What would bring the plants to the light that is wanted."""
    if found.dli_substrate_mol >= found.wanted_mol:
        return []
    said = []
    needed = found.hours_for_class
    if needed is None:
        text = "No number of hours is enough at this strength: bring more light to the plants."
        said.append(Note("caution", text))
    elif needed > LONG_DAY_HOURS:
        text = (
            f"{needed:.1f} hours would do, but more than {LONG_DAY_HOURS} feed algae first. More light "
            "or fewer floaters is the better way."
        )
        said.append(Note("caution", text))
    if found.thin_percent is None:
        text = f"Thinning alone is not enough in {hours:.1f} hours, even with an open surface."
        said.append(Note("caution", text))
    elif cover > 0:
        text = (
            f"In {hours:.1f} hours it is enough if you take out {found.thin_percent:.0f} % of the "
            "floaters. Over a week is kinder to the animals than at once: they are used to the shade."
        )
        said.append(Note("info", text))
    if (
        found.tip_height_for_class_cm is None
        and found.dli_substrate_mol >= CLASS_FROM_MOL["medium"]
    ):
        text = "A stem's tip does not get what is wanted at any height below the surface either."
        said.append(Note("info", text))
    return said


def strength(found: "Light") -> list[Note]:
    """What so little, or so much, light does."""
    said = []
    dli = found.dli_substrate_mol
    if dli < CLASS_FROM_MOL["low"] or found.ppfd_substrate_umol < COMPENSATION_UMOL:
        text = (
            "Near the limit: in weaker light than about 10 to 40 µmol/m²/s submerged plants use up "
            "more than they make, and waste away over weeks."
        )
        said.append(Note("caution", text))
    if dli < CLASS_FROM_MOL["medium"]:
        text = (
            "Why stems go leggy: in weak light a stem spends what it makes on length, to reach the "
            "surface, not on leaves and side shoots. Warm water does the same. It was measured in "
            f"Egeria, Hydrilla and Myriophyllum. {reach(found)}"
        )
        said.append(Note("info", text))
    if dli >= CLASS_FROM_MOL["high"]:
        text = (
            "Without added carbon dioxide plants can seldom use so much light, and algae take the "
            "rest. Watch the glass, and shorten the day first."
        )
        said.append(Note("caution", text))
    return said


def reach(found: "Light") -> str:
    """What a stem gains by growing up: the curve of light at its tip, in words."""
    height = found.tip_height_for_class_cm
    foot = show_number(found.dli_substrate_mol)
    if height is None:
        return (
            "The curve of light at a stem's tip shows what length gains here: not enough anywhere, "
            f"from {foot} mol at the foot."
        )
    if height == 0:
        return f"Here the foot gets {foot} mol a day, which is what you want for it."
    return (
        f"The curve of light at a stem's tip shows what length gains: {foot} mol a day at the foot, and the "
        f"{show_number(found.wanted_mol)} wanted from {show_number(height)} cm up."
    )
