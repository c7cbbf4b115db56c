"""The whole answer: judge every plant, choose, and put a set together."""

import math

from calculators.core.result import Note
from calculators.pick import words
from calculators.pick.answer import (
    left_out,
    minutes_sum,
    ranked_row,
    rounded,
    span_of,
    together_rows,
)
from calculators.pick.choose import choose, fitting
from calculators.pick.judge import Judged, judge_all
from calculators.pick.law_notes import law_notes
from calculators.pick.outputs import Pick, Together
from calculators.pick.plant_table import book
from calculators.pick.together import Set, best_set
from calculators.pick.wishes import Want
from calculators.science.animals.stock_words import law_notes as animal_law_notes
from calculators.science.nitrogen.constants import SURFACE_CM2_PER_L23


def surface_of(volume_l: float | None, surface_cm2: float | None) -> float | None:
    """The water surface in cm²; where it is not given, that of a common tank of this volume."""
    if surface_cm2 is not None or volume_l is None:
        return surface_cm2
    return SURFACE_CM2_PER_L23 * math.pow(volume_l, 2 / 3)


def answer(want: Want, light_notes: list[Note]) -> Pick:
    """Judge, choose, and put a set together."""
    known = book()
    judged = judge_all(want, known)
    fit = fitting(judged)
    chosen = choose(fit, want)
    found, most = set_for(want, fit)
    low, high = span_of(found) if found else (None, None)
    notes = (
        *words.animal_notes(want),
        *animal_law_notes(want.animals, want.place),
        *words.list_notes(fit, chosen, want, len(known.plants) - len(judged)),
        *law_notes(judged, chosen, fit, found, want, known),
        *light_notes,
        *words.set_notes(found, most, want),
        *words.closing(),
    )
    return Pick(
        best=", ".join(one.plant.name for one in chosen[:2]) or None,
        ranked=[ranked_row(one, want, known) for one in chosen],
        together=together_of(found, want),
        excluded=left_out(judged, known),
        fitting_count=len(fit),
        forbidden_count=sum(one.banned for one in judged),
        dli_used_mol=want.dli_mol,
        ranked_minutes_week=minutes_sum(chosen),
        together_n_mg_day=rounded(found.total) if found else None,
        together_low_mg_n_day=rounded(low),
        together_high_mg_n_day=rounded(high),
        together_minutes_week=minutes_sum([one.judged for one in found.members]) if found else None,
        notes=tuple(sorted(notes, key=lambda note: note.level == "info")),  # cautions first
    )


def set_for(want: Want, fit: list[Judged]) -> tuple[Set | None, float]:
    """The set for the demand, where there is one and room is known; and the most that any would take."""
    if not want.demand_mg_n_day or want.surface_cm2 is None:
        return None, 0.0
    return best_set(fit, want, want.surface_cm2)


def together_of(found: Set | None, want: Want) -> list[Together] | None:
    """The rows of the set; none where nothing has to be taken, null where it cannot be."""
    if found is not None and want.surface_cm2 is not None:
        return together_rows(found, want.surface_cm2)
    return [] if want.demand_mg_n_day == 0 else None
