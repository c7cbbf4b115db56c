"""Animals before leaves: what waits while animals are in danger, and which danger comes first."""

from datetime import date, timedelta

from calculators.science.animals.reading_steps import STEPS
from calculators.science.growth.tasks import CHANGE, THIN
from calculators.science.shelf.due import Due, ShelfRound
from calculators.science.shelf.harmful_readings import (
    AMMONIA,
    NITRITE,
    ORDER,
    OXYGEN,
    RANK,
    order,
    rank,
)
from calculators.science.shelf.tank_verdict import TankVerdict

WAITS = "it waits while animals are in danger"
FEEDS_ON_IT = "plants take up ammonia and nitrite, so leave them until none shows"
# Deaths of which no reading says the cause weigh as ammonia does, which is tested first.
DEATHS_AS = (RANK["deadly"], ORDER[AMMONIA, "high"])
NOT_URGENT = (len(RANK), len(STEPS))


def urgency(judged: TankVerdict) -> tuple[int, int]:
    """The place among tanks that act, as a pair of two numbers: what kills first stands first.

    All others share the last place.
    """
    if judged.verdict != "act":
        return NOT_URGENT
    found = [(rank(harm), order(harm)) for harm in judged.harms if harm.acts_at_once]
    if judged.deaths.asks == "act":
        found.append(DEATHS_AS)
    return min(found, default=NOT_URGENT)


def is_in_danger(judged: TankVerdict) -> bool:
    """Whether something harms or kills animals now, or may."""
    return judged.verdict in ("act", "watch")


def waits_for_animals(one: ShelfRound, judged: TankVerdict, today: date) -> ShelfRound:
    """A task of leaves is due tomorrow at the earliest while animals are in danger, or plants are of use."""
    read = {harm.reading.what for harm in judged.harms} if is_in_danger(judged) else set()
    if one.is_change or (one.task == THIN and OXYGEN in read):
        return one  # water has its own rule, and floaters are taken off where oxygen is short
    why = FEEDS_ON_IT if read & {AMMONIA, NITRITE} else WAITS if judged.verdict == "act" else ""
    if not why:
        return one
    return one._replace(not_before=today + timedelta(days=1), why=f"{one.why}; {why}")


def in_order_of_need(rounds: list[Due], test: Due, judged: TankVerdict, today: date) -> list[Due]:
    """The latest first; where animals are in danger, of what is due: tests, then water, then leaves."""

    def need(one: Due) -> tuple[date, int, date, str]:
        if not is_in_danger(judged):
            return one.on, 0, one.on, one.task
        kind = 0 if one is test else 1 if one.task.startswith(CHANGE) else 2
        return max(one.on, today), kind, one.on, one.task

    return sorted([*rounds, test], key=need)
