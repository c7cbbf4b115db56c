"""pH and carbonate hardness that cannot be of one water, and readings asked for that were given."""

import pytest

from calculators.core.run import run
from calculators.science.water.changing_water import first_step_for_ammonia
from calculators.science.water.readings_fit import fit_together
from tests.test_harm import stands

NOT_FIT = "do not fit together"


def said(answer, *levels):
    """The notes of these levels as one text; all where none is named."""
    return " ".join(
        note["text"] for note in answer["notes"] if not levels or note["level"] in levels
    )


@pytest.mark.parametrize(("ph", "kh_dh"), [(5.5, 25), (6, 12), (5, 5), (4, 3), (4.5, 2)])
def test_carbonate_rules_out_an_acid_water_of_much_hardness(ph, kh_dh):
    assert not fit_together(ph, kh_dh, 25)


@pytest.mark.parametrize(
    ("ph", "kh_dh"),
    [(4, 0), (4, 0.5), (5, 1), (6, 3), (6.5, 6), (7, 20), (7.6, 9), (8.5, 25), (10, 0), (9.5, 1)],
)
def test_waters_that_tanks_have_fit_together(ph, kh_dh):
    assert fit_together(ph, kh_dh, 25)


IMPOSSIBLE = {"ph": 5.5, "kh_dh": 25, "temperature_c": 25}


def test_hardness_and_ammonia_change_say_the_same_of_an_impossible_water():
    gas = run("hardness", IMPOSSIBLE)
    change = run("ammonia-change", {**IMPOSSIBLE, "ammonia_mg_l": 2, "tap_ph": 7.5, "tap_kh_dh": 4})
    for answer in (gas, change):
        assert NOT_FIT in said(answer, "danger")
        assert "carbonate equilibrium" in said(answer, "danger")
        assert "if carbonate alone sets the pH" not in said(answer)
        assert "other acids set this pH" not in said(answer)
    outputs = change["outputs"]
    assert (outputs["way"], outputs["advised_percent"]) == ("read-again", 0)
    assert outputs["now_nh3_mg_n_l"] is None  # the calm one of the two readings is not built on
    assert outputs["aired_nh3_mg_n_l"] > 0.05
    assert "0.4 mg N/L of the ammonia is free in your tank, above the line" in said(
        change, "danger"
    )


def test_a_tap_whose_readings_do_not_fit_is_not_used():
    given = {"ammonia_mg_l": 2, "ph": 7.5, "kh_dh": 5, "tap_ph": 5, "tap_kh_dh": 15}
    answer = run("ammonia-change", given)
    assert answer["outputs"]["way"] == "read-again"
    assert "of the new water do not fit together" in said(answer, "danger")


def test_without_ammonia_too_they_are_said_not_to_fit():
    answer = run("ammonia-change", {**IMPOSSIBLE, "ammonia_mg_l": 0, "tap_ph": 7.5, "tap_kh_dh": 4})
    assert NOT_FIT in said(answer, "caution")


def test_the_first_step_against_ammonia_does_not_build_on_them():
    step = first_step_for_ammonia(2.0, 5.5, 25.0, 25.0)
    assert step.startswith("Do not change water on these readings.")
    assert NOT_FIT in step


def test_the_diagnosis_and_the_shelf_say_so():
    found = run("diagnose", {"readings": {"ph": 5.5, "kh_dh": 25}})
    assert NOT_FIT in said(found, "danger")
    assert NOT_FIT in said(stands({"ph": 5.5, "kh_dh": 20}))
    assert NOT_FIT not in said(run("diagnose", {"readings": {"ph": 7.5, "kh_dh": 8}}))


def first_action(**readings):
    return run("diagnose", {"readings": readings})["outputs"]["first_action"]


def test_no_reading_is_asked_for_that_was_given():
    assert "Test KH now. Test ammonia before you change any water." in first_action(ph=4)
    assert first_action(ph=4, kh_dh=0).count("est ammonia") == 1
    assert "Test " not in first_action(ph=4, kh_dh=0, ammonia_mg_n_l=0)
    notes = said(run("diagnose", {"readings": {"ph": 4.8, "kh_dh": 0, "ammonia_mg_n_l": 0}}))
    assert "Test ammonia" not in notes
    assert "Test pH" not in notes
    assert "test ammonia and nitrite" in first_action(temperature_c=25)
    assert "test nitrite" in first_action(ammonia_mg_n_l=0)
    assert "test " not in first_action(ammonia_mg_n_l=0, nitrite_mg_n_l=0)


def test_the_shelf_asks_only_for_what_was_not_read_with_it():
    assert "Test ammonia and KH now." in said(stands({"ph": 4.2}))
    assert "KH now" not in said(stands({"ph": 4.2, "kh_dh": 0}))
