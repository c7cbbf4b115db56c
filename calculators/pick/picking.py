"""Picks plants: judge every plant, choose, and put a set together."""

from calculators.core.result import Note
from calculators.pick import words
from calculators.pick.choose import choose, fitting
from calculators.pick.judge import Judged, judge_all
from calculators.pick.law_notes import law_notes
from calculators.pick.outputs import Pick, Together
from calculators.pick.picked_rows import (
    left_out,
    minutes_sum,
    ranked_row,
    rounded,
    span_of,
    together_rows,
)
from calculators.pick.plant_table import book
from calculators.pick.together import PlantSet, best_set
from calculators.pick.wishes import Wishes
from calculators.science.animals.stock_words import law_notes as animal_law_notes
from calculators.science.nitrogen.forecast_tank import common_surface_cm2


def surface_of(volume_l: float | None, surface_cm2: float | None) -> float | None:
    """The water surface in cm²; where it is not given, that of a common tank of this volume."""
    if surface_cm2 is not None or volume_l is None:
        return surface_cm2
    return common_surface_cm2(volume_l)


def answer(wishes: Wishes, light_notes: list[Note]) -> Pick:
    """Judge, choose, and put a set together."""
    table = book()
    judged = judge_all(wishes, table)
    fit = fitting(judged)
    chosen = choose(fit, wishes)
    best, most = set_for(wishes, fit)
    low, high = span_of(best) if best else (None, None)
    notes = (
        *words.animal_notes(wishes),
        *animal_law_notes(wishes.animals, wishes.place),
        *words.in_reach_notes(chosen, best),
        *words.list_notes(fit, chosen, wishes, len(table.plants) - len(judged)),
        *law_notes(judged, chosen, fit, best, wishes, table),
        *light_notes,
        *words.set_notes(best, most, wishes),
        *words.closing(),
    )
    return Pick(
        best=", ".join(candidate.plant.name for candidate in chosen[:2]) or None,
        ranked=[ranked_row(candidate, wishes, table) for candidate in chosen],
        together=together_of(best, wishes),
        excluded=left_out(judged, table),
        fitting_count=len(fit),
        forbidden_count=sum(candidate.banned for candidate in judged),
        dli_used_mol=wishes.dli_mol,
        ranked_minutes_week=minutes_sum(chosen),
        together_n_mg_day=rounded(best.total) if best else None,
        together_low_mg_n_day=rounded(low),
        together_high_mg_n_day=rounded(high),
        together_minutes_week=minutes_sum([candidate.judged for candidate in best.members])
        if best
        else None,
        notes=tuple(sorted(notes, key=lambda note: note.level == "info")),  # cautions first
    )


def set_for(wishes: Wishes, fit: list[Judged]) -> tuple[PlantSet | None, float]:
    """The set for the demand, where there is one and room is known; and the most that any would take."""
    if not wishes.demand_mg_n_day or wishes.surface_cm2 is None:
        return None, 0.0
    return best_set(fit, wishes, wishes.surface_cm2)


def together_of(best: PlantSet | None, wishes: Wishes) -> list[Together] | None:
    """The rows of the set; none where nothing has to be taken, null where it cannot be."""
    if best is not None and wishes.surface_cm2 is not None:
        return together_rows(best, wishes.surface_cm2)
    return [] if wishes.demand_mg_n_day == 0 else None
