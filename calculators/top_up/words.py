"""What the calculator for topping up says beside its figures; animals first."""

from calculators.core.figures import figure
from calculators.core.numbers import show_number
from calculators.core.quantities import ChangeRate, HardnessAWeek
from calculators.core.result import Level, Note
from calculators.core.wording import joined
from calculators.science.water.first_change import TENDER, quick_first_change
from calculators.top_up.rising import Rising, Verdict
from calculators.top_up.rising_harm import TopUpReadings, degrees, hard, soft, swings

MUCH_NITRATE_MG_L_WEEK = 1.0  # our judgement: as much as a little feed brings


CARE = Note(
    "caution",
    "Top up often and little, with water near the tank's warmth, treated for chlorine if it comes from "
    "the tap. Pull the plugs of heater and filter first: a heater that stands out of the water can "
    "burst, and a pump that runs dry can burn out.",
)
ALL_SALTS = Note(
    "info",
    "All else that is dissolved rises with it, and no hardness kit shows it: sodium, chloride, copper "
    "from pipes. Topping up takes nothing out, so it never stands in for a water change.",
)
UNCOUNTED = Note(
    "info",
    "Nitrification uses carbonate hardness, and hard water may leave a crust: both keep the readings lower "
    "than this. Test once a month, always with the tank filled up.",
    leads=("kh-budget",),
)


def notes(
    verdict: Verdict, gh: Rising, kh: Rising | None, readings: TopUpReadings
) -> tuple[Note, ...]:
    """What harms first, then the verdict, the top-up that holds it, and the care to take."""
    return (
        *hard(gh, readings),
        first(verdict, gh, readings),
        *soft(gh, readings),
        *pure(verdict, readings),
        *brought(kh, readings),
        *quick_first_change(gh.course, "GH", degrees, TENDER),
        *(quick_first_change(kh.course, "KH", degrees) if kh else ()),
        *swings(readings),
        CARE,
        ALL_SALTS,
        UNCOUNTED,
    )


def first(verdict: Verdict, gh: Rising, readings: TopUpReadings) -> Note:
    """The answer in plain words."""
    week = figure(HardnessAWeek, gh.a_week)
    then = f"{degrees(readings.gh_end_dh)} °dH in {show_number(readings.weeks, 2)} weeks"
    if verdict == "never-settles":
        text = (
            f"GH rises by {week} °dH a week with no end, since no change takes it out: from "
            f"{degrees(readings.gh_dh)} to {then}."
        )
        return Note("caution", text, True)
    assert gh.settled
    if not gh.course.is_renewed:
        text = f"Topping up adds no hardness: GH stays at {degrees(readings.gh_dh)} °dH."
        return Note("info", text, True)
    ends = (
        f"settles at {degrees(gh.settled.before)} °dH just before a change and "
        f"{degrees(gh.settled.after)} just after one"
    )
    words = {
        "steady": f"GH stays about as it is: it {ends}.",
        "rising": f"GH rises by {week} °dH a week between changes, is {then}, and {ends}."
        if gh.a_week > 0
        else f"GH rises with the new water of each change: it is {then}, and {ends}.",
        "falling": f"GH comes down: it is {then}, and {ends}.",
    }
    return Note("caution" if verdict == "rising" else "info", words[verdict], True)


def pure(verdict: Verdict, readings: TopUpReadings) -> list[Note]:
    """How much purified water holds it, and how to go over to it."""
    share = readings.pure_percent
    if verdict not in ("rising", "never-settles"):
        return []
    if share is None:
        text = (
            f"The new water of each change reads {degrees(readings.tap_gh_dh)} °dH, more than the tank: no "
            "top-up holds GH as it is. Purified water in the change itself would."
        )
        return [Note("info", text)]
    if share == 0:
        return []
    text = (
        f"To hold GH at {degrees(readings.gh_dh)} °dH, top up with {show_number(share, 2)} % purified or "
        "rain water"
        + (" and the rest as now." if share < 100 else ".")
        + " Never pour much of it in at once: water with no salts is a shock to animals."
    )
    return [Note("info", text)]


def brought(kh: Rising | None, readings: TopUpReadings) -> list[Note]:
    """What the top-up brings of nitrate and of carbonate hardness."""
    parts: list[str] = []
    level: Level = "info"
    if readings.nitrate_week:
        parts.append(f"{figure(ChangeRate, readings.nitrate_week)} mg/L of nitrate")
        level = "caution" if readings.nitrate_week >= MUCH_NITRATE_MG_L_WEEK else "info"
    if kh is not None and kh.a_week > 0:
        parts.append(f"{figure(HardnessAWeek, kh.a_week)} °dH of KH, which lifts pH")
    text = (
        f"Each week topping up brings {joined(parts)}. Feed makes nitrate beside it."
        if parts
        else ""
    )
    if readings.nitrate_week is None:
        text = f"{text} Nitrate of the top-up water is not known: test it once.".strip()
    return [Note(level, text)] if text else []
