"""What the weekly budget says in words; the verdict first, the animals before the leaves."""

from calculators.core.numbers import show_number as show
from calculators.core.result import Note
from calculators.core.wording import CUTTINGS
from calculators.nitrogen.balance import Flows, Verdict
from calculators.nitrogen.steady import Cycle
from calculators.science.animals.reading_lines import edge_of

HIGH_NITRATE_MG_L = edge_of("nitrate_mg_l", "harmful_high")

FEED_IN_STEPS = Note(
    "caution",
    "Feed more only if the animals eat all of it within minutes, by a quarter a week at most, and "
    "test ammonia and nitrite twice a week while you do. What shrimp leave lying rots: for a tank "
    "of shrimp alone use fewer fast plants, or a plain nitrate fertiliser as its label says.",
)
RANGE = Note(
    "info",
    "The soil's gas is known within a factor of thirty: read its least and most, too. Droppings and "
    "leftovers that rot come on top, days to weeks later; how much is unsure. Plants' uptake is "
    "right within a factor of two at best. Let your own readings decide.",
)


def notes(
    verdict: Verdict,
    found: Flows,
    cycle: Cycle,
    days: float | None,
    high: float | None,
    measured: bool,
    feed_to_balance: float,
    feed_for_target: float,
) -> list[Note]:
    """All that is to be said about one budget."""
    said = [verdict_note(verdict, found, cycle, days, high)._replace(first=True)]
    if high is not None and high > HIGH_NITRATE_MG_L:
        said.append(
            Note(
                "caution",
                f"Nitrate settles near {show(high)} mg/L. From about {HIGH_NITRATE_MG_L:.0f} it can "
                "harm sensitive animals over time: change more, feed less, or grow more plants.",
            )
        )
    if verdict == "running-short":
        said.append(
            Note("info", f"Feed that would just match: about {show(feed_to_balance, 2)} g a week.")
        )
        said.append(FEED_IN_STEPS)
    if measured:
        said.append(
            Note(
                "info",
                "The measured uptake stands for all plants; cover and trimmings are not added.",
            )
        )
    if high is None and cycle.rise_day < 0:
        said.append(
            Note("info", "In the end plants take all, so nitrate settles nowhere above zero.")
        )
    if feed_for_target < 0:
        said.append(
            Note(
                "info",
                "No feed holds your target: even without any, more comes in than goes out at it.",
            )
        )
    if cycle.share <= 0 < cycle.rise_day:
        said.append(Note("caution", "Without water changes nitrate climbs without end."))
    return [*said, RANGE, CUTTINGS]


def verdict_note(
    verdict: Verdict, found: Flows, cycle: Cycle, days: float | None, high: float | None
) -> Note:
    """The verdict in one plain sentence or two."""
    flows = (
        f"{show(found.excreted)} mg of nitrogen a day come in as ammonia, plants and soil take "
        f"{show(found.plants + found.denitrified)}."
    )
    if verdict == "running-short":
        left = "is used up now" if days is not None and days < 1 else f"lasts about {days:.0f} days"
        return Note(
            "caution",
            f"Running short: the plants take more than the feed brings, and the nitrate in the "
            f"water {left}. Leaves brown some weeks later, when their own store is spent. {flows}",
        )
    if verdict == "building":
        settles = "" if high is None else f" It settles near {show(high)} mg/L before each change."
        return Note("info", f"Building: nitrate climbs between changes.{settles} {flows}")
    held = ""
    if cycle.rise_day < 0:
        held = (
            " The tap's own nitrate makes up for what plants take besides."
            if high is not None
            else " Nitrate falls, but lasts for more than a year."
        )
    return Note("info", f"Steady: as much goes as comes, within what a kit can tell.{held} {flows}")
