"""All that the dosing calculator says, in its order: what harms, the answer, cautions, how to."""

from collections.abc import Mapping
from typing import NamedTuple

from calculators.core.result import Note
from calculators.dosing.bottle import Bottle, bottle_notes, verdict
from calculators.dosing.cautions import (
    Plan,
    ammonia_notes,
    hardness_cautions,
    level_cautions,
    rise_cautions,
)
from calculators.dosing.dose_limits import KILLS
from calculators.dosing.salts import Salt
from calculators.dosing.settling import SettledLevel
from calculators.dosing.settling_notes import settling_notes
from calculators.dosing.target import target_notes


class SaltDose(NamedTuple):
    """A dose as worked out: levels and ``adds`` in mg/L, volumes in mL.

    ``nitrogen_form`` is a salt's key, or what the label says of its nitrogen.
    """

    plan: Plan
    target: float | None
    now: float | None
    salt: Salt | None
    nitrogen_form: str
    bottle: Bottle
    bottle_ml: float
    dose_ml: float
    adds: Mapping[str, float | None]
    settled: SettledLevel | None


def advice(dose: SaltDose) -> tuple[Note, ...]:
    """The notes of an answer; nobody is told to split a dose that must not be given."""
    plan, adds = dose.plan, dose.adds
    cautions = [
        *level_cautions(plan, adds),
        *hardness_cautions(plan, adds),
        *ammonia_notes(dose.nitrogen_form, plan, adds),
        *target_notes(plan, dose.target, dose.now),
    ]
    harmful = [note for note in cautions if note.level == "danger"]
    answer = [verdict(dose.bottle, dose.dose_ml, plan, dose.target, dose.nitrogen_form)]
    return (
        *harmful,
        *(answer if plan.rise or dose.target is None else []),
        *(note for note in cautions if note.level != "danger"),
        *([] if any(KILLS in note.text for note in harmful) else rise_cautions(adds)),
        *bottle_notes(dose.salt, dose.bottle, dose.bottle_ml, adds["iron"] or 0.0),
        *settling_notes(plan, dose.settled),
    )
