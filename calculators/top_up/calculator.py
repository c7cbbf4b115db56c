"""What evaporation and topping up do to hardness and nitrate."""

from typing import Annotated

from calculators.core.declare import calculator
from calculators.core.form_hints import FINER, InRow
from calculators.core.leads import Lead
from calculators.core.quantities import (
    CarbonateHardness,
    Concentration,
    GeneralHardness,
    Interval,
    Percent,
    Volume,
    WaterAWeek,
    Weeks,
)
from calculators.core.quantity import Assumed, Help, Label, Possible
from calculators.core.result import Line, Refusal, Refused, Series
from calculators.science.animals.reading_lines import edge_of
from calculators.science.conversions import DAYS_PER_WEEK
from calculators.science.water.between_changes import corners
from calculators.top_up.outputs import TopUp
from calculators.top_up.rising import Rhythm, pure_share_percent, rising, verdict_of
from calculators.top_up.rising_harm import TopUpReadings
from calculators.top_up.words import notes

PICTURE = "Hardness from now on"

CHANGE_ROW = "Water changes"
GH_ROW = "General hardness (GH)"


@calculator(
    "Evaporation and topping up",
    sources=("arithmetic", "smith-lof-jones-1998"),
    leads_to=(
        Lead(
            "kh-budget",
            "How long carbonate hardness lasts",
            {
                "volume_l": "volume_l",
                "kh_dh": "kh_dh",
                "tap_kh_dh": "tap_kh_dh",
                "change_percent": "change_percent",
                "change_every_days": "change_every_days",
            },
        ),
    ),
)
def top_up(
    volume_l: Annotated[Volume, Help("Water in the tank, without soil and stones.")] = 60.0,
    evaporation_l_week: Annotated[
        WaterAWeek,
        Label("Water that evaporates"),
        Help(
            "Count what you pour in to bring the level back. An open tank loses about 1 to 4 cm of "
            "level a week, a covered one less than 1 cm: common practice."
        ),
    ] = 3.0,
    gh_dh: Annotated[
        GeneralHardness, Label("General hardness (GH) of the tank"), InRow(GH_ROW, "Tank")
    ] = 13.0,
    top_up_gh_dh: Annotated[
        GeneralHardness,
        Label("General hardness of the water you top up with"),
        Help("Purified or rain water reads 0; test it."),
        InRow(GH_ROW, "Top-up"),
    ] = 12.0,
    top_up_kh_dh: Annotated[
        CarbonateHardness | None, Label("Carbonate hardness of the water you top up with"), FINER
    ] = 8.0,
    top_up_nitrate_mg_l: Annotated[
        Concentration | None, Label("Nitrate of the water you top up with"), FINER
    ] = 20.0,
    change_percent: Annotated[
        Percent | None,
        Label("Changed each time"),
        Help("Leave it empty if you change none."),
        InRow(CHANGE_ROW, "Each time"),
    ] = 20.0,
    change_every_days: Annotated[
        Interval, Label("Changed every"), Possible(1, 365), Assumed(), InRow(CHANGE_ROW, "Every")
    ] = 14.0,
    tap_gh_dh: Annotated[
        GeneralHardness | None,
        Label("General hardness of the new water at a change"),
        Help("Empty is taken as the water you top up with."),
        FINER,
    ] = 12.0,
    tap_kh_dh: Annotated[
        CarbonateHardness | None,
        Label("Carbonate hardness of the new water at a change"),
        Help("Empty is taken as the water you top up with."),
        FINER,
    ] = 8.0,
    kh_dh: Annotated[
        CarbonateHardness | None, Label("Carbonate hardness (KH) of the tank"), FINER
    ] = 7.0,
    weeks: Annotated[Weeks, Label("Look ahead"), Possible(1, 260), Assumed(), FINER] = 26.0,
) -> TopUp:
    """Find what evaporation and topping up do to hardness and nitrate, and where changes hold them.

    Water leaves a tank as vapour and leaves all salts behind. What is poured in to bring the level
    back adds its own. So hardness rises each week by the hardness of the top-up times the share of
    the tank that evaporates, and a water change brings it nearer to the new water. After many
    changes the same two readings repeat. A top-up of purified water adds nothing.

    The tank is taken as filled up again before it is tested. Lime that drops out, shells, plants and
    roots take hardness away, and nitrification takes carbonate hardness: neither is counted.

    Measured over still pools, evaporation goes with the difference in vapour pressure between the
    water and the air. By that, water of 25 °C in a room of 20 °C and half moist air loses about 3 cm
    a week, and under a cover far less.
    """
    if evaporation_l_week >= volume_l:
        why = "more than the tank holds evaporates each week"
        raise Refused(Refusal("evaporation_l_week", why, 0.0, volume_l))
    share = evaporation_l_week / volume_l
    rhythm = Rhythm(share, (change_percent or 0.0) / 100, change_every_days)
    tap = top_up_gh_dh if tap_gh_dh is None else tap_gh_dh
    tap_kh = top_up_kh_dh if tap_kh_dh is None else tap_kh_dh
    gh = rising(rhythm, gh_dh, top_up_gh_dh, tap)
    kh = rising(rhythm, kh_dh, top_up_kh_dh, tap_kh)
    assert gh
    pure = pure_share_percent(rhythm, gh_dh, top_up_gh_dh, tap)
    nitrate = None if top_up_nitrate_mg_l is None else share * top_up_nitrate_mg_l
    days = weeks * DAYS_PER_WEEK
    verdict = verdict_of(gh, gh_dh)
    readings = TopUpReadings(gh_dh, top_up_gh_dh, tap, pure, nitrate, share, weeks, gh.end(days))
    return TopUp(
        verdict=verdict,
        gh_end_dh=gh.end(days),
        kh_end_dh=kh.end(days) if kh else None,
        gh_rise_dh_week=gh.a_week,
        gh_settled_high_dh=gh.settled.before if gh.settled else None,
        gh_settled_low_dh=gh.settled.after if gh.settled else None,
        kh_settled_high_dh=kh.settled.before if kh and kh.settled else None,
        pure_share_percent=pure,
        nitrate_rise_mg_l_week=nitrate,
        notes=notes(verdict, gh, kh, readings),
        series={
            name: curve(label, short, [*corners(rise.course, days)])
            for name, label, short, rise in (
                ("gh", "General hardness", "GH", gh), ("kh", "Carbonate hardness", "KH", kh)
            )
            if rise
        },
    )  # fmt: skip


def curve(label: str, short: str, points: list[tuple[float, float]]) -> Series:
    """A hardness over the weeks. Its ``points`` are pairs of a day and °dH."""
    return Series(
        label, "°dH", "Weeks from now", "weeks",
        [day / DAYS_PER_WEEK for day, _ in points], [hardness for _, hardness in points],
        picture=PICTURE, short=short, digits=2,
        lines=(Line("hard for many", edge_of("gh_dh", "harmful_high")),),
    )  # fmt: skip
