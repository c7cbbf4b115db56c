"""What a calculator predicts for the published experiments; run anew only where something of it changed."""

import json

from calculators.core.data import table_bytes
from scripts.records.experiments import (
    ComparedObservation,
    Experiment,
    compared,
    experiments,
    held_against,
)
from scripts.setup.kept import kept

TABLE = "floating-plants"  # the one that the forecast reads


def held_against_all(calculator: str) -> list[tuple[Experiment, list[ComparedObservation]]]:
    """Each experiment with what was seen beside what the calculator says; see ``held_against``."""
    return [(one, looks_at(calculator, one)) for one in experiments(calculator)]


def looks_at(calculator: str, experiment: Experiment) -> list[ComparedObservation]:
    """The looks of one experiment."""
    table = table_bytes(TABLE).decode()
    ingredients = f"{calculator}\0{experiment.model_dump_json()}\0{table}"
    predicted = kept("experiments", ingredients, lambda: predictions(calculator, experiment))
    return [
        compared(look, value)
        for look, value in zip(experiment.looks, json.loads(predicted), strict=True)
    ]


def predictions(calculator: str, experiment: Experiment) -> str:
    """The predicted value of each look as JSON, in the look's unit, null where it never comes to it."""
    return json.dumps([look.predicted for look in held_against(calculator, experiment)])
