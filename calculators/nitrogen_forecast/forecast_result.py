"""The answer of one run: outputs and words."""

from collections.abc import Sequence

from calculators.core.numbers import show_number as show
from calculators.core.result import Note
from calculators.nitrogen_forecast.ensemble import Band
from calculators.nitrogen_forecast.forecast_pictures import drawn
from calculators.nitrogen_forecast.forecast_verdict import judge
from calculators.nitrogen_forecast.harm_words import at_the_edge
from calculators.nitrogen_forecast.inverse import Answers
from calculators.nitrogen_forecast.outlook import calm_from, is_rising
from calculators.nitrogen_forecast.outputs import NitrogenForecast
from calculators.nitrogen_forecast.run_harm import harms, harms_at_edges
from calculators.nitrogen_forecast.words import notes
from calculators.science.nitrogen.alkalinity import CACO3_MG_PER_N
from calculators.science.nitrogen.course import course_of
from calculators.science.nitrogen.daily_record import DailyRecord
from calculators.science.nitrogen.forecast_tank import Event, Tank
from calculators.science.nitrogen.hunger import Hunger
from calculators.science.nitrogen.simulate import Outcome
from calculators.science.water.ammonia import unionised_share

MATURE = 100.0  # percent
NO_DAY = Note(
    "caution",
    "No day is given from which ammonia and nitrite stay low: at an edge of what is not known one of them "
    "still rises on the last day. Test each week, and ask for more days.",
    first=True,
)


def late(events: list[Event], days: float) -> list[Note]:
    """A word on events that the forecast does not reach."""
    count = sum(event.day >= days for event in events)
    if not count:
        return []
    return [Note("info", f"{count} of the events lie on or after the last day and are left out.")]


def cut_short(days: float, asked: float) -> list[Note]:
    """A word where the run ends before the day that was asked for: what follows is not known."""
    if days >= asked:
        return []
    return [
        Note(
            "caution",
            f"The forecast stops on day {show(days, 3)} of {show(asked, 3)}: so much is done, or changes so "
            "fast, that it would take too long. What comes after that day is not known.",
            first=True,
        )
    ]


def result(
    outcome: Outcome,
    tank: Tank,
    events: list[Event],
    days: float,
    around: Band | None,
    at_edges: Sequence[DailyRecord],
    answers: Answers,
    calm: float | None,
    remarks: list[Note],
    fitted: bool,
) -> NitrogenForecast:
    """The answer of one run, ``fitted`` to readings or not.

    Ammonia and nitrite are ``calm`` from this day on, None where not before the end.
    """
    record, hunger = outcome.record, outcome.record.hunger
    course = course_of(record.lines)
    harmful = harms(record, course, tank)
    worse = harms_at_edges(at_edges, harmful, tank)
    unsure = [at_the_edge(harm, tank) for harm in worse]
    if calm is None and not harmful and not worse:
        unsure = [NO_DAY]
    return NitrogenForecast(
        peak_unionised_mg_n_l=record.ammonia.value * unionised_share(tank.ph, tank.temperature_c),
        peak_unionised_day=record.ammonia.day,
        peak_nitrite_mg_n_l=record.nitrite.value,
        peak_nitrite_day=record.nitrite.day,
        final_nitrate_mg_l=outcome.last.nitrate,
        first_shortage_day=hunger.first_day,
        recovery_day=hunger.recovery_day,
        balance_error_percent=outcome.balance_error_percent,
        healthy_growth_day=hunger.healthy_day,
        healthy_after_feeding_days=after_feeding(hunger, tank.feed_g_week, events),
        calm_from_day=calm,
        final_kh_dh=None if tank.kh_dh is None else outcome.last.kh,
        kh_drift_dh=outcome.last.kh_drift,
        alkalinity_used_mg_l=max(0.0, outcome.nitrified_mg) / tank.volume_l * CACO3_MG_PER_N,
        final_nitrate_low_mg_l=around.low[-1] if around else None,
        final_nitrate_high_mg_l=around.high[-1] if around else None,
        earliest_shortage_day=around.earliest_shortage if around else None,
        feed_for_target_g_week=answers.feed_g_week,
        extra_stems_g=answers.extra_stems_g,
        extra_floater_area_cm2=answers.extra_floater_cm2,
        verdict=judge(harmful, worse, hunger, course),
        nitrate_course=course.direction,
        peak_nitrate_mg_l=course.highest,
        times_grown=course.times_grown,
        shortages=len(hunger.spells),
        fitted=fitted,
        notes=once(
            [*among(unsure, notes(outcome, harmful, course, tank, events, days, calm)), *remarks]
        ),
        series=drawn(record.lines, around, tank, events),
    )


def calm_in_all(records: Sequence[DailyRecord], tank: Tank) -> float | None:
    """The day from which ammonia and nitrite stay low in every run; None if in one they do not.

    Nor where a filter is not mature and one of them still rises on the last day.
    """
    water = tank.ph, tank.temperature_c
    if tank.filter_maturity_percent < MATURE and any(
        is_rising(one.lines, *water) for one in records
    ):
        return None
    days = [calm_from(record.lines, *water) for record in records]
    return None if None in days else max(day for day in days if day is not None)


def among(unsure: list[Note], notes: list[Note]) -> list[Note]:
    """What the edges say, behind the dangers of the middle run and before all else."""
    dangers = sum(note.level == "danger" for note in notes)
    return [*notes[:dangers], *unsure, *notes[dangers:]]


def once(notes: list[Note]) -> tuple[Note, ...]:
    """Each note once, where it stands first."""
    return tuple(note for place, note in enumerate(notes) if note not in notes[:place])


def after_feeding(hunger: Hunger, ration: float, events: list[Event]) -> float | None:
    """Days from the first rise of the ration after plants ran short to healthy new growth.

    Where it was raised before they ran short only, from the last of those rises. The ``ration`` at the
    start is in g a week.
    """
    short, healthy = hunger.first_day, hunger.healthy_day
    if short is None or healthy is None:
        return None
    rises = []
    for event in sorted(events, key=lambda event: event.day):
        if event.kind != "feed":
            continue
        if event.value > ration and event.day <= healthy:
            rises.append(event.day)
        ration = event.value
    if not rises:
        return None
    return healthy - next((day for day in rises if day >= short), rises[-1])
