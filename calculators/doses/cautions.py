"""What a dosing plan may do to animals: the day's rise, the level it leads to, and ammonia."""

from collections.abc import Mapping
from typing import NamedTuple

from calculators.core.numbers import show_number
from calculators.core.result import Level, Note
from calculators.doses.settling import Rhythm, highest
from calculators.science.animals.reading_lines import edge_of
from calculators.water import chemistry
from calculators.water.ammonia import chronic_limit_mg_n_l, unionised_share

# Common practice, no source: larger changes in one day are felt by fish and moulting shrimps.
NITRATE_A_DAY_MG_L = 10.0
HARDNESS_A_DAY_DH = 2.0
SALTS_A_DAY_MG_L = 100.0
# Where the free-ammonia check is shown for a tank whose own figures are not asked for; our judgement.
CHECK_PH = 8.0
CHECK_TEMPERATURE_C = 25.0


class Limit(NamedTuple):
    """Levels in mg/L: from ``caution`` doubtful, from ``danger`` harmful; and whose figures they are."""

    caution: float
    danger: float
    why: str


LIMITS = {
    "nitrate": Limit(
        edge_of("nitrate_mg_l", "harmful_high"),
        edge_of("nitrate_mg_l", "deadly_high"),
        "A review of freshwater animals (Camargo and others 2005) finds that 44 mg/L can harm "
        "sensitive ones over time; 145 mg/L is British Columbia's maximum; about 250 mg/L killed "
        "half of an amphipod's within five days (from memory).",
    ),
    # Canada's federal guideline of 2019 is 0.604 mg/L at pH 7.5; US EPA 1976: 1 mg/L, MEMORY.
    "iron": Limit(
        0.6,
        1.0,
        "Canada's guideline for fresh water is 0.6 mg/L of total iron (2019), the United States' "
        "criterion 1 mg/L (from memory). Iron also drops out, so that a test reads less than this.",
    ),
    "potassium": Limit(
        edge_of("potassium_mg_l", "harmful_high"),
        edge_of("potassium_mg_l", "deadly_high"),
        "Water fleas bred less at 53 mg/L and half died within two days at 93 mg/L (figures from memory).",
    ),
    "chloride": Limit(
        edge_of("chloride_mg_l", "harmful_high"),
        edge_of("chloride_mg_l", "deadly_high"),
        "The United States' criteria are 230 mg/L over days and 860 mg/L over an hour (figures from memory).",
    ),
}


class Plan(NamedTuple):
    """What is dosed and how: levels in mg/L of the nutrient, its use by plants in mg/L a day."""

    nutrient: str
    now: float
    rise: float
    use_a_day: float
    tap: float
    rhythm: Rhythm


def peaks(plan: Plan, adds: Mapping[str, float | None]) -> dict[str, float]:
    """The highest level of each thing added, mg/L; what is not the nutrient is taken as unused."""
    found = {
        key: highest(0, added, 0, 0, plan.rhythm)
        for key, added in adds.items()
        if added and key in (*LIMITS, "nitrogen")
    }
    found[plan.nutrient] = highest(plan.now, plan.rise, plan.use_a_day, plan.tap, plan.rhythm)
    if plan.nutrient != "nitrate" and "nitrogen" in found:
        # all of it ends as nitrate where plants do not take it first
        found["nitrate"] = found["nitrogen"] * chemistry.NITRATE_PER_N
    return found


def level_cautions(plan: Plan, adds: Mapping[str, float | None]) -> list[Note]:
    """Cautions for the levels that a plan leads to."""
    said = []
    for key, level in peaks(plan, adds).items():
        limit = LIMITS.get(key)
        if not limit or level < limit.caution:
            continue
        grade: Level = "danger" if level >= limit.danger else "caution"
        unused = "" if key == plan.nutrient else " if plants take none of it"
        text = f"This plan takes {key} to {show_number(level)} mg/L{unused}. {limit.why}"
        said.append(Note(grade, f"{text} Dose less, or change more water."))
    return said


def rise_cautions(adds: Mapping[str, float | None]) -> list[Note]:
    """Cautions for what one dose changes in a day."""
    added = {key: value or 0.0 for key, value in adds.items()}
    said = []
    if added["nitrate"] > NITRATE_A_DAY_MG_L:
        said.append(f"nitrate by {show_number(added['nitrate'])} mg/L")
    hardness = added["calcium"] / chemistry.CA + added["magnesium"] / chemistry.MG
    if hardness / chemistry.MMOL_PER_DH > HARDNESS_A_DAY_DH:
        said.append(f"hardness by {show_number(hardness / chemistry.MMOL_PER_DH)} °dH")
    salts = sum(added.values()) - added["nitrogen"]  # which the nitrate holds already
    if salts > SALTS_A_DAY_MG_L:
        said.append(f"dissolved salts by {show_number(salts)} mg/L")
    return [
        Note(
            "caution",
            f"One dose raises {what} in a day. Split it over several days: fish and moulting "
            "shrimps feel such a jump (common practice, no source).",
        )
        for what in said
    ]


def ammonia_notes(source: str, plan: Plan, adds: Mapping[str, float | None]) -> list[Note]:
    """The free-ammonia check for nitrogen that is urea, or of a form that the label hides."""
    dose = adds["nitrogen"] or 0.0
    if source not in ("urea", "label") or dose == 0:
        return []
    first = (
        "Urea turns into ammonia within days."
        if source == "urea"
        else "Which form the label's nitrogen has is not known here: ammonium and urea count as "
        "ammonia, and the nitrate shown is the most that all of it can become."
    )
    level = peaks(plan, adds)["nitrogen"]
    limit = chronic_limit_mg_n_l(CHECK_PH, CHECK_TEMPERATURE_C)
    free = dose * unionised_share(CHECK_PH, CHECK_TEMPERATURE_C)
    return [
        Note(
            "danger" if level >= limit else "caution",
            f"{first} Each dose equals {show_number(dose)} mg/L of total ammonia nitrogen, and the "
            f"plan leads to {show_number(level)} mg/L if nothing takes it up. At pH {CHECK_PH:g} and "
            f"{CHECK_TEMPERATURE_C:g} °C, {show_number(free)} mg/L of a dose is toxic, and the limit "
            f"over weeks is {show_number(limit)} mg/L in total. Where animals live, do not dose it "
            "before you have put these figures and the tank's own pH into the free-ammonia "
            "calculator.",
        )
    ]
