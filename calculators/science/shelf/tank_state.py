"""A tank and its log put together: verdict, what is due, where readings go, and what was learned."""

from collections.abc import Sequence
from datetime import date
from typing import NamedTuple

from calculators.science.shelf.animals_first import in_order_of_need, urgency, waits_for_animals
from calculators.science.shelf.due import Due, ShelfRound, due_of, week_of
from calculators.science.shelf.due_rounds import rounds_of
from calculators.science.shelf.entries import Entry
from calculators.science.shelf.log import Log, log_of
from calculators.science.shelf.next_test import NextTest, next_test
from calculators.science.shelf.shelf_tank import ShelfTank
from calculators.science.shelf.tank_today import tank_today
from calculators.science.shelf.tank_verdict import WORST_FIRST, TankVerdict, judge


class TankState(NamedTuple):
    """How one tank stands on one day."""

    tank: ShelfTank  # with what lives in it now
    log: Log
    judged: TankVerdict
    rounds: list[ShelfRound]
    due: list[Due]  # the latest first; where animals are in danger, what is done for them
    next_test: NextTest
    doubts: tuple[str, ...] = ()  # what of its lists and its log does not add up

    @property
    def minutes_week(self) -> float:
        """Minutes a week that the tank asks for."""
        return week_of(self.rounds)

    @property
    def late_days(self) -> int:
        """How late the latest task is."""
        return max((one.late_days for one in self.due), default=0)

    @property
    def rank(self) -> tuple[int, tuple[int, int], int]:
        """The order of a round: worst first, of those in danger what kills first, then late first."""
        return WORST_FIRST.index(self.judged.verdict), urgency(self.judged), -self.late_days


def state_of_tank(tank: ShelfTank, entries: Sequence[Entry], today: date) -> TankState:
    """How a tank stands; entries of other tanks are left aside."""
    tank, log, doubts = tank_today(tank, log_of(tank.id, entries, today))
    judged = judge(tank, log)
    test = next_test(judged, log)
    rounds = [waits_for_animals(one, judged, today) for one in rounds_of(tank, log, judged)]
    due = in_order_of_need([due_of(one, log) for one in rounds], test.due(today), judged, today)
    return TankState(tank, log, judged, rounds, due, test, doubts)
