"""What a dosing plan may do to animals: the day's rise, the level it leads to, and ammonia."""

import math
from collections.abc import Mapping
from typing import NamedTuple

from calculators.core.numbers import show_number
from calculators.core.result import Level, Note
from calculators.core.wording import joined
from calculators.dosing.dose_limits import KILLS, LIMITS, can_kill
from calculators.dosing.settling import DosingSchedule, highest
from calculators.science.animals.reading_lines import edge_of
from calculators.science.water import chemistry
from calculators.science.water.ammonia import chronic_limit_mg_n_l, unionised_share
from calculators.science.water.gentle import STEP_DH_A_DAY
from calculators.science.water.unread import EXAMPLE_PH, EXAMPLE_TEMPERATURE_C

# Common practice, no source: larger changes in one day are felt by fish and moulting shrimps.
NITRATE_A_DAY_MG_L = 10.0
LARGE_JUMP_DH = 10.0
SALTS_A_DAY_MG_L = 100.0
HARDNESS_MG_PER_MMOL = {"calcium": chemistry.CA, "magnesium": chemistry.MG}
# Where the free-ammonia check is shown for a tank whose own figures are not asked for; our judgement.


class Plan(NamedTuple):
    """What is dosed and how: levels in mg/L of the nutrient, its use by plants in mg/L a day."""

    nutrient: str
    now: float
    rise: float
    use_a_day: float
    tap: float
    rhythm: DosingSchedule


def peaks(plan: Plan, adds: Mapping[str, float | None]) -> dict[str, float]:
    """The highest level of each thing added, mg/L; what is not the nutrient is taken as unused."""
    levels = {
        key: highest(0, added, 0, 0, plan.rhythm)
        for key, added in adds.items()
        if added and key in (*LIMITS, "nitrogen")
    }
    levels[plan.nutrient] = highest(plan.now, plan.rise, plan.use_a_day, plan.tap, plan.rhythm)
    if plan.nutrient != "nitrate" and "nitrogen" in levels:
        # all of it ends as nitrate where plants do not take it first
        levels["nitrate"] = levels["nitrogen"] * chemistry.NITRATE_PER_N
    return levels


def hardness_cautions(plan: Plan, adds: Mapping[str, float | None]) -> list[Note]:
    """A caution for the hardness that calcium and magnesium build up to; the tank's own comes on top."""
    levels = {key: highest(0, adds[key] or 0.0, 0, 0, plan.rhythm) for key in HARDNESS_MG_PER_MMOL}
    if plan.nutrient in levels:
        levels[plan.nutrient] = highest(plan.now, plan.rise, plan.use_a_day, plan.tap, plan.rhythm)
    hardness = sum(level / HARDNESS_MG_PER_MMOL[key] for key, level in levels.items())
    gh_dh = hardness / chemistry.MMOL_PER_DH
    if gh_dh < edge_of("gh_dh", "harmful_high"):
        return []
    named = joined([key for key, level in levels.items() if level])
    then = (
        "Dose less, and test GH each week." if plan.rise else "Dose none, and lower it over weeks."
    )
    text = (
        f"With this plan the {named} in the water comes to a hardness of {show_number(gh_dh)} °dH, and what "
        "else makes the water hard comes on top: so much troubles soft-water fish and shrimp. "
        f"{then}"
    )
    return [Note("caution", text)]


def level_cautions(plan: Plan, adds: Mapping[str, float | None]) -> list[Note]:
    """Cautions for the levels that a plan leads to; what can kill comes first."""
    notes = []
    for key, level in peaks(plan, adds).items():
        limit = LIMITS.get(key)
        if not limit or level < limit.caution:
            continue
        grade: Level = "danger" if level >= limit.danger else "caution"
        unused = "" if key == plan.nutrient else " if plants take none of it"
        kills = (
            " That can kill animals: do not dose it where they live."
            if can_kill(key, level)
            else ""
        )
        is_there = plan.rise == 0  # nothing is dosed, and the water reads so much already
        what = (
            f"The water holds {show_number(level)} mg/L of {key}."
            if is_there
            else f"This plan takes {key} to {show_number(level)} mg/L{unused}.{kills}"
        )
        then = "Dose none." if is_there else "Dose less, or change more water."
        notes.append(Note(grade, f"{what} {limit.why} {then}"))
    return sorted(notes, key=lambda note: KILLS not in note.text)


def rise_cautions(adds: Mapping[str, float | None]) -> list[Note]:
    """Cautions for what one dose changes in a day."""
    added = {key: value or 0.0 for key, value in adds.items()}
    notes = []
    if added["nitrate"] > NITRATE_A_DAY_MG_L:
        notes.append(f"nitrate by {show_number(added['nitrate'])} mg/L")
    hardness = added["calcium"] / chemistry.CA + added["magnesium"] / chemistry.MG
    rise_dh = hardness / chemistry.MMOL_PER_DH
    jump = []
    if rise_dh > STEP_DH_A_DAY:
        days = math.ceil(rise_dh / STEP_DH_A_DAY)
        text = (
            f"One dose raises hardness by {show_number(rise_dh)} °dH at once. Split it over {days} days or "
            f"more, by no more than about {STEP_DH_A_DAY} °dH a day: fish and moulting shrimps feel such a "
            "jump (common practice, no source)."
        )
        jump.append(Note("danger" if rise_dh >= LARGE_JUMP_DH else "caution", text))
    salts = sum(added.values()) - added["nitrogen"]  # which the nitrate holds already
    if salts > SALTS_A_DAY_MG_L:
        notes.append(f"dissolved salts by {show_number(salts)} mg/L")
    return jump + [
        Note(
            "caution",
            f"One dose raises {what} in a day. Split it over several days: fish and moulting "
            "shrimps feel such a jump (common practice, no source).",
        )
        for what in notes
    ]


AS_AMMONIA = {
    "urea": "Urea turns into ammonia within days.",
    "urea-or-ammonium": "Urea and ammonium count as ammonia, and the nitrate shown is the most that all "
    "of it can become.",
    "unknown": "Which form the label's nitrogen has is not known here: ammonium and urea count as "
    "ammonia, and the nitrate shown is the most that all of it can become. If the label names nitrate "
    "alone, say so in the form.",
}


def ammonia_notes(form: str, plan: Plan, adds: Mapping[str, float | None]) -> list[Note]:
    """The free-ammonia check for nitrogen that is urea or ammonium, or of a form that the label hides.

    ``form`` is a key of ``AS_AMMONIA``; any other, as nitrate, needs no check.
    """
    dose = adds["nitrogen"] or 0.0
    if form not in AS_AMMONIA or dose == 0:
        return []
    first = AS_AMMONIA[form]
    level = peaks(plan, adds)["nitrogen"]
    limit = chronic_limit_mg_n_l(EXAMPLE_PH, EXAMPLE_TEMPERATURE_C)
    free = dose * unionised_share(EXAMPLE_PH, EXAMPLE_TEMPERATURE_C)
    return [
        Note(
            "danger" if level >= limit else "caution",
            f"{first} Each dose equals {show_number(dose)} mg/L of total ammonia nitrogen, and the "
            f"plan leads to {show_number(level)} mg/L if nothing takes it up. At pH {EXAMPLE_PH:g} and "
            f"{EXAMPLE_TEMPERATURE_C:g} °C, {show_number(free)} mg/L of a dose is toxic, and the limit "
            f"over weeks is {show_number(limit)} mg/L in total. Where animals live, do not dose it "
            "before you have put these figures and the tank's own pH into the free-ammonia "
            "calculator.",
        )
    ]
