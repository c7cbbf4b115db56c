"""What a forecast says of readings that harm animals, before anything else."""

from collections.abc import Sequence

from calculators.core.result import Note
from calculators.nitrogen_forecast.first_steps import first_steps
from calculators.nitrogen_forecast.harm_words import detail, headline
from calculators.nitrogen_forecast.run_harm import HarmfulReading
from calculators.science.nitrogen.forecast_tank import Event, Tank

GASPING = Note(
    "danger",
    "If animals gasp, lie down or dart about, act first and measure later: add air, stop feeding, and "
    "do what stands above. Ask a vet who treats fish if it goes on.",
)


def animals(
    harms: Sequence[HarmfulReading], tank: Tank, events: Sequence[Event], calm: float | None
) -> list[Note]:
    """The verdict for the animals, what to do, each figure, and what it means with and without animals.

    They are ``calm`` from this day on, None where not before the end.
    """
    if not harms:
        return []
    urgent = [harm for harm in harms if harm.is_danger]
    notes = [detail(harm, tank) for harm in harms]
    if urgent:
        notes = [headline(urgent), *first_steps(urgent, tank, events), *notes, GASPING]
    notes.append(with_and_without(harms, calm))
    return sorted(notes, key=lambda note: note.level != "danger")


def with_and_without(harms: Sequence[HarmfulReading], calm: float | None) -> Note:
    """The note on harm ahead for a keeper with animals in the tank, and for one who has none yet.

    They are ``calm`` from this day on, None where not before the end.
    """
    if any(harm.is_danger and harm.is_now for harm in harms):
        inside = "do what stands above for them, today"
    elif any(harm.is_danger for harm in harms):
        inside = "test every day, feed little, and be ready for what stands above"
    else:
        inside = (
            "test twice a week, watch how they breathe and eat, and put right what stands above"
        )
    toxic = any(harm.reading in ("ammonia", "nitrite") for harm in harms)
    return Note(
        "caution",
        f"Animals already in it: {inside}. No animals yet: wait{waiting(calm) if toxic else PUT_RIGHT}",
    )


PUT_RIGHT = " until this is put right."


def waiting(calm: float | None) -> str:
    """How long to wait for ammonia and nitrite.

    They are ``calm`` from this day on, None where not before the end.
    """
    until = " until both ammonia and nitrite read zero for a week."
    if calm is None:
        return f"{until} That both stay low is not forecast for any day before the last."
    return (
        f"{until} Both are forecast to stay low from about day {calm:.0f}, and in published trials new "
        "filters took up to three weeks longer; trust tests, not the day."
    )
