"""The parts of the score that the tank decides: light, height, and the water."""

from typing import Any

from calculators.core import quantities as q
from calculators.pick import tolerance
from calculators.pick.part import CriterionScore, asks, figure, trusted, unknown
from calculators.pick.plant_table import PlantEntry, RecordRange
from calculators.pick.wishes import Wishes

LIGHT, TEMPERATURE, HEIGHT, PH, HARDNESS = 30, 15, 10, 10, 5  # weights; our judgement


def light(plant: PlantEntry, wishes: Wishes) -> CriterionScore | None:
    """The day's light: at the surface for what floats, on the soil for all others."""
    floats = plant.habit == "floater"
    mol = wishes.surface_mol if floats else wishes.dli_mol
    if mol is None:
        return None
    if plant.habit == "marginal":
        return unknown(
            LIGHT, "Light: its leaves stand in the air, and the tank's light says little."
        )
    if plant.dli_mol is None:
        return unknown(LIGHT, "Light: what it needs is not known.")
    span, fit = plant.dli_mol, tolerance.light_fit(mol, plant.dli_mol)

    def why() -> str:
        where = "the surface has" if floats else "the tank gives"
        about = " about" if floats and wishes.surface_worked_out else ""
        needs, has = asks(q.DailyLight, span), figure(q.DailyLight, mol)
        return f"Light: needs {needs}; {where}{about} {has}{light_remark(mol, span)}"

    return trusted(LIGHT, fit.share, why, fit.out, span.sure)


def light_remark(mol: float, span: RecordRange) -> str:
    """Whether that is short or more than it can use."""
    if mol > span.high:
        return ", more than it can use: algae take the rest."
    return ", which is short." if mol < span.low else "."


def height(plant: PlantEntry, wishes: Wishes) -> CriterionScore | None:
    """Whether it has room between soil and surface; what stands in the air is not asked."""
    if wishes.height_cm is None or plant.habit == "marginal":
        return None
    if plant.height_cm is None:
        return unknown(HEIGHT, "Height: not known.")
    span, water_cm = plant.height_cm, wishes.height_cm
    cut = plant.habit == "stem"
    fit = (tolerance.cut_height_fit if cut else tolerance.height_fit)(water_cm, span)

    def why() -> str:
        kind = "Depth it takes" if plant.habit == "floater" else "Height"
        has = f"you have {figure(q.Height, water_cm)} of water"
        return f"{kind}: {asks(q.Height, span)}; {has}{height_remark(plant.habit, fit, water_cm < span.high)}"

    return trusted(HEIGHT, fit.share, why, fit.out, span.sure)


def height_remark(habit: str, fit: tolerance.RangeFit, outgrows: bool) -> str:
    """Whether that is room enough, and what to do where it outgrows it."""
    if fit.out:
        return ": too tall."
    if not outgrows:
        return "."
    if habit == "stem":
        return (
            ": cut it when it nears the surface." if fit.share else ": short of room, cut it often."
        )
    return ": tight; full grown, it reaches the surface."


def temperature(plant: PlantEntry, wishes: Wishes) -> CriterionScore | None:
    """The water's temperature."""
    span, value = plant.temperature_c, wishes.temperature_c
    if span is None or value is None:
        return (
            None
            if value is None
            else unknown(TEMPERATURE, "Temperature: what it needs is not known.")
        )
    fit = tolerance.comfortable(value, span, tolerance.TEMPERATURE_C)

    def why() -> str:
        warm = value > span.middle
        end = "." if fit.share == 1 else f", near its {'warm' if warm else 'cold'} end."
        end = end if span.low <= value <= span.high else ", outside it."
        needs = asks(q.Temperature, span)
        return f"Temperature: {needs}; yours is {figure(q.Temperature, value)}{end}"

    return trusted(TEMPERATURE, fit.share, why, fit.out, span.sure)


def acidity(plant: PlantEntry, wishes: Wishes) -> CriterionScore | None:
    """The water's pH."""
    return water("pH", q.PH, PH, plant.ph, wishes.ph, tolerance.PH, tolerance.SOFT)


def hardness(plant: PlantEntry, wishes: Wishes) -> CriterionScore | None:
    """The water's general hardness."""
    span, value = plant.gh_dh, wishes.gh_dh
    return water(
        "Hardness", q.GeneralHardness, HARDNESS, span, value, tolerance.GH_DH, tolerance.SOFT
    )


def water(
    name: str, entry: Any, weight: int, span: RecordRange | None, value: float | None,
    slack: tolerance.Slack, soft: float,
) -> CriterionScore | None:  # fmt: skip
    """The score of one reading of the water against the range in the record.

    The ``value`` and the range are in the unit of ``entry``; beyond ``soft`` times the slack, a factor,
    the plant is out.
    """
    if value is None:
        return None
    if span is None:
        return unknown(weight, f"{name}: what it needs is not known.")
    fit = tolerance.within(value, span, slack, soft=soft)

    def why() -> str:
        end = "." if fit.share == 1 else ", outside it."
        return f"{name}: {asks(entry, span)}; yours is {figure(entry, value)}{end}"

    return trusted(weight, fit.share, why, fit.out, span.sure)
