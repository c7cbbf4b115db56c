"""Figures in a note have no more digits than the thing itself is shown with."""

import random
import re

import pytest

from calculators.core.listing import load_all
from calculators.core.result import BadInput
from calculators.core.run import run

NAMES = (
    "water-change", "dosing", "tank", "hardness", "oxygen", "units", "conditioner", "chloride",
    "medicine-volume", "acclimate", "kh-budget", "top-up", "remineralise",
)  # fmt: skip
AS_ENTERED = ("dose_ml",)  # a volume that the keeper chose is repeated as it was entered
BROKEN = re.compile(r"\d+\.\d+")
MOST_DIGITS = 3  # significant, of a figure with a decimal point


def drawn(spec, dice):
    """Inputs with many digits, near the worked example."""
    found = {}
    for field in spec.inputs:
        if field.key in AS_ENTERED:
            continue
        if field.kind == "number" and dice.random() < 0.7:
            middle = 10.0 if field.default is None else field.default or 1.0
            found[field.key] = min(max(middle * dice.uniform(0.3, 3), field.low), field.high)
        elif field.kind == "choice" and dice.random() < 0.5:
            found[field.key] = dice.choice(field.choices)
    return found


@pytest.mark.parametrize("name", NAMES)
def test_no_note_has_a_figure_too_many(name):
    spec, dice, seen = load_all()[name], random.Random(name), 0
    for _ in range(300):
        try:
            notes = run(name, drawn(spec, dice))["notes"]
        except BadInput:
            continue
        for note in notes:
            for figure in BROKEN.findall(note["text"]):
                seen += 1
                digits = figure.replace(".", "").lstrip("0")
                assert len(digits) <= MOST_DIGITS, note["text"]
    assert seen or name == "units"
