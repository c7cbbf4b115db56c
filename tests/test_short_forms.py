"""A form asks for the few things that decide; the rest is folded, and what is asked never is."""

import pytest

from calculators.core.declare import Spec
from calculators.core.fields import InputField
from calculators.core.form_hints import FINER, InRow, Part
from calculators.core.listing import load_all
from scripts.pages.calculators.form import in_parts
from scripts.pages.calculators.form_fields import hint
from scripts.pages.calculators.form_groups import assumed_line, in_rows

MOST_OPEN = 5
MOST_IN_A_ROW = 4
MORE_OPEN = {"nitrogen-forecast": 6}
SPECS = load_all()


def is_folded(field: InputField) -> bool:
    part = hint(field, Part)
    return bool(part and part.closed)


def is_asked(field: InputField) -> bool:
    return not (field.assumed or field.nullable or field.may_be_empty)


def stands_open(spec: Spec) -> list[list[str]]:
    """What a keeper sees as single things: each open field or list, or row of fields below one legend.

    What belongs to a photo stands under it, out of sight.
    """
    opened = [field for field in spec.inputs if not is_folded(field)]
    seen = [field for field in opened if field.octets or not field.private]
    return [[field.key for field in row] for row in in_rows(seen)]


@pytest.mark.parametrize("name", SPECS)
def test_what_is_asked_for_is_never_folded(name):
    asked = [field for field in SPECS[name].inputs if is_asked(field)]
    assert [field.key for field in asked if is_folded(field)] == []


@pytest.mark.parametrize("name", SPECS)
def test_few_things_stand_open(name):
    things = stands_open(SPECS[name])
    assert len(things) <= MORE_OPEN.get(name, MOST_OPEN), things


@pytest.mark.parametrize("name", SPECS)
def test_a_row_is_short_and_in_one_part(name):
    rows: dict[str, list[InputField]] = {}
    for field in SPECS[name].inputs:
        in_row = hint(field, InRow)
        if in_row:
            rows.setdefault(in_row.legend, []).append(field)
    for legend, fields in rows.items():
        assert 2 <= len(fields) <= MOST_IN_A_ROW, legend
        assert len({hint(field, Part) for field in fields}) == 1, legend


def test_what_turns_a_change_from_help_to_harm_is_never_folded():
    folded = {field.key for field in SPECS["ammonia-change"].inputs if is_folded(field)}
    assert folded == {"change_percent"}


def test_the_finer_points_come_last_of_all_that_is_folded():
    parts = [part for part, _ in in_parts(SPECS["nitrogen-forecast"].inputs)]
    assert parts[-1] == FINER
    folded = [bool(part and part.closed) for part in parts]
    assert folded == sorted(folded)
    assert sum(folded) > 1


def test_the_line_of_a_closed_part_says_what_is_assumed_in_the_units_shown():
    parts = dict(in_parts(SPECS["warmth"].inputs))
    metric, us = (assumed_line(parts[FINER], system) for system in ("metric", "us"))
    assert metric.startswith("Where empty: Glass, thickness 8 mm; ")
    assert "Fall to look at, in a power cut 4 " in metric
    assert us != metric


def test_the_line_names_a_few_and_counts_the_rest():
    parts = dict(in_parts(SPECS["dosing"].inputs))
    label = next(
        fields for part, fields in parts.items() if part and "bottle prints" in part.heading
    )
    assert assumed_line(label, "metric").count(";") == 3
    assert f"{len(label) - 3} more inside" in assumed_line(label, "metric")
