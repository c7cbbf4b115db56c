"""The water change that brings a reading to a target."""

import math
from typing import Annotated, NamedTuple

from calculators.core.declare import calculator
from calculators.core.form_hints import FINER, Part
from calculators.core.leads import Lead
from calculators.core.quantities import (
    PH,
    CarbonateHardness,
    Concentration,
    Count,
    DaysAhead,
    GeneralHardness,
    Litres,
    Percent,
    Volume,
)
from calculators.core.quantity import Assumed, Choices, Help, Label, Possible, Quantity
from calculators.core.result import Note
from calculators.science.water.careful_change import WaterForChange
from calculators.science.water.new_water import LIMITS_A_CHANGE, TapGh, TapKh
from calculators.water_change import words as change_words
from calculators.water_change.targets import TARGETS, Substance, level_of

ROUNDING = 1e-9  # so that a target met exactly by n changes does not ask for n + 1
# Common practice, no source: what is still a plan that a keeper can carry out, and how long animals
# get to follow one change before the next.
MOST_CHANGES = 10
DAYS_BETWEEN = 3
URGENT_DAYS_BETWEEN = 1
NITRITE_DAYS_BETWEEN = 0.5  # as every page has it, from the one line of nitrite on
WORDS = Choices((
    "nitrate, as NO₃", "nitrite, as nitrogen (or not known)", "ammonia in total", "phosphate, as PO₄",
    "copper", "something else",
))  # fmt: skip
HARDNESS = Part("pH and hardness, in the tank and in the new water", closed=True)
EachChange = Annotated[float, Quantity("Share", "%", (0, 100), digits=2)]


class WaterChange(NamedTuple):
    """The plan of water changes; its figures are null where no plan can reach the target."""

    single_change_percent: Annotated[
        Percent | None, Label("If it were a single change"), Help("A figure, not advice to do so.")
    ] = None
    changes: Annotated[Count | None, Label("Number of changes"), Help("None above your limit.")] = (
        None
    )
    each_change_percent: Annotated[EachChange | None, Label("Each change")] = None
    days_between: Annotated[DaysAhead | None, Label("Wait between them, at least")] = None
    plan_days: Annotated[DaysAhead | None, Label("From the first to the last")] = None
    target_used_mg_l: Annotated[Concentration | None, Label("Target")] = None
    after_mg_l: Annotated[Concentration | None, Label("Reading afterwards")] = None
    litres_total: Annotated[Litres | None, Label("Water in all")] = None
    notes: tuple[Note, ...] = ()


@calculator(
    "Water change",
    sources=("arithmetic", "camargo-2005", "bc-nitrite", "arthur-leonard-1970"),
    leads_to=(
        Lead(
            "conditioner",
            "Conditioner for the new water",
            {"water_l": "litres_total", "tank_l": "volume_l"},
            needs=("litres_total",),
        ),
    ),
)
def water_change(
    what: Annotated[Substance, Label("What is measured"), WORDS] = "nitrate",
    now_mg_l: Annotated[Concentration, Label("Reading now")] = 40.0,
    target_mg_l: Annotated[
        Concentration | None,
        Label("Reading wanted"),
        Help("Leave it empty for the level that is offered for what you measured."),
    ] = None,
    tap_mg_l: Annotated[
        Concentration | None,
        Label("Reading of the new water"),
        Help("Test the tap, or what you mix. Empty is taken as none, and said."),
    ] = None,
    max_change_percent: Annotated[
        Percent,
        Label("Largest single change"),
        Possible(1, 100),
        Help("What you and the animals will bear."),
        Assumed(),
        FINER,
    ] = 30.0,
    volume_l: Annotated[
        Volume | None, Help("Water in the tank, without soil and stones. For the litres alone.")
    ] = 120.0,
    ph: Annotated[PH | None, Label("pH of the tank"), Possible(4, 11), HARDNESS] = None,
    kh_dh: Annotated[CarbonateHardness | None, LIMITS_A_CHANGE, HARDNESS] = None,
    tap_kh_dh: Annotated[TapKh, HARDNESS] = None,
    gh_dh: Annotated[GeneralHardness | None, LIMITS_A_CHANGE, HARDNESS] = None,
    tap_gh_dh: Annotated[TapGh, HARDNESS] = None,
) -> WaterChange:
    """Find the water change, or the fewest equal changes, that bring a reading down to a target.

    It works for what is dissolved and measured in mg/L. Each change replaces its share of the tank with
    new water, and the tank mixes. Where you name no target, the level offered for that substance is
    taken, with its reason. For ammonia none is: a change can make ammonia more toxic.

    Nothing is taken to be added or used up between the changes. Nitrate is made meanwhile, so test
    before each. More than ten changes are no plan, and then none is given.

    New water of far other hardness is a shock of its own, of which the figures know nothing: where both
    are given, what moves KH or GH by more than 2 °dH at once is said before the plan, with a smaller
    beginning (common practice, no source). In acid water, or with hardly any KH, that is a tenth.
    """
    water = WaterForChange(
        ph=ph, kh_dh=kh_dh, tap_kh_dh=tap_kh_dh, gh_dh=gh_dh, tap_gh_dh=tap_gh_dh
    )
    target = TARGETS[what].target if target_mg_l is None else target_mg_l
    first_notes = change_words.first(what, now_mg_l, target_mg_l, tap_mg_l, water)
    if target is None:
        return WaterChange(notes=(*first_notes, *change_words.no_target(what, now_mg_l)))
    tap = tap_mg_l or 0.0
    if now_mg_l <= target:
        return WaterChange(
            0.0, 0, 0.0, 0.0, 0.0, target, now_mg_l, 0.0,
            (*first_notes, *change_words.nothing_to_do(what, now_mg_l, tap)),
        )  # fmt: skip
    if tap >= target and (tap > target or max_change_percent < 100):
        return WaterChange(notes=(*first_notes, *change_words.out_of_reach(tap, target)))
    left = (target - tap) / (now_mg_l - tap)  # of the distance to the tap's reading
    changes = fewest(left, max_change_percent / 100)
    if changes > MOST_CHANGES:
        reach = tap + (now_mg_l - tap) * (1 - max_change_percent / 100) ** MOST_CHANGES
        why = change_words.no_plan(
            what, now_mg_l, changes, MOST_CHANGES, max_change_percent, reach, water
        )
        return WaterChange(100 * (1 - left), target_used_mg_l=target, notes=(*first_notes, *why))
    wait = 0.0 if changes == 1 else days_between(what, now_mg_l)
    each = 1 - left ** (1 / changes)
    plan = change_words.Planned(what, changes, 100 * each, wait, now_mg_l, target)
    return WaterChange(
        single_change_percent=100 * (1 - left),
        changes=changes,
        each_change_percent=100 * each,
        days_between=wait,
        plan_days=wait * (changes - 1),
        target_used_mg_l=target,
        after_mg_l=target,
        litres_total=None if volume_l is None else changes * each * volume_l,
        notes=(*first_notes, *change_words.plan_notes(plan, tap_mg_l, water)),
    )


def days_between(what: Substance, now_mg_l: float) -> float:
    """The days to wait between two changes: less where animals are in danger meanwhile."""
    deadly = level_of(what, now_mg_l) == "deadly"
    if what == "nitrite" and level_of(what, now_mg_l) != "in-range":
        return NITRITE_DAYS_BETWEEN
    urgent = deadly or what in ("nitrite", "ammonia", "copper")
    return URGENT_DAYS_BETWEEN if urgent else DAYS_BETWEEN


def fewest(left: float, largest: float) -> int:
    """The fewest equal changes, none above ``largest``, that leave the share ``left``."""
    if largest >= 1 or left >= 1 - largest:
        return 1
    return math.ceil(math.log(left) / math.log(1 - largest) - ROUNDING)
