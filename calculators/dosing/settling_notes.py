"""What to say where a level settles, and where it does not."""

from calculators.core.numbers import show_number
from calculators.core.result import Note
from calculators.dosing.cautions import Plan
from calculators.dosing.settling import SettledLevel
from calculators.science.conversions import DAYS_PER_WEEK


def settling_notes(plan: Plan, settled: SettledLevel | None) -> list[Note]:
    """Why there is no settled level, or what the one given rests on."""
    if settled:
        return settled_notes(plan)
    if plan.rhythm.dose_every is None:
        return [Note("info", "A single dose does not settle; the curve shows how it fades.")]
    a_week = DAYS_PER_WEEK * (plan.rise / plan.rhythm.dose_every - plan.use_a_day)
    if plan.rhythm.share == 0 and a_week > 0:
        text = (
            f"Without water changes {plan.nutrient} does not settle: it builds up by "
            f"{show_number(a_week)} mg/L a week without end."
        )
        return [Note("caution", text)]
    if a_week == 0:
        return [Note("info", "Nothing comes in or goes out, so the level stays where it is.")]
    text = "Plants take more than comes in: the level runs down to nothing, and then growth stops."
    return [Note("caution", text)]


def settled_notes(plan: Plan) -> list[Note]:
    """What a settled level rests on."""
    notes = []
    if plan.use_a_day == 0:
        text = (
            "No use by plants is entered, so the settled level is the highest with this new water."
        )
        notes.append(Note("info", text))
    if plan.tap == 0:
        text = "The new water is taken to hold none: test it, since what it holds comes on top."
        notes.append(Note("info", text))
    doses = plan.rhythm.doses_a_stretch
    if abs(doses - round(doses)) > 1e-6 or round(doses) == 0:
        text = "Doses and changes do not fall together, so the settled levels are a mean."
        notes.append(Note("info", text))
    notes.append(
        Note("info", "Test before every few doses: the kit knows what the plants took, we guess.")
    )
    return notes
