"""How a tank of the shelf stands, and what it asks for."""

from datetime import date
from typing import Annotated

from calculators.core.declare import calculator
from calculators.core.leads import Lead, Value
from calculators.core.quantity import FromFile, Label, Private
from calculators.core.result import Series
from calculators.science.animals.reading_lines import LINE_SOURCES
from calculators.science.shelf.due import Due
from calculators.science.shelf.freshest import figure_now
from calculators.science.shelf.harmful_readings import ammonia_water
from calculators.science.shelf.log_and_day import DayAsked, LogAsked, day_asked
from calculators.science.shelf.reading import check_entries
from calculators.science.shelf.shelf_tank import ShelfTank
from calculators.science.shelf.tank_state import TankState, state_of_tank
from calculators.standing.example import FOYER, LOG, TODAY
from calculators.standing.light import light_note
from calculators.standing.nitrogen import nitrogen_heading, nitrogen_note, nitrogen_series
from calculators.standing.nitrogen_month import NitrogenMonth, nitrogen_month
from calculators.standing.nitrogen_outlook import NoOutlook, WeeksAhead, look_ahead
from calculators.standing.outlook_pictures import outlook_pictures
from calculators.standing.outputs import DueTask, TankStanding, TestWanted, WaterNow, lives_now
from calculators.standing.reading_courses import ReadingCourse, TrendRow, courses, trend_row
from calculators.standing.reading_pictures import folded, pictures, readings_heading
from calculators.standing.words import notes

# Only where a reading is there: its row of the trends is found by its key.
NITRATE, AMMONIA = "trends.nitrate_mg_l.latest", "trends.ammonia_mg_n_l.latest"
WATER = {
    **{
        key: f"water.{key}" for key in WaterNow._fields if key != "gh_dh"
    },  # the freshest: it decides how toxic ammonia is
    "volume_l": "tank.net_l",
}
LEADS = (
    Lead(
        "ammonia-change",
        "How to change water while ammonia shows",
        {
            **WATER,
            "ammonia_mg_l": AMMONIA,
            "reported_as": Value("nitrogen"),
            "gh_dh": "water.gh_dh",
            "tap_ph": "tank.tap.ph",
            "tap_kh_dh": "tank.tap.kh_dh",
            "tap_gh_dh": "tank.tap.gh_dh",
        },
        needs=(AMMONIA,),
    ),
    Lead(
        "nitrogen-balance",
        "Where the nitrogen of its feed goes",
        {
            **WATER,
            "feed_g_week": "tank.feed_g_week",
            "protein_percent": "tank.protein_percent",
            "soil_area_cm2": "tank.soil_area_cm2",
            "change_percent": "tank.change.percent",
            "change_every_days": "tank.change.every_days",
            "tap_nitrate_mg_l": "tank.tap.nitrate_mg_l",
            "nitrate_mg_l": NITRATE,
        },
        needs=("tank.feed_g_week",),
    ),
)


@calculator(
    "Standing of a tank",
    sources=(
        *LINE_SOURCES, "epa-2013-ammonia", "theil-1950", "sen-1968", "hirsch-slack-smith-1982",
        "fao-x6862e", "reddy-debusk-1985", "veraart-2011",
    ),
    leads_to=LEADS,
)  # fmt: skip
def standing(
    tank: Annotated[ShelfTank, Label("Tank"), FromFile(), Private()] = FOYER,
    entries: LogAsked = LOG,
    today: DayAsked = None,
) -> TankStanding:
    """Say how a tank of the shelf stands, what is due, where its readings go and what to test next.

    The latest reading of each thing is held against the lines at which readings harm and kill; ammonia
    by its toxic share at the tank's pH and temperature, at the worst where these are not known. Deaths
    weigh as well, and so does young soil that nobody tested. Where nothing was read in 60 days the
    tank is not known, never calm. Of readings of one day with nothing done to the water in between
    the worse counts, and where they contradict, both are named. Where the log has entries of a later
    day, a clock is behind or a date is wrong: the worse counts of how the tank stands today and on
    the day of the newest entry, and no tank is calm.

    Trends are the middle slope between changes of water (Theil and Sen), with their limits, and say
    where there are too few readings. What is due follows the tank's own change of water, and the trims
    that the log shows, or else the plants' records. Feeding is never due.

    The forecast runs the nitrogen model from your last reading, at the pace of growth that meets
    your readings of four weeks. Without feed, protein, litres, weights and readings there is none.

    Nitrogen in and out of the last month is the ration's, that of the new water and of plants put in,
    against what changes carried at the reading before them, what plants held that were cut or taken
    out, and what the soil loses as gas. What the log does not say is named, and not counted.

    The minutes of a change are our judgement: 5, and 0.7 for each litre; those of trims are of the
    plants' records.
    """
    check_entries(entries)
    stand = state_of_tank(tank, entries, day_asked(today, TODAY if tank == FOYER else None))
    ahead, found = look_ahead(stand.tank, stand.log, stand.judged.readings), courses(stand.log)
    month = nitrogen_month(stand.tank, stand.log)
    test, water = stand.next_test, ammonia_water(stand.tank, stand.judged.readings)
    return TankStanding(
        verdict=stand.judged.verdict,
        sentence=stand.judged.sentence,
        due=[due_task(one, stand.log.today) for one in stand.due],
        trends=trend_rows(found, stand),
        next_test=TestWanted(test.what, test.why),
        outlook=None if isinstance(ahead.outlook, NoOutlook) else ahead.outlook,
        minutes_week=stand.minutes_week,
        lives=lives_now(stand.tank),
        water=WaterNow(
            *water,
            *(figure_now(key, stand.tank, stand.judged.readings) for key in ("kh_dh", "gh_dh")),
        ),
        notes=(*notes(stand, ahead), *light_note(stand), *nitrogen_note(month)),
        series=all_pictures(stand, found, ahead, month),
    )


def all_pictures(
    stand: TankState, found: list[ReadingCourse], ahead: WeeksAhead, month: NitrogenMonth | None
) -> dict[str, Series]:
    """The pictures: readings first, one of all in view, the others behind what they came to."""
    water = ammonia_water(stand.tank, stand.judged.readings)
    weeks = outlook_pictures(ahead.weeks, water)
    heading = readings_heading(trend_rows(found, stand))
    read = pictures(found, stand.judged.harms, stand.log)
    return {
        **folded(read, heading, "" if weeks else next(iter(read), "")),
        **weeks,
        **folded(nitrogen_series(month), nitrogen_heading(month)),
    }


def due_task(one: Due, today: date) -> DueTask:
    """A task as the answer has it."""
    return DueTask(one.task, one.on.isoformat(), one.late_days, one.why, when(one, today))


def when(one: Due, today: date) -> str:
    """When a task is due, in words."""
    wait = (one.on - today).days
    if one.late_days:
        return f"{one.late_days} {'day' if one.late_days == 1 else 'days'} late"
    return {0: "today", 1: "tomorrow"}.get(wait, f"in {wait} days")


def trend_rows(found: list[ReadingCourse], stand: TankState) -> list[TrendRow]:
    """The rows of what was read within the window of the trends."""
    return [trend_row(course, stand.judged.readings[course.what]) for course in found]
