"""What the keeper must know beside the toxic share of a reading: an order of doing, animals first."""

from typing import NamedTuple

from calculators.core.result import Link, Note
from calculators.science.water.ammonia import Rating
from calculators.science.water.change_words import CALM
from calculators.science.water.changing_water import first_step_for_ammonia

CHANGE_TITLE = "Changing water when ammonia shows"
NEUTRAL_PH = 7.0


class Readings(NamedTuple):
    """What the keeper read, as the two calculators take it."""

    ammonia_mg_l: float
    reported_as: str
    ph: float
    temperature_c: float


def notes(rating: Rating, total_mg_n_l: float, acute_mg_n_l: float, read: Readings) -> list[Note]:
    """What to do by the rating; nothing where there is no ammonia."""
    if total_mg_n_l == 0:
        return []
    if rating == "act":
        return order_of_doing(total_mg_n_l, acute_mg_n_l, read)
    said = []
    if total_mg_n_l > acute_mg_n_l:
        said.append(ACUTE)
    if rating == "watch":
        said.append(Note("caution", "Test daily, feed less, and look for what rots in the tank."))
    else:
        said.append(CAUSES)
    if read.ph < NEUTRAL_PH:
        text = (
            "At this pH little is toxic now. New water that is harder or less acid can make the rest "
            "toxic, at once and more as carbon dioxide leaves: ask before you change water."
        )
        said.append(Note("caution", text, links=(onward(read),)))
    return said


def order_of_doing(total_mg_n_l: float, acute_mg_n_l: float, read: Readings) -> list[Note]:
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
    links = (onward(read), Link("Animals in danger", "danger/"))
    said = [ACUTE] if total_mg_n_l > acute_mg_n_l else []
    return said + [
        Note("danger", step, links=links if step.startswith("2.") else ()) for step in steps
    ]


def onward(read: Readings) -> Link:
    """The calculator for changing water, filled in with what was read."""
    return Link(CHANGE_TITLE, "calculators/ammonia-change/", dict(read._asdict()))


ACUTE = Note("danger", "Above the acute limit: animals can die within hours.")
CAUSES = Note(
    "caution",
    "A settled tank reads zero. Any ammonia has a cause: new soil, a dead animal, too much food, a "
    "stopped filter, or tap water with chloramine.",
)
