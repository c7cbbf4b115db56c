"""What was not asked is gathered in one row; what was asked keeps its row, figure or not."""

import json

import pytest

from calculators.bridge import answer
from calculators.core.listing import load_all
from calculators.core.paint.answered_rows import NOT_ASKED, answered_rows
from calculators.core.run import run


def shown(name, **given):
    found = run(name, given)
    rows = answered_rows(load_all()[name], found)
    return {row["key"]: row["value"] for row in rows}, found["outputs"]


def test_every_marked_output_names_inputs_and_outputs_that_are_there():
    marked = 0
    for spec in load_all().values():
        inputs, outputs = ({one.key for one in part} for part in (spec.inputs, spec.outputs))
        for field in spec.outputs:
            if field.answers_to:
                marked += 1
                assert set(field.answers_to.keys) <= inputs, field.key
            if field.only_with:
                assert field.only_with.key in outputs - {field.key}, field.key
    assert marked > 10


def test_questions_that_were_not_put_stand_in_one_last_row_and_stay_null_in_json():
    rows, outputs = shown("nitrogen-forecast")
    assert list(rows)[-1] == ""
    questions = (
        "Carbonate hardness (KH) now",
        "Show how unsure it is",
        "Nitrate you want at the end",
    )
    assert rows[""] == "; ".join(questions)
    for key in ("final_nitrate_low_mg_l", "feed_for_target_g_week", "extra_stems_g"):
        assert key not in rows
        assert outputs[key] is None
    assert NOT_ASKED not in rows.values()


def test_a_question_that_was_put_keeps_its_row_where_there_is_no_figure():
    """No plants bring a tank with such tap water under 1 mg/L within a day."""
    given = {"target_nitrate_mg_l": 1.0, "nitrate_mg_l": 500.0, "tap_nitrate_mg_l": 500.0}
    rows, outputs = shown("nitrogen-forecast", **given, kh_dh=4.0, days=1.0, spread="band")
    assert outputs["feed_for_target_g_week"] is None
    assert rows["feed_for_target_g_week"] == "none would do"
    assert "final_nitrate_low_mg_l" in rows
    assert "" not in rows


def test_the_end_of_a_shortage_that_never_was_is_left_out_without_a_word():
    rows, outputs = shown("nitrogen-forecast", feed_g_week=40.0)
    assert outputs["first_shortage_day"] is None
    assert rows["first_shortage_day"] == "not in these days"
    assert not {"recovery_day", "healthy_growth_day", "healthy_after_feeding_days"} & rows.keys()


@pytest.mark.parametrize(
    ("name", "given", "said"),
    [
        ("oxygen", {"oxygen_mg_l": None}, "Oxygen reading"),
        ("trend", {"volume_l": None, "limit_mg_l": None}, "Limit you do not want to pass; Water volume"),
        ("nitrogen-balance", {}, "Carbonate hardness (KH); Measured change of nitrate"),
    ],
)  # fmt: skip
def test_other_calculators_say_what_was_left_empty(name, given, said):
    assert shown(name, **given)[0][""] == said
    assert "" not in shown("oxygen")[0]


def test_the_page_gets_the_same_rows():
    reply = json.loads(answer(json.dumps({"calculator": "oxygen", "given": {"oxygen_mg_l": ""}})))
    assert reply["painted"]["lines"][-1].startswith(f"{NOT_ASKED}: ")
    assert f'<th scope="row">{NOT_ASKED}</th>' in reply["painted"]["html"]
    assert reply["answer"]["outputs"]["saturation_percent"] is None
