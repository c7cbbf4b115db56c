"""The weekly budget's verdict in words that follow the course of nitrate: rising, falling or held."""

from calculators.core.numbers import show_number as show
from calculators.core.result import Note
from calculators.science.nitrogen.balance import Flows, Verdict
from calculators.science.nitrogen.course import LEAST_MOVE_MG_L, LEAST_MOVE_SHARE
from calculators.science.nitrogen.steady import Cycle


class Ahead:
    """Nitrate now and after the weeks that the picture shows, mg/L."""

    def __init__(self, now: float, later: float, weeks: float) -> None:
        self.now, self.later, self.weeks = now, later, weeks

    @property
    def moves(self) -> float:
        """The change, 0 where no kit would tell."""
        least = max(LEAST_MOVE_MG_L, LEAST_MOVE_SHARE * max(self.now, self.later))
        return self.later - self.now if abs(self.later - self.now) >= least else 0.0


def verdict_note(
    verdict: Verdict,
    week_flows: Flows,
    cycle: Cycle,
    days: float | None,
    high: float | None,
    ahead: Ahead,
    *,
    harmless: bool,
) -> Note:
    """The verdict in plain sentences; a word that calms is used only where nothing harms.

    Nitrate settles as ``high`` as this before a change, in mg/L as NO3.
    """
    flows = (
        f"{show(week_flows.excreted)} mg of nitrogen a day come in as ammonia, plants and soil take "
        f"{show(week_flows.plants + week_flows.denitrified)}."
    )
    if verdict == "running-short":
        left = "is used up now" if days is not None and days < 1 else f"lasts about {days:.0f} days"
        return Note(
            "caution",
            f"Running short: the plants take more than the feed brings, and the nitrate in the "
            f"water {left}. Leaves brown some weeks later, when their own store is spent. {flows}",
        )
    if verdict == "building":
        return Note(
            "info", f"Building: nitrate climbs between changes. {settles(high, ahead)}{flows}"
        )
    return Note("info", f"{course(cycle, high, ahead, harmless=harmless)} {flows}")


def settles(high: float | None, ahead: Ahead) -> str:
    """Where a climbing nitrate settles, and that changes may bring it down all the same.

    That is ``high``, in mg/L as NO3, None where it never does.
    """
    if high is None:
        return ""
    down = " Changes bring it down to that." if ahead.moves < 0 else ""
    return f"It settles near {show(high)} mg/L before each change.{down} "


def course(cycle: Cycle, high: float | None, ahead: Ahead, *, harmless: bool) -> str:
    """The course where neither a rise between changes nor a shortage within a year is the answer.

    Nitrate settles as ``high`` as this, in mg/L as NO3, None where it never does.
    """
    goes = f"from {show(ahead.now)} to about {show(ahead.later, 2)} mg/L in {ahead.weeks:.0f} weeks"
    taps = ""
    if cycle.rise_day < 0:
        taps = (
            " The tap's own nitrate makes up for what plants take besides."
            if high is not None
            else " It falls, but lasts for more than a year."
        )
    if ahead.moves > 0:
        return f"Rising: nitrate goes {goes}.{taps}"
    if ahead.moves < 0:
        return f"Falling: nitrate goes {goes}.{taps}"
    direction = "Steady: as much goes as comes, within what a kit can tell."
    return f"{direction if harmless else 'Nitrate stays about where it is.'}{taps}"
