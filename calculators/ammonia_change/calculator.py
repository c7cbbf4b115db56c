"""How to change water when ammonia shows."""

from typing import Annotated, NamedTuple

from calculators.ammonia_change.notes import notes
from calculators.core.declare import calculator
from calculators.core.form_hints import FINER, InRow
from calculators.core.leads import Lead
from calculators.core.quantities import (
    PH,
    CarbonateHardness,
    GeneralHardness,
    Litres,
    Nitrogen,
    Percent,
    Temperature,
)
from calculators.core.quantities import Volume as TankVolume
from calculators.core.quantity import (
    AnswersTo,
    Assumed,
    Choices,
    Help,
    Label,
    Possible,
    Valid,
    WhenNone,
)
from calculators.core.result import Level, Note, Series
from calculators.science.animals.line_words import FREE_AMMONIA_LINES
from calculators.science.water.ammonia_reading import Reading, ReportedAs, total_nitrogen
from calculators.science.water.change_choice import (
    ChangeOutcome,
    Way,
    choose_by_readings,
    misfits,
    outcome,
    outcomes,
)
from calculators.science.water.water_mix import Water

WAYS = (
    "change now",
    "change slowly, a little at a time",
    "match the new water to the tank first",
    "bind the ammonia first",
    "no change is needed for it",
    "read pH and KH again first",
)
LEVELS: tuple[Level, ...] = ("caution", "caution", "danger", "danger", "info", "danger")
UNFIT = WhenNone("not known: pH and KH do not fit together")
PICTURE = "Free ammonia by how much is changed"


class AmmoniaChange(NamedTuple):
    """Free ammonia before and after a change, and the way to go."""

    way: Annotated[Way, Label("The way"), Choices(WAYS, LEVELS)]
    now_nh3_mg_n_l: Annotated[Nitrogen | None, Label("Free ammonia now"), UNFIT]
    at_once_nh3_mg_n_l: Annotated[
        Nitrogen | None,
        Label("Right after this change"),
        Help("Mixed, before any gas has left."),
        UNFIT,
    ]
    later_nh3_mg_n_l: Annotated[
        Nitrogen,
        Label("Once carbon dioxide has left"),
        Help("In balance with twice the carbon dioxide of outdoor air: hours to a day."),
    ]
    aired_nh3_mg_n_l: Annotated[
        Nitrogen, Label("The same with no change"), Help("What air alone would do.")
    ]
    at_once_ph: Annotated[PH | None, Label("pH right after"), UNFIT]
    later_ph: Annotated[PH, Label("pH once carbon dioxide has left")]
    later_total_mg_n_l: Annotated[Nitrogen, Label("Total ammonia nitrogen after the change")]
    best_percent: Annotated[
        Percent,
        Label("Change after which least is free later"),
        Help("To the nearest 5 %; 0 where none helps. It is a limit of sense, not a request."),
    ]
    advised_percent: Annotated[
        Percent, Label("Change to make now"), Help("0 where something else comes first.")
    ]
    largest_percent: Annotated[
        Percent,
        Label("Largest change that makes nothing worse"),
        Help("With this tap, every smaller one included; 0 where something else comes first."),
    ]
    change_l: Annotated[
        Litres | None, Label("Water for the change asked about"), AnswersTo(("volume_l",))
    ]
    notes: tuple[Note, ...]
    series: dict[str, Series]


READING_ROW = "What the kit shows"
TANK_ROW = "The tank"
TAP_ROW = "The tap, or what you mix"


@calculator(
    "Changing water when ammonia shows",
    sources=(
        "emerson-1975",
        "plummer-busenberg-1982",
        "davies-1962",
        "phreeqc",
        "epa-2013-ammonia",
        "ciaaw-2021",
    ),
    leads_to=(
        Lead(
            "conditioner",
            "Conditioner for the new water",
            {
                "water_l": "change_l",
                "tank_l": "volume_l",
                "temperature_c": "temperature_c",
            },  # no pH: the conditioner's is the higher of tank and tap
            needs=("change_l",),
        ),
    ),
)
def ammonia_change(
    ammonia_mg_l: Annotated[Reading, InRow(READING_ROW)] = 3.0,
    reported_as: Annotated[ReportedAs, InRow(READING_ROW)] = "unknown",
    ph: Annotated[
        PH, Label("pH of the tank"), Possible(4, 11), Valid(5, 9.5), InRow(TANK_ROW, "pH")
    ] = 6.0,
    kh_dh: Annotated[
        CarbonateHardness, Label("Carbonate hardness (KH) of the tank"), InRow(TANK_ROW, "KH")
    ] = 0.0,
    gh_dh: Annotated[
        GeneralHardness | None,
        Label("General hardness (GH) of the tank"),
        Help("With that of the new water."),
        InRow(TANK_ROW, "GH"),
    ] = None,
    temperature_c: Annotated[
        Temperature, Possible(0, 40), Valid(0, 30), InRow(TANK_ROW, "Temperature")
    ] = 25.0,
    tap_ph: Annotated[
        PH,
        Label("pH of the new water"),
        Possible(4, 11),
        Help("Straight from the tap, or of what you mix."),
        InRow(TAP_ROW, "pH"),
    ] = 7.8,
    tap_kh_dh: Annotated[
        CarbonateHardness, Label("Carbonate hardness of the new water"), InRow(TAP_ROW, "KH")
    ] = 8.0,
    tap_gh_dh: Annotated[
        GeneralHardness | None,
        Label("General hardness of the new water"),
        InRow(TAP_ROW, "GH"),
    ] = None,
    tap_ammonia_mg_n_l: Annotated[
        Nitrogen,
        Label("Ammonia of the new water, as nitrogen"),
        Possible(0, 50),
        Help("Test the tap; chloramine that a conditioner splits leaves ammonia."),
        Assumed(),
        InRow(TAP_ROW, "Ammonia"),
    ] = 0.0,
    volume_l: Annotated[
        TankVolume | None, Help("Water in the tank, without soil and stones.")
    ] = 60.0,
    change_percent: Annotated[
        Percent, Label("Change you have in mind"), Possible(0, 90), Assumed(), FINER
    ] = 50.0,
) -> AmmoniaChange:
    """Find whether a water change helps or harms when ammonia shows, how large, and in what way.

    A kit counts harmless ammonium and toxic, free ammonia together. In acid water nearly all is
    ammonium. New water that is harder or less acid raises the pH, at once, and more as the carbon
    dioxide leaves: then a change can free more ammonia than it takes out. In hard, alkaline water a
    change helps at once.

    Carbon dioxide follows from pH and carbonate hardness. Carbonate, alkalinity and ammonia of the
    two waters add up by volume, and the pH is found from them: with all the gas still there, and
    when as much is left as twice outdoor air gives. Activities after Davies; calcium pairs as in a
    geochemist's program, which the tests hold this to. Salts hold more ammonia as ammonium, so
    that the free share is up to 9 % less than in the tables for pure water.

    A kit that reads 0 °dH may miss half a degree. For the gas that goes with the pH, a quarter of a
    degree is then taken. Where a pH and a hardness cannot be of one water, since it would hold more
    carbon dioxide than open water can, the answer says so and advises no change. No advised change
    takes free ammonia from below to the line at which it can kill.

    New water of far other hardness, carbonate or general, is a shock of its own: so much is advised as
    moves neither by more than 2 °dH, which animals bear in a day (common practice, no source). Where
    free ammonia kills already, it comes first, and the change is split.
    """
    total = total_nitrogen(ammonia_mg_l, reported_as)
    tank = Water(ph, kh_dh, temperature_c, total, gh_dh)
    tap = Water(tap_ph, tap_kh_dh, temperature_c, tap_ammonia_mg_n_l, tap_gh_dh)
    steps = outcomes(tank, tap)
    choice = choose_by_readings(tank, tap, steps)
    change = outcome(tank, tap, change_percent)
    # what hangs on a pH that cannot be would calm; what hangs on the hardness is the worse of the two
    sure_now, sure_at_once = not misfits(tank), not misfits(tank, tap)
    return AmmoniaChange(
        way=choice.way,
        now_nh3_mg_n_l=choice.now.nh3_mg_n_l if sure_now else None,
        at_once_nh3_mg_n_l=change.at_once.nh3_mg_n_l if sure_at_once else None,
        later_nh3_mg_n_l=change.later.nh3_mg_n_l,
        aired_nh3_mg_n_l=choice.aired.nh3_mg_n_l,
        at_once_ph=change.at_once.ph if sure_at_once else None,
        later_ph=change.later.ph,
        later_total_mg_n_l=change.total_mg_n_l,
        best_percent=choice.best_percent,
        advised_percent=choice.percent,
        largest_percent=choice.largest_percent,
        change_l=None if volume_l is None else volume_l * change_percent / 100,
        notes=notes(choice, tank, tap, change, reported_as),
        series=pictures(steps) if sure_at_once else {},
    )


def pictures(steps: list[ChangeOutcome]) -> dict[str, Series]:
    """Free ammonia against the share that is changed, right after and later."""
    percents = [step.percent for step in steps]

    def curve(label: str, short: str, levels: list[float]) -> Series:
        return Series(
            label, "mg N/L", "Part changed", "%", percents, levels, picture=PICTURE, short=short,
            lines=FREE_AMMONIA_LINES,
        )  # fmt: skip

    return {
        "at_once_nh3": curve(
            "Free ammonia right after", "at once", [step.at_once.nh3_mg_n_l for step in steps]
        ),
        "later_nh3": curve(
            "Free ammonia once gas has left", "later", [step.later.nh3_mg_n_l for step in steps]
        ),
    }
