"""What the budget of carbonate hardness says beside its figures; animals first."""

from calculators.core.figures import figure
from calculators.core.numbers import show_number
from calculators.core.quantities import HardnessAWeek
from calculators.core.result import Level, Link, Note
from calculators.kh_budget.hardness_budget import LEAST_KH_DH, THIN_DH, Budget, change_to_hold
from calculators.science.water.between_changes import CourseOfReading
from calculators.science.water.change_words import BIND
from calculators.science.water.first_change import A_DAY_PERCENT, daily_rise, quick_first_change
from calculators.science.water.gentle import STEP_DH_A_DAY

SOON_WEEKS = 4.0  # common practice, no source: less is no time to wait and see
MOST_KEPT_DH = 25.0  # judgement: beyond it water in the open drops lime
YEARS_WEEKS = 104.0  # beyond two years no such sum holds
CRASH = Link("If pH has fallen already", "problems/kh-crash/")

# The 2.5 °dH: 45 mg/L as calcium carbonate, Biesterfeld and others 2003, a trickling filter.
BELOW = (
    "Below about 1 °dH the pH can fall within days. Nitrifying bacteria slow down, in a filter that was "
    "studied from about 2.5 °dH down, and ammonium piles up unseen. Acid water keeps it as ammonium, "
    "which harms little; it turns toxic once the pH goes up."
)
UNCOUNTED = Note(
    "info",
    "Acids of soil, wood and peat use more than this, and stones, shells and hard sand give some back: "
    "neither is counted. Test KH each week, and believe the test.",
)
GENTLY = Note(
    "info",
    f"Where no ammonia shows, bring KH up with small changes, of no more than {A_DAY_PERCENT} % of the water "
    f"and about {STEP_DH_A_DAY} °dH a day (common practice, no source), never with one large dose or one "
    "large change. Read ammonia and pH before each: the pH rises with it, and what ammonia there is turns "
    "toxic.",
)


def notes(spent: Budget, taken_known: bool) -> tuple[Note, ...]:
    """The verdict first, then what low hardness does, then what the sum leaves out."""
    low = spent.low_day is not None
    return (
        verdict(spent),
        *(not_at_once(spent) if low else ()),
        *((Note("caution", BELOW),) if low else ()),
        *about_use(spent, taken_known),
        *about_holding(spent),
        *quick_first_change(spent.course, "KH", dh),
        *beyond_water(spent),
        *((GENTLY,) if low else ()),
        *(by_this_tap(spent) if spent.verdict == "nearly-gone" else ()),
        UNCOUNTED,
    )


def verdict(spent: Budget) -> Note:
    """The answer in plain words."""
    if spent.verdict == "nearly-gone":
        text = (
            f"KH is {dh(spent.course.start)} °dH: there is next to no buffer left. Test pH and ammonia "
            f"now, before you change anything. Where such soft water is meant, as for some shrimp, keep it "
            f"even and feed little.{settles(spent)}"
        )
        return Note("danger", text, True, (CRASH,))
    if spent.verdict == "lasts":
        return Note("info", lasts(spent), True)
    weeks = (spent.low_day or 0.0) / 7
    level: Level = "danger" if spent.verdict == "runs-out" and weeks < SOON_WEEKS else "caution"
    if spent.verdict == "runs-out":
        why = (
            "these changes do not hold it"
            if spent.course.is_renewed
            else "no water change is entered that would renew it"
        )
        text = f"KH runs out: it is at 1 °dH {in_weeks(weeks)}, and {why}."
    else:
        text = f"KH falls to 1 °dH {in_weeks(weeks)}.{settles(spent)}"
    return Note(level, text, True, (CRASH,))


def lasts(spent: Budget) -> str:
    """Hardness that never comes down to 1 °dH."""
    if spent.used_dh_day == 0:
        return f"KH lasts: on balance none is used.{settles(spent)}"
    if spent.used_dh_day < 0:
        return (
            f"KH lasts: plants and soil give back {figure(HardnessAWeek, -7 * spent.used_dh_day)} °dH a "
            f"week more than bacteria use.{settles(spent)}"
        )
    return f"KH lasts: these changes bring back what bacteria use.{settles(spent)}"


def settles(spent: Budget) -> str:
    """Where it settles, as a sentence to add; nothing where it does not."""
    if spent.holds is None or not spent.course.is_renewed:
        return ""
    before, after = spent.holds
    return (
        f" With these changes it settles at {dh(before)} °dH just before a change and {dh(after)} just "
        "after one."
    )


def in_weeks(weeks: float) -> str:
    """When, in words that promise no more than the sum can."""
    if weeks > YEARS_WEEKS:
        return "only in years"
    if weeks < 1 / 7:
        return "within a day"
    return f"in about {show_number(weeks, 2)} week{'' if weeks == 1 else 's'}"


def not_at_once(spent: Budget) -> tuple[Note, ...]:
    """No raising of KH or pH over stored ammonium, with the calculator that knows."""
    text = (
        "Where a test shows ammonia, raise neither pH nor KH, by new water or by a salt: that can turn "
        f"it toxic. First {BIND}, and ask the calculator for changing water when ammonia shows."
    )
    return (Note("caution", text, spent.verdict == "nearly-gone", leads=("ammonia-change",)),)


def by_this_tap(spent: Budget) -> list[Note]:
    """What the tap itself allows where hardness is nearly gone."""
    text = daily_rise(spent.course.start, spent.course.new_water)
    return [Note("caution", text)] if text and spent.course.is_renewed else []


def about_use(spent: Budget, taken_known: bool) -> list[Note]:
    """What is used a week, and how much less it is where animals make the ammonia."""
    most, least = 7 * spent.used_dh_day, 7 * spent.used_least_dh_day
    if most <= 0:
        return []
    counted = (
        "less what plants and soil give back"
        if taken_known
        else "with nothing given back by plants, since you entered none"
    )
    milder = (
        f"it is {figure(HardnessAWeek, least)} °dH"
        if least > 0
        else "plants and soil then give back as much or more"
    )
    text = (
        f"Nitrification uses {figure(HardnessAWeek, most)} °dH a week here, {counted}. If fish and rot "
        f"make all of the ammonia, {milder}: making it gives half back. The weeks are for the sterner "
        "figure."
    )
    return [Note("info", text)]


def about_holding(spent: Budget) -> list[Note]:
    """Which change would hold it, or why none does."""
    course, percent = spent.course, change_to_hold(spent.course)
    if spent.used_dh_day <= 0 or (spent.low_day is None and percent is None):
        return []
    every = f"every {show_number(course.every_days, 2)} days"
    if percent is not None and (jump := at_once(course, percent)) > STEP_DH_A_DAY:
        text = (
            f"To keep it at {LEAST_KH_DH:g} °dH or more {every} would take {show_number(percent, 2)} %, "
            f"which moves KH by {dh(jump)} °dH at once: more than animals bear in a day. Change less and "
            "more often, or feed less."
        )
        return [Note("caution", text)] if 100 * course.share < percent else []
    if percent is not None:
        text = (
            f"To keep it at {LEAST_KH_DH:g} °dH or more with this water, {once(spent)}only while no ammonia "
            f"shows, change at least {show_number(percent, 2)} % {every}."
        )
        return [Note("info", text)] if 100 * course.share < percent else []
    if course.new_water <= THIN_DH:
        text = "The new water brings next to no KH itself: no change of it can hold the tank's."
    else:
        text = (
            f"No change of this water {every} keeps it at {LEAST_KH_DH:g} °dH: change more often, or feed "
            "less."
        )
    return [Note("caution", text)]


def at_once(course: CourseOfReading, percent: float) -> float:
    """How far a change of so many ``percent`` moves a hardness that is held at the least, °dH."""
    return percent / 100 * (course.new_water - LEAST_KH_DH)


def once(spent: Budget) -> str:
    """That a change which holds a hardness comes after it was brought up; with a space behind it."""
    return "once it was brought up slowly, and " if spent.verdict == "nearly-gone" else "and "


def beyond_water(spent: Budget) -> list[Note]:
    """A hardness that no open water keeps: what the figures leave out would take it."""
    if spent.holds is None or max(spent.holds) <= max(MOST_KEPT_DH, spent.course.new_water):
        return []
    text = (
        "So much KH does not stay in water: lime drops out of it long before, and the pH rises. The uptake "
        "by plants is hardly so large for long, since they can take no more nitrate than comes in."
    )
    return [Note("caution", text)]


def dh(hardness: float) -> str:
    """A hardness in degrees, to two figures; a kit tells no more."""
    return show_number(max(0.0, hardness), 2)
