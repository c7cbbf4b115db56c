"""The runner: refusals, notes, and nothing infinite. Any input gives a result or a clean refusal."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as some

from calculators.core.paint.answered_rows import answered_rows
from calculators.core.result import BadInput
from calculators.core.run import find, run
from tests.effort import examples


def notes(name, **given):
    return [note["text"] for note in run(name, given)["notes"]]


def test_outside_the_sources_range_it_computes_and_says_so():
    said = notes("free-ammonia", temperature_c=35)
    assert any(
        "outside the range that the source of the formula covers (0 to 30 °C)" in text
        for text in said
    )
    assert not any("outside the range" in text for text in notes("free-ammonia", temperature_c=30))


@pytest.mark.parametrize(
    ("given", "rating"),
    [
        ({"ammonia_mg_l": 0}, "low"),
        ({"ammonia_mg_l": 0.25, "ph": 7.0}, "low"),
        ({"ammonia_mg_l": 1, "ph": 7.5}, "watch"),
        ({"ammonia_mg_l": 2, "ph": 8.2}, "act"),
        ({"ammonia_mg_l": 5, "ph": 8.5}, "act"),
    ],
)
def test_rates_a_reading(given, rating):
    assert run("free-ammonia", given)["outputs"]["rating"] == rating


def test_a_deadly_reading_speaks_of_animals_before_anything_else():
    answer = run("free-ammonia", {"ammonia_mg_l": 8, "ph": 8.5})
    assert answer["notes"][0]["level"] == "danger"
    assert "animals can die within hours" in answer["notes"][0]["text"]
    assert any("Do not raise the pH" in note["text"] for note in answer["notes"])


def test_a_target_below_the_tap_is_null_with_the_reason():
    answer = run("water-change", {"now_mg_l": 40, "tap_mg_l": 20, "target_mg_l": 10})
    assert set(answer["outputs"].values()) == {None}
    assert "can never reach the target" in answer["notes"][0]["text"]


def test_the_taps_own_reading_is_reached_only_by_changing_all():
    part = run("water-change", {"now_mg_l": 40, "tap_mg_l": 10, "target_mg_l": 10})
    assert part["outputs"]["changes"] is None
    whole = run(
        "water-change",
        {"now_mg_l": 40, "tap_mg_l": 10, "target_mg_l": 10, "max_change_percent": 100},
    )
    assert whole["outputs"]["single_change_percent"] == 100


def test_a_reading_below_the_target_needs_no_change_even_if_the_tap_would_raise_it():
    answer = run("water-change", {"now_mg_l": 5, "tap_mg_l": 20, "target_mg_l": 10})
    assert answer["outputs"]["changes"] == 0
    assert any("would raise it" in note["text"] for note in answer["notes"])


@given(
    now=some.floats(1, 500), tap=some.floats(0, 100), target=some.floats(0.5, 400),
    largest=some.floats(1, 100), volume=some.floats(1, 1000),
)  # fmt: skip
def test_the_changes_it_advises_do_reach_the_target(now, tap, target, largest, volume):
    answer = run(
        "water-change",
        {
            "now_mg_l": now,
            "tap_mg_l": tap,
            "target_mg_l": target,
            "max_change_percent": largest,
            "volume_l": volume,
        },
    )
    found = answer["outputs"]
    if not found["changes"]:
        return
    reading = now
    for _ in range(found["changes"]):
        reading += (tap - reading) * found["each_change_percent"] / 100
    assert reading == pytest.approx(found["after_mg_l"], rel=1e-6, abs=1e-6)
    assert found["each_change_percent"] <= largest * (1 + 1e-6)
    if found["changes"] > 1:  # one change fewer would not have done
        fewer = tap + (now - tap) * (1 - largest / 100) ** (found["changes"] - 1)
        assert fewer > target


def test_a_ring_bounds_the_floaters_and_light_is_the_mean_over_the_surface():
    found = run(
        "floaters",
        {
            "length_cm": 100,
            "width_cm": 50,
            "ring_diameter_cm": 40,
            "cover_percent": 50,
            "transmission_percent": 0,
        },
    )["outputs"]
    assert found["allowed_cm2"] == pytest.approx(1256.637)  # pi/4 x 40²
    assert found["covered_cm2"] == pytest.approx(628.319)
    assert found["light_left_percent"] == pytest.approx(100 - 628.319 / 5000 * 100, rel=1e-5)


def test_salvinia_thinned_weekly_from_a_third_stays_within_two_thirds():
    """Common practice, no source: a floater that doubles in a week is thinned weekly by half."""
    found = run(
        "floaters",
        {"doubling_days": 7, "thin_every_days": 7, "low_percent": 30, "high_percent": 60},
    )
    assert found["outputs"]["remove_percent"] == pytest.approx(50)
    assert not any("passes the upper limit" in note["text"] for note in found["notes"])


def test_limits_that_contradict_each_other_are_refused_by_field():
    with pytest.raises(BadInput) as refused:
        run("floaters", {"low_percent": 70, "high_percent": 60, "ring_diameter_cm": 60})
    said = dict(refused.value.problems)
    assert "0.1 to 60 %" in said["low_percent"]
    assert "0 to 35 cm" in said["ring_diameter_cm"]


@pytest.mark.parametrize(
    ("given", "key"),
    [
        ({"from": "nitrate", "to": "inch"}, "to"),
        ({"value": -1, "from": "cm", "to": "inch"}, "value"),
        ({"value": -300, "from": "celsius", "to": "fahrenheit"}, "value"),
    ],
)
def test_units_refuses_what_cannot_be(given, key):
    with pytest.raises(BadInput) as refused:
        run("units", given)
    assert refused.value.problems[0][0] == key


def test_every_unit_there_and_back_is_itself():
    spec = find("units")
    choices = spec.inputs[1].choices
    for first in choices:
        for second in choices:
            try:
                there = run("units", {"value": 12.5, "from": first, "to": second})["outputs"][
                    "result"
                ]
            except BadInput:
                continue
            back = run("units", {"value": there, "from": second, "to": first})["outputs"]["result"]
            assert back == pytest.approx(12.5)


def any_value(field):
    """Something a person may send for a field: mostly possible, sometimes not."""
    if field.kind == "choice":
        return some.sampled_from([*field.choices, "nonsense"])
    odd = some.one_of(
        some.none(),
        some.text(max_size=3),
        some.floats(),
        some.booleans(),
        some.lists(some.integers()),
    )
    usual = some.floats(field.low, field.high) | some.sampled_from([field.low, field.high])
    return some.one_of(usual, usual, usual, usual, usual, usual, odd)


@pytest.mark.parametrize("name", ["free-ammonia", "water-change", "trimmings", "floaters", "units"])
@given(data=some.data())
@examples(300)
def test_any_input_gives_a_finite_answer_or_a_clean_refusal(name, data):
    spec = find(name)
    sent = {
        field.key: data.draw(any_value(field), field.key)
        for field in spec.inputs
        if data.draw(some.booleans())
    }
    try:
        answer = run(name, sent)
    except BadInput as refused:
        assert refused.problems
        assert all(key and "allowed" in message for key, message in refused.problems)
        return
    json.dumps(answer, allow_nan=False)
    assert all(row["value"] for row in answered_rows(spec, answer, "us"))
