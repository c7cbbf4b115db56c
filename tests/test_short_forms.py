"""A form asks for the few things that decide; the rest is folded, and what is asked never is."""

import pytest

from calculators.core.fields import InputField
from calculators.core.form_hints import FINER, Part
from calculators.core.listing import load_all
from scripts.pages.calculators.form import in_parts

MOST_ASKED = 6
MORE_ASKED = {
    "tank": 7,  # its own measures, the glass and the three layers in it
    "nitrogen-balance": 8,  # one figure for each way in and out
}
MOST_OPEN = 11
SPECS = load_all()


def is_folded(field: InputField) -> bool:
    return any(isinstance(hint, Part) and hint.closed for hint in field.hints)


def is_asked(field: InputField) -> bool:
    return not (field.assumed or field.nullable or field.may_be_empty)


@pytest.mark.parametrize("name", SPECS)
def test_a_form_asks_for_few_things_and_folds_none_of_them(name):
    asked = [field for field in SPECS[name].inputs if is_asked(field)]
    assert len(asked) <= MORE_ASKED.get(name, MOST_ASKED), [field.key for field in asked]
    assert [field.key for field in asked if is_folded(field)] == []


@pytest.mark.parametrize("name", SPECS)
def test_few_fields_stand_open(name):
    stands_open = [field.key for field in SPECS[name].inputs if not is_folded(field)]
    assert len(stands_open) <= MOST_OPEN, stands_open


def test_the_finer_points_come_last_of_all_that_is_folded():
    parts = [part for part, _ in in_parts(SPECS["nitrogen-forecast"].inputs)]
    assert parts[-1] == FINER
    folded = [bool(part and part.closed) for part in parts]
    assert folded == sorted(folded)
    assert sum(folded) > 1
