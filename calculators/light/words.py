"""What the light calculator says beside its figures."""

from calculators.core.figures import figure
from calculators.core.result import Note
from calculators.core.wording import LAMP_OVER_WATER
from calculators.light.outputs import DayLight, Flux, Hours, Light, Share
from calculators.science.light.lamps import CLASS_FROM_MOL, DAY_HOURS

LONG_DAY_HOURS = 10  # common practice, no source: beyond it algae gain more than plants
NIGHT_HOURS = 10  # dark that laboratories give to fish at least (source key reed-jennings-2011)
FULL_SUN_UMOL = 2_000  # source key lux-ppfd-table
COMPENSATION_UMOL = 16  # Egeria's upper figure (source key egeria-light-2010); others 10 to 37
SLOWLY = Note(
    "info",
    "Thin over a week rather than at once: animals that are used to the shade are frightened by "
    "sudden light (common practice, no source).",
)


def notes(result: Light, measured: bool, lumens: bool, lamp: str, cover: float) -> list[Note]:
    """What to change, how far to trust the figures, and what weak light does.

    The ``cover`` of floaters is in percent of the surface.
    """
    parts = [
        verdict(result, cover),
        *trust(result, measured, lumens, lamp),
        *wanting(result),
        *strength(result),
    ]
    hours = DAY_HOURS - result.dark_hours
    if LONG_DAY_HOURS < hours <= DAY_HOURS - NIGHT_HOURS:
        text = f"More than {LONG_DAY_HOURS} hours of light feed algae more than plants."
        parts.append(Note("caution", text))
    if 0 < cover < 100:
        text = (
            f"The light at the plants is a mean. Right under a closed mat there is only about "
            f"{figure(Flux, result.ppfd_under_mat_umol)} µmol/m²/s, beside it far more."
        )
        parts.append(Note("info", text))
    return [*parts, LAMP_OVER_WATER]


def verdict(result: Light, cover: float) -> Note:
    """The answer in plain words: the animals' night first, then what the plants get.

    The ``cover`` of floaters is in percent of the surface.
    """
    here, wish = figure(DayLight, result.dli_substrate_mol), figure(DayLight, result.wanted_mol)
    gets = f"the plants get {here} mol/m²/day, and {wish} is wanted."
    if result.dark_hours < NIGHT_HOURS:
        return night(result, gets)
    if result.dli_substrate_mol >= result.wanted_mol:
        return Note("info", f"Enough: {gets}", True)
    if nearly_enough(result):
        return Note("info", f"Just about enough: {gets}", True)
    return Note("caution", f"Too little: {gets} {remedy(result, cover)}", True)


def nearly_enough(result: Light) -> bool:
    """Whether what the plants get differs from what is wanted by less than the figures can tell."""
    return figure(DayLight, result.dli_substrate_mol) == figure(DayLight, result.wanted_mol)


def night(result: Light, gets: str) -> Note:
    """A day so long that the animals have no night, whatever the plants get."""
    lit, longest = DAY_HOURS - result.dark_hours, DAY_HOURS - NIGHT_HOURS
    text = (
        f"Too long a day: {figure(Hours, result.dark_hours)} hours of dark are no night for the animals, "
        f"which need about {NIGHT_HOURS}. Shorten it to {LONG_DAY_HOURS} hours of lamp, never above "
        f"{figure(Hours, longest)}. In {figure(Hours, lit)} hours {gets}"
    )
    return Note("caution", text, True)


def remedy(result: Light, cover: float) -> str:
    """What would bring the light: fewer floaters or longer hours where they do, else a stronger lamp.

    The ``cover`` of floaters is in percent of the surface.
    """
    if result.light_left_percent == 0:
        first = "The floaters are closed and let nothing through: "
        if result.thin_percent:
            return f"{first}take out {figure(Share, result.thin_percent)} % of them."
        return f"{first}open them first, and then look at the lamp."
    ways = []
    if result.thin_percent:
        ways.append(f"taking out {figure(Share, result.thin_percent)} % of the floaters")
    if result.hours_for_class is not None and result.hours_for_class <= LONG_DAY_HOURS:
        ways.append(f"{figure(Hours, result.hours_for_class)} hours of light a day")
    if not ways:
        fewer = "fewer floaters and " if cover > 0 else ""
        return f"What helps is {fewer}a stronger lamp, or one nearer the water."
    return f"What helps is {' or '.join(ways)}."


def trust(result: Light, measured: bool, lumens: bool, lamp: str) -> list[Note]:
    """Where the light at the surface comes from."""
    if result.ppfd_surface_umol > FULL_SUN_UMOL:
        return [Note("caution", "That is more light than full sun: check the figures you gave.")]
    if measured and lumens:
        return [
            Note("info", "The measured light is used; the lumens and the kind of lamp are not.")
        ]
    if measured:
        return []
    notes = [
        Note(
            "caution",
            "From lumens, each figure may be half as much or half as much again: a meter at the "
            "plants, or the plants themselves, know better.",
        )
    ]
    if lamp == "led-white":
        text = "For white LEDs only: red and blue grow lamps give more photons for their lumens."
        notes.append(Note("info", text))
    return notes


def wanting(result: Light) -> list[Note]:
    """Why a way to more light is not among the figures, and how to take the one that is."""
    if result.dli_substrate_mol >= result.wanted_mol or nearly_enough(result):
        return []
    notes = [SLOWLY] if result.thin_percent and result.dark_hours >= NIGHT_HOURS else []
    needed = result.hours_for_class
    if needed is None:
        notes.append(Note("caution", "No number of hours is enough with what comes through now."))
    elif needed > LONG_DAY_HOURS:
        text = f"Longer hours are no way here: more than {LONG_DAY_HOURS} feed algae first."
        notes.append(Note("caution", text))
    if result.thin_percent is None:
        hours = figure(Hours, DAY_HOURS - result.dark_hours)
        notes.append(Note("caution", f"Even an open surface is not enough in {hours} hours."))
    if result.tip_height_for_class_cm is None:
        text = "A stem's tip does not get what is wanted at any height below the surface."
        notes.append(Note("info", text))
    return notes


def strength(result: Light) -> list[Note]:
    """What so little, or so much, light does."""
    notes = []
    dli = result.dli_substrate_mol
    if dli < CLASS_FROM_MOL["low"] or result.ppfd_substrate_umol < COMPENSATION_UMOL:
        text = (
            "Near the limit: in weaker light than about 10 to 40 µmol/m²/s submerged plants use up "
            "more than they make, and waste away over weeks."
        )
        notes.append(Note("caution", text))
    if dli < CLASS_FROM_MOL["medium"]:
        text = (
            "Why stems go leggy: in weak light, and in warm water, a stem spends what it makes on "
            "length, not on leaves and side shoots (measured in Egeria, Hydrilla and Myriophyllum)."
        )
        notes.append(Note("info", text))
    if dli >= CLASS_FROM_MOL["high"]:
        text = (
            "Without added carbon dioxide plants can seldom use so much light, and algae take the "
            "rest. Watch the glass, and shorten the day first."
        )
        notes.append(Note("caution", text))
    return notes
