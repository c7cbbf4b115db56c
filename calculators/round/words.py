"""What the round says beside its figures: the tanks in danger first, each with the way to the first steps."""

from calculators.core.figures import figure
from calculators.core.result import Note
from calculators.core.wording import DANGER_PAGE
from calculators.science.growth.tasks import WeekMinutes, WholeMinutes
from calculators.science.shelf.tank_state import TankState
from calculators.science.shelf.tank_verdict import LEVEL

ANIMALS_FIRST = Note(
    "info",
    "Look at the animals of every tank first. When time is short, leaves can wait; change water only "
    "as the tank's own task says. Wash your hands between tanks, and use a net of its own for each "
    "that is not well.",
)

FIRST_STEPS_TOO = " The first steps where animals are in danger take their time on top."


def notes(stands: list[TankState], minutes_today: float, minutes_week: float) -> list[Note]:
    """The tanks that are not calm, worst first, then the time that it takes."""
    found = [tank_note(stand) for stand in stands if stand.judged.verdict != "calm"]
    if not stands:
        return [Note("info", "There is no tank yet.", True)]
    today, week = figure(WholeMinutes, minutes_today), figure(WeekMinutes, minutes_week)
    calm = sum(stand.judged.verdict == "calm" for stand in stands)
    on_top = FIRST_STEPS_TOO if any(stand.judged.verdict == "act" for stand in stands) else ""
    text = (
        f"{calm} of {len(stands)} tanks calm. About {today} minutes today, {week} a week.{on_top}"
    )
    return [*found, Note("info", text, True), ANIMALS_FIRST]


def tank_note(stand: TankState) -> Note:
    """How one tank stands."""
    verdict = stand.judged.verdict
    links = (DANGER_PAGE,) if verdict == "act" else ()
    return Note(LEVEL[verdict], f"{stand.tank.name}: {stand.judged.sentence}", True, links)
