"""What a forecast says of ammonia and nitrite that harm, before anything else."""

from calculators.core.numbers import show_number as show
from calculators.core.result import Note
from calculators.core.wording import FISH_IN_TROUBLE
from calculators.nitrogen.first_hour import next_hour
from calculators.nitrogen.outlook import NITRITE_ACT_MG_N_L, NITRITE_WATCH_MG_N_L
from calculators.nitrogen.record import Peak, Record
from calculators.nitrogen.tank import Tank
from calculators.water.ammonia import (
    acute_limit_mg_n_l,
    chronic_limit_mg_n_l,
    rate,
    unionised_share,
)

ANIMALS_FIRST = Note(
    "danger", "Animals first: this tank is heading for ammonia or nitrite that harms them."
)
CHLORIDE = (
    "How much nitrite harms depends on chloride in the water, which competes with it at the gills, "
    "and on the animal: some fish are not protected at all."
)


def animals(record: Record, tank: Tank, calm: float | None) -> list[Note]:
    """Ammonia and nitrite that harm, and what to do."""
    said = ammonia_notes(record, tank) + nitrite_notes(record)
    if not said:
        return []
    if any(note.level == "danger" for note in said):
        said = [ANIMALS_FIRST, next_hour(record, tank), *said, FISH_IN_TROUBLE]
    when = (
        "Neither ammonia nor nitrite is forecast to stay low before the last day."
        if calm is None
        else f"Both are forecast to stay low from about day {calm:.0f}. Trust your tests, not the day."
    )
    return [*said, Note("caution", f"Put in no animals before that is over. {when}")]


def ammonia_notes(record: Record, tank: Tank) -> list[Note]:
    """How the peak of ammonia stands against the limits."""
    peak = record.ammonia
    toxic = peak.value * unionised_share(tank.ph, tank.temperature_c)
    chronic = chronic_limit_mg_n_l(tank.ph, tank.temperature_c)
    rating = rate(peak.value / chronic, toxic)
    if rating == "low":
        return []
    text = f"Ammonia {peaks(peak)} {show(peak.value, 2)} mg N/L, {show(toxic, 2)} of it toxic."
    if peak.value > acute_limit_mg_n_l(tank.ph, tank.temperature_c):
        return [Note("danger", f"{text} Above the acute limit animals can die within hours.")]
    if rating == "act":
        return [Note("danger", f"{text} That harms animals that stay in it.")]
    return [Note("caution", f"{text} Test daily around then.")]


def peaks(peak: Peak) -> str:
    """When it is highest: a peak at the start is what the keeper reads now."""
    return "is highest now, at" if peak.day < 0.1 else f"peaks about day {peak.day:.0f} at"


def nitrite_notes(record: Record) -> list[Note]:
    """How the peak of nitrite stands against the guideline."""
    peak = record.nitrite
    text = f"Nitrite {peaks(peak)} {show(peak.value, 2)} mg N/L. {CHLORIDE}"
    if peak.value >= NITRITE_ACT_MG_N_L:
        return [Note("danger", text)]
    return [Note("caution", text)] if peak.value >= NITRITE_WATCH_MG_N_L else []
