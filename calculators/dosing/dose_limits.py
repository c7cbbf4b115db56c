"""Levels of what a dose adds at which animals come to harm, each with whose figures they are."""

from typing import NamedTuple

from calculators.science.animals.reading_lines import LINES, edge_of, standing

KILLS = "That can kill animals: do not dose it where they live."


class Limit(NamedTuple):
    """Levels in mg/L: from ``caution`` doubtful, from ``danger`` harmful; and whose figures they are.

    From ``deadly`` on animals died in tests; None where the table of readings says it, or none is known.
    """

    caution: float
    danger: float
    why: str
    deadly: float | None = None


LIMITS = {
    "nitrate": Limit(
        edge_of("nitrate_mg_l", "harmful_high"),
        edge_of("nitrate_mg_l", "deadly_high"),
        "A review of freshwater animals (Camargo and others 2005) finds that 44 mg/L can harm "
        "sensitive ones over time; 145 mg/L is British Columbia's maximum; about 250 mg/L killed "
        "half of an amphipod within five days (from memory).",
    ),
    # Phosphoric acid brought to pH 7, Daphnia magna, 48 hours (source key echa-phosphoric-acid): none
    # harmed at 56 mg/L, fewer than half at 100 mg/L, the most that was tried; as phosphate 54 and 97.
    "phosphate": Limit(
        54.0,
        97.0,
        "Water fleas were unharmed for two days at 54 mg/L of phosphate, and 97 mg/L is the most that the "
        "test tried. What kills beyond it is not known; let no animal be the test.",
    ),
    # Canada's federal guideline of 2019 is 0.604 mg/L at pH 7.5; US EPA 1976: 1 mg/L, MEMORY.
    "iron": Limit(
        0.6,
        1.0,
        "Canada's guideline for fresh water is 0.6 mg/L of total iron (2019), the United States' "
        "criterion 1 mg/L (from memory). Iron also drops out, so that a test reads less than this.",
    ),
    # Mount and others 1997, two
    # water fleas, 48 hours, as chloride, sulfate and bicarbonate: about 250 to 350 mg/L, MEMORY.
    "potassium": Limit(
        edge_of("potassium_mg_l", "harmful_high"),
        edge_of("potassium_mg_l", "deadly_high"),
        "Water fleas bred less at 53 mg/L and half died within two days at 93 mg/L in soft water, at "
        "about 250 to 350 mg/L in harder water, be it chloride, sulfate or bicarbonate (figures from "
        "memory). Potassium salts were the deadliest of twelve that were tried.",
        edge_of("potassium_mg_l", "deadly_high"),
    ),
    # Mount and others 1997, Ceriodaphnia, 48 hours: MgCl2 880 mg/L, MgSO4 1,770 mg/L, MEMORY; the
    # caution at half of it is our judgement.
    "magnesium": Limit(
        112.0,
        225.0,
        "Half of the water fleas in a test died within two days at 225 mg/L as chloride and 357 mg/L as "
        "sulfate (figures from memory).",
        225.0,
    ),
    "chloride": Limit(
        edge_of("chloride_mg_l", "harmful_high"),
        edge_of("chloride_mg_l", "deadly_high"),
        "The United States' criteria are 230 mg/L over days and 860 mg/L over an hour (figures from memory).",
        edge_of("chloride_mg_l", "deadly_high"),
    ),
}  # fmt: skip


def can_kill(key: str, level: float) -> bool:
    """Whether a level in mg/L is one at which animals died."""
    if (reading := f"{key}_mg_l") in LINES and LINES[reading].deadly_high is not None:
        return standing(reading, level).level == "deadly"
    deadly = LIMITS[key].deadly
    return deadly is not None and level >= deadly
