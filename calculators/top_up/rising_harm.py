"""Where topping up brings a tank to what harms its animals: too hard, too soft, or swinging."""

from typing import NamedTuple

from calculators.core.figures import figure
from calculators.core.numbers import show_number
from calculators.core.quantities import GeneralHardness
from calculators.core.result import Link, Note
from calculators.science.animals.reading_lines import edge_of, standing
from calculators.science.water.gentle import STEP_DH_A_DAY
from calculators.top_up.rising import Rising

# Common practice, no source: a level that falls further swings what is dissolved.
SWING_PERCENT = 10.0


class TopUpReadings(NamedTuple):
    """What the words speak of: hardness in °dH, nitrate in mg/L a week, shares of the tank."""

    gh_dh: float
    top_up_gh_dh: float
    tap_gh_dh: float
    pure_percent: float | None
    nitrate_week: float | None
    evaporated: float
    weeks: float
    gh_end_dh: float


def hard(gh: Rising, readings: TopUpReadings) -> list[Note]:
    """Water that is, or comes to be, harder than many animals bear."""
    highest = max(readings.gh_end_dh, gh.settled.before if gh.settled else 0.0, readings.gh_dh)
    if standing("gh_dh", highest).side != "high":
        return []
    text = (
        f"GH of {degrees(edge_of('gh_dh', 'harmful_high'))} °dH and more troubles soft-water fish over "
        f"time (common practice, no source), and here it comes to {degrees(highest)}. Bring it down "
        f"slowly, by no more than about {STEP_DH_A_DAY} °dH a day, with softer water."
    )
    return [Note("caution", text, True)]


def soft(gh: Rising, readings: TopUpReadings) -> list[Note]:
    """A tank that reads next to nothing, or comes to: purified water keeps it so."""
    lowest = min(readings.gh_dh, readings.gh_end_dh, gh.settled.after if gh.settled else 60.0)
    if standing("gh_dh", lowest).side != "low":
        return []
    text = (
        "With 1 °dH of GH or less shrimp and snails lack calcium, and purified water adds none. Where no "
        "ammonia shows, give some back slowly, with minerals or harder water."
    )
    link = Link("Minerals for purified water", "calculators/remineralise/")
    return [Note("caution", text, False, (link,))]


def swings(readings: TopUpReadings) -> list[Note]:
    """How much the readings swing as the level falls, where the tank is topped up once a week."""
    share = 100 * readings.evaporated
    if share < SWING_PERCENT:
        return []
    text = (
        f"{show_number(share, 2)} % of the water goes each week. Topped up but once a week, all that is "
        f"dissolved stands {show_number(share / (1 - readings.evaporated), 2)} % higher before it than "
        "after, ammonia too: top up daily, or cover the tank and leave a gap for air."
    )
    return [Note("caution", text)]


def degrees(hardness: float) -> str:
    """A hardness as the table shows it. The ``hardness`` is in °dH."""
    return figure(GeneralHardness, hardness)
