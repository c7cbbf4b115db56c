"""What the calculator for topping up gives."""

from typing import Annotated, NamedTuple

from calculators.core.quantities import (
    CarbonateHardness,
    ChangeRate,
    GeneralHardness,
    HardnessAWeek,
    Percent,
)
from calculators.core.quantity import AnswersTo, Choices, Digits, Help, Label, WhenNone
from calculators.core.result import Note, Series
from calculators.top_up.rising import Verdict

VERDICTS = Choices(
    ("it stays about as it is", "it rises", "it rises without end", "it falls"),
    levels=("info", "caution", "caution", "info"),
)
WITH_KH = AnswersTo(("kh_dh", "top_up_kh_dh"))
NO_END = WhenNone("none: it goes on rising")


class TopUp(NamedTuple):
    """Hardness ahead, where it settles, and how much purified water holds it."""

    verdict: Annotated[Verdict, Label("General hardness"), VERDICTS]
    gh_end_dh: Annotated[
        GeneralHardness, Label("General hardness then"), Help("At the end of the weeks ahead.")
    ]
    kh_end_dh: Annotated[CarbonateHardness | None, Label("Carbonate hardness then"), WITH_KH]
    gh_rise_dh_week: Annotated[HardnessAWeek, Label("General hardness rises between changes by")]
    gh_settled_high_dh: Annotated[
        GeneralHardness | None, Label("General hardness settles at, before a change"), NO_END
    ]
    gh_settled_low_dh: Annotated[
        GeneralHardness | None, Label("General hardness settles at, after a change"), NO_END
    ]
    kh_settled_high_dh: Annotated[
        CarbonateHardness | None,
        Label("Carbonate hardness settles at, before a change"),
        WITH_KH,
        NO_END,
    ]
    pure_share_percent: Annotated[
        Percent | None,
        Label("Purified water in the top-up that holds GH as it is"),
        Digits(2),
        WhenNone("no share can: the new water is harder than the tank"),
    ]
    nitrate_rise_mg_l_week: Annotated[
        ChangeRate | None,
        Label("Nitrate brought in by topping up"),
        AnswersTo(("top_up_nitrate_mg_l",)),
    ]
    notes: tuple[Note, ...]
    series: dict[str, Series]
