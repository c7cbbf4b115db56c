"""What the budget of carbonate hardness gives."""

from typing import Annotated, NamedTuple

from calculators.core.quantities import CarbonateHardness, HardnessAWeek, Percent, WeeksAhead
from calculators.core.quantity import Choices, Digits, Help, Label, WhenNone
from calculators.core.result import Note, Series
from calculators.kh_budget.hardness_budget import Verdict

VERDICTS = Choices(
    ("it lasts", "it falls to 1 °dH or less", "it runs out", "it is nearly gone now"),
    levels=("info", "caution", "danger", "danger"),
)
NEVER_SETTLES = WhenNone("none: it runs out, or never settles")


class KhBudget(NamedTuple):
    """What is used a week, how long it lasts, and where changes hold it."""

    verdict: Annotated[Verdict, Label("Carbonate hardness"), VERDICTS]
    used_dh_week: Annotated[
        HardnessAWeek, Label("Used up a week"), Help("Less than 0 where more comes back.")
    ]
    used_least_dh_week: Annotated[
        HardnessAWeek,
        Label("Used up a week, if fish and rot make all the ammonia"),
        Help("Making it gives back half of what its nitrification uses."),
    ]
    weeks_to_1_dh: Annotated[
        WeeksAhead | None, Label("Weeks until 1 °dH"), WhenNone("it does not fall so far")
    ]
    settled_high_dh: Annotated[
        CarbonateHardness | None, Label("Settles at, highest"), Digits(2), NEVER_SETTLES
    ]
    settled_low_dh: Annotated[
        CarbonateHardness | None, Label("Settles at, lowest"), Digits(2), NEVER_SETTLES
    ]
    change_to_hold_percent: Annotated[
        Percent | None,
        Label("Change that keeps it at 2 °dH or more"),
        Help("Each time, as often as now, once it has settled."),
        Digits(2),
        WhenNone("none of this water can, so seldom"),
    ]
    notes: tuple[Note, ...]
    series: dict[str, Series]
