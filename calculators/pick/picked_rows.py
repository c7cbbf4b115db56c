"""From judged plants and a set to the rows of the answer."""

import math
from collections.abc import Sequence

from calculators.core.numbers import show_number
from calculators.pick.judge import Judged, against, because
from calculators.pick.outputs import LeftOut, RankedPlant, Together
from calculators.pick.plant_table import Book, PlantEntry
from calculators.pick.together import STEPS, PlantSet
from calculators.pick.uptake import doubling
from calculators.pick.wishes import Wishes
from calculators.science.growth.filling import stems_for
from calculators.science.rounding import RESULT_DIGITS

BED_HABITS = ("stem", "rosette", "carpet")
NARROWEST_CM = 1.0  # spacing of the finest stems; they are planted in bunches


def ranked_row(judged: Judged, wishes: Wishes, book: Book) -> RankedPlant:
    """A plant that fits."""
    return RankedPlant(
        plant=judged.key,
        score_percent=judged.score,
        because=because(judged, wishes, book),
        name=judged.plant.name,
        common=judged.plant.common,
        minutes_week=rounded(judged.minutes_week),
        spacing_cm=rounded(spacing_cm(judged.plant)),
        doubling_days=rounded(doubling_days(judged.plant, wishes)),
    )


def doubling_days(plant: PlantEntry, wishes: Wishes) -> float | None:
    """The doubling time in the light that the plant gets; None if nobody knows it."""
    light = wishes.surface_mol if plant.habit == "floater" else wishes.dli_mol
    if plant.doubling_days is None:
        return None
    return doubling(plant.doubling_days, plant.dli_mol, light)


def banned_first(judged: Judged) -> tuple[bool, tuple[float, int, float, float, str]]:
    """The key that sorts what the law bars before the rest, and either by how nearly it fits."""
    return not judged.banned, judged.order


def left_out(judged: Sequence[Judged], book: Book) -> list[LeftOut]:
    """What was left out: the law first, then the nearest to fitting."""
    gone = sorted(
        (candidate for candidate in judged if candidate.out),
        key=banned_first,
    )
    return [
        LeftOut(candidate.key, against(candidate, book), candidate.plant.name) for candidate in gone
    ]


def together_rows(best: PlantSet, surface_cm2: float) -> list[Together]:
    """The set as rows."""
    rows = []
    for member, step, taken in zip(best.members, best.steps, best.n_mg_day, strict=True):
        plant, area = member.judged.plant, surface_cm2 * step / STEPS
        wet, spread = area * member.uptake.wet_g_cm2, member.uptake.spread
        floats = member.uptake.floats
        stems = stems_in(plant, area)
        rows.append(
            Together(
                plant=member.judged.key,
                amount=round(area if floats else wet, RESULT_DIGITS),
                unit="cm²" if floats else "g",
                n_mg_day=round(taken, RESULT_DIGITS),
                name=plant.name,
                how_much=how_much(floats, area, wet, step, stems),
                takes=f"{shown(taken)} ({shown(taken / spread)}–{shown(taken * spread)})",
                low_n_mg_day=round(taken / spread, RESULT_DIGITS),
                high_n_mg_day=round(taken * spread, RESULT_DIGITS),
                area_cm2=round(area, RESULT_DIGITS),
                stems=stems,
                minutes_week=rounded(member.judged.minutes_week),
                wet_g=round(wet, RESULT_DIGITS),
                doubling_days=round(member.uptake.doubling_days, RESULT_DIGITS),
                floating=floats,
            )
        )
    return rows


def how_much(floats: bool, area: float, wet_g: float, step: int, stems: int | None) -> str:
    """The amount in words.

    The ``area`` is in cm², the mass in g wet, a step a tenth of the floor or the surface.
    """
    share = f"{100 * step // STEPS} %"
    if floats:
        return f"{show_number(area, 2)} cm², {share} of the surface"
    count = f", about {stems} stems when full" if stems else ""
    return f"{show_number(wet_g, 2)} g wet on {share} of the floor{count}"


def shown(n_mg_day: float) -> str:
    """Nitrogen as far as the guess bears it."""
    return show_number(n_mg_day, 2)


def stems_in(plant: PlantEntry, area_cm2: float) -> int | None:
    """How many stems a full bed of the area holds, each in a square of its spread; None for no stem."""
    spacing = spacing_cm(plant) if plant.habit == "stem" else None
    return None if spacing is None else stems_for(area_cm2, spacing)


def spacing_cm(plant: PlantEntry) -> float | None:
    """The spacing of a full bed: a plant's spread; None for what makes no bed, or is not known."""
    if plant.habit not in BED_HABITS or plant.spread_cm is None:
        return None
    return max(NARROWEST_CM, plant.spread_cm.middle)


def span_of(best: PlantSet) -> tuple[float, float]:
    """The least and most that a set may take, mg a day: the guesses of its plants are independent."""
    pairs = [
        (taken, math.log(member.uptake.spread))
        for member, taken in zip(best.members, best.n_mg_day, strict=True)
    ]
    spread = math.exp(math.hypot(*(taken * width for taken, width in pairs)) / best.total)
    return best.total / spread, best.total * spread


def minutes_sum(chosen: Sequence[Judged]) -> float | None:
    """Minutes a week of all together; None if one is not known or there is none."""
    minutes = [candidate.minutes_week for candidate in chosen]
    given = [number for number in minutes if number is not None]
    return rounded(sum(given)) if given and len(given) == len(minutes) else None


def rounded(value: float | None) -> float | None:
    """A figure cut to the digits that mean something. The ``value`` keeps its unit."""
    return None if value is None else round(value, RESULT_DIGITS)
