"""What the calculator for chloride says: nitrite and a change first, then salt and whom it harms."""

from typing import NamedTuple

from calculators.chloride.salt import FARM_RATIO, HARMS_MG_L, KILLS_MG_L, ChlorideSalt
from calculators.core.numbers import show_number
from calculators.core.result import Link, Note
from calculators.core.wording import CHANGE_WITH_CARE
from calculators.science.animals.toxic_lines import nitrite_standing
from calculators.science.water.careful_change import IN_ACID_WATER


class ChlorideReading(NamedTuple):
    """What was read and asked, and the salt for it; ``refused`` where none may be given."""

    nitrite_mg_n_l: float
    chloride_mg_l: float
    ratio: float
    volume_l: float
    salt: ChlorideSalt
    refused: bool


def notes(here: ChlorideReading) -> tuple[Note, ...]:
    """The order of doing, then whom salt harms; next to nothing where no nitrite shows."""
    chloride_itself = about_chloride(here.chloride_mg_l)
    if here.nitrite_mg_n_l == 0:
        return (NONE_SHOWS, *chloride_itself)
    harm, salt = (change_first(here), *chloride_itself), (answer(here), *low_ratio(here.ratio))
    if here.refused or here.salt.missing_mg_l == 0:
        return (*harm, *salt, NOT_FOR_ALL, NO_SALT_CURE, CHANGE_WITH_CARE)
    counted = () if here.chloride_mg_l > 0 else (NONE_COUNTED,)
    return (
        *harm,
        WHOM_IT_HARMS,
        *counted,
        *salt,
        NOT_FOR_ALL,
        ZEOLITE,
        HOW_TO_GIVE,
        NO_SALT_CURE,
        CHANGE_WITH_CARE,
    )


def change_first(here: ChlorideReading) -> Note:
    """Nitrite itself, and the change of water that comes before any salt."""
    level = nitrite_standing(here.nitrite_mg_n_l, here.chloride_mg_l).level
    reading = f"Nitrite of {show_number(here.nitrite_mg_n_l, 2)} mg N/L"
    links: tuple[Link, ...] = (
        Link("Nitrite with animals in the tank", "problems/nitrite-emergency/"),
        Link("If ammonia shows too", "calculators/ammonia-change/"),
    )  # fmt: skip
    if level == "deadly":
        links = (*links, Link("Animals in danger", "danger/"))
        return Note("danger", f"{reading} can kill. {CHANGE} {FEED}", True, links, WATER_CHANGE)
    if level == "harmful":
        return Note("caution", f"{reading} harms. {CHANGE} {FEED}", True, links, WATER_CHANGE)
    text = (
        f"{reading} is under the line at this chloride, which is the most for a short time; a settled tank "
        "reads zero. If it has not fallen by tomorrow, and a test shows no ammonia, change about a third. "
        f"{IN_ACID_WATER} {FEED}"
    )
    return Note("caution", text, True, links, WATER_CHANGE)


WATER_CHANGE = ("water-change",)
CHANGE = (
    "Changing water comes before salt: test ammonia, and where none shows, change about a third now. "
    f"Where it shows, ask first: a change can make it toxic. {IN_ACID_WATER}"
)
FEED = "Stop feeding, add air, and look for the cause."


def answer(here: ChlorideReading) -> Note:
    """The salt in plain words, or why there is none."""
    goal = show_number(here.salt.wanted_mg_l)
    if here.refused:
        if here.chloride_mg_l >= HARMS_MG_L:
            text = "Give no salt: the chloride in the water harms already. Changes take nitrite out too."
            return Note("caution", text, True)
        most = show_number(max(here.salt.wanted_mg_l, here.chloride_mg_l))
        text = (
            f"No salt is worked out: chloride would stand at {most} mg/L, and from "
            f"{show_number(HARMS_MG_L)} mg/L it harms animals over days. Bring the nitrite down with "
            "changes of water, then ask again."
        )
        return Note("caution", text, True)
    if here.salt.missing_mg_l == 0:
        has = show_number(here.chloride_mg_l)
        text = f"Give no salt: the water holds {has} mg/L of chloride, and {goal} mg/L would do."
        return Note("info", text, True)
    grams = show_number(here.salt.salt_mg_l * here.volume_l / 1000, 2)
    text = (
        f"Only if a vet or fish health adviser says so, and for fish alone: {grams} g of plain salt in "
        f"{show_number(here.volume_l)} L brings chloride to {goal} mg/L."
    )
    return Note("caution", text, True)


def about_chloride(chloride_mg_l: float) -> list[Note]:
    """Chloride that harms by itself already."""
    if chloride_mg_l < HARMS_MG_L:
        return []
    reading = f"Chloride of {show_number(chloride_mg_l)} mg/L"
    if chloride_mg_l >= KILLS_MG_L:
        text = (
            f"{reading} can kill sensitive animals. Test it again. Where no ammonia shows, change part "
            "of the water with water that holds less, and again on the next days."
        )
        return [Note("danger", text, True, (Link("Animals in danger", "danger/"),))]
    return [Note("caution", f"{reading} harms animals over days by itself. Give no salt.", True)]


def low_ratio(ratio: float) -> list[Note]:
    """A ratio below what has been found to protect."""
    if ratio >= round(FARM_RATIO):
        return []
    text = (
        f"A ratio of {show_number(ratio)} is less than what protected catfish: 40.5 in the test, 33 on "
        "farms."
    )
    return [Note("caution", text)]


NONE_SHOWS = Note("info", "No nitrite shows, so no salt is needed against it.", True)
NONE_COUNTED = Note(
    "caution",
    "The water is taken to hold no chloride, but most tap water holds some, and some holds 200 mg/L: then "
    "no salt is needed, and this much on top would harm. Test it or ask the supplier before you give any.",
    True,
)
WHOM_IT_HARMS = Note(
    "caution",
    "Salt harms plants, snails, mussels, shrimp and soft-water fish, and some catfish and loaches bear "
    "little of it (common practice). Mussel larvae suffered from 113 mg/L of chloride in a day, water "
    "plants grow less as salt rises. With such animals inside, change water instead, or treat the fish "
    "in a tank of their own.",
    True,
)
NOT_FOR_ALL = Note(
    "caution",
    "Chloride does not protect every fish: largemouth bass were not helped. So nitrite from 0.6 mg N/L "
    "counts as deadly here with chloride or without.",
)
ZEOLITE = Note(
    "caution",
    "Take zeolite out before any salt: salt drives the ammonium it holds back into the water (common "
    "practice, no source).",
)
HOW_TO_GIVE = Note(
    "info",
    "Plain sodium chloride, without iodine or anti-caking agent; no sea salt, which raises pH and with it "
    "toxic ammonia (common practice). Weigh it. Dissolve it all in a bucket of tank water, and pour it "
    "slowly away from animals and roots, half today and half tomorrow. It does not evaporate: after each "
    "change put back only that share, and once nitrite reads zero for a week let changes take it out.",
)
NO_SALT_CURE = Note(
    "info",
    "Chloride takes no nitrite out of the water. The cause is a young, stopped or scrubbed filter, too "
    "much food, a death, or a medicine.",
)
