"""What the keeper must know beside the toxic share of a reading: an order of doing, animals first."""

from typing import NamedTuple

from calculators.core.result import Link, Note
from calculators.science.water.ammonia import Rating
from calculators.science.water.careful_change import ACID_PH
from calculators.science.water.change_words import CALM
from calculators.science.water.changing_water import first_step_for_ammonia

CHANGE = "ammonia-change"
DANGER_PAGE = (Link("Animals in danger", "danger/"),)


class AmmoniaReadings(NamedTuple):
    """What the keeper read."""

    ph: float
    temperature_c: float


def notes(
    rating: Rating, total_mg_n_l: float, acute_mg_n_l: float, read: AmmoniaReadings
) -> list[Note]:
    """What to do by the rating; nothing where there is no ammonia."""
    if total_mg_n_l == 0:
        return []
    if rating == "act":
        return order_of_doing(total_mg_n_l, acute_mg_n_l, read)
    advice = []
    if total_mg_n_l > acute_mg_n_l:
        advice.append(ACUTE)
    if rating == "watch":
        advice.append(Note("caution", "Test daily, feed less, and look for what rots in the tank."))
    else:
        advice.append(CAUSES)
    if read.ph < ACID_PH:
        text = (
            "At this pH most of it is ammonium, which harms little. New water that is harder or less acid "
            "can turn it toxic, at once and more as carbon dioxide leaves: ask before you change water."
        )
        advice.append(Note("caution", text, leads=(CHANGE,)))
    return advice


def order_of_doing(total_mg_n_l: float, acute_mg_n_l: float, read: AmmoniaReadings) -> list[Note]:
    """Numbered steps above the act line, right for acid water as well; the first safe thing first."""
    water = first_step_for_ammonia(total_mg_n_l, read.ph, None, read.temperature_c)
    water = water.replace(f" {CALM}", "").replace(f"{CALM} ", "")
    steps = (
        f"1. {CALM} Keep the filter running.",
        f"2. {water}",
        "3. If animals gasp or lie down, move the surface with air at once.",
        "4. Test again in an hour, then twice a day, until the rating is low. If it stays, move "
        "animals to a settled tank; ask a vet who treats fish.",
        "5. Do not raise the pH: it turns more of it toxic.",
    )
    warning = [ACUTE] if total_mg_n_l > acute_mg_n_l else []
    return warning + [
        Note("danger", step, links=DANGER_PAGE, leads=(CHANGE,))
        if step.startswith("2.")
        else Note("danger", step)
        for step in steps
    ]


ACUTE = Note("danger", "Above the acute limit: animals can die within hours.")
CAUSES = Note(
    "caution",
    "A settled tank reads zero. Any ammonia has a cause: new soil, a dead animal, too much food, a "
    "stopped filter, or tap water with chloramine.",
)
