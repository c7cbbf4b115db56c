"""Of several signs of danger none is passed over: each that points at one cause has its own words first."""

import random

import pytest

from calculators.core.run import run
from calculators.diagnose.beside_step import root_of, strongly_for, without_change
from calculators.diagnose.problem_table import CAUSES, FINDINGS
from tests.effort import how_many

SEEN = [key for key, one in FINDINGS.items() if one.input is None]
POINTING = {
    key: next(iter(strongly_for(key)))
    for key, one in FINDINGS.items()
    if one.danger and len(strongly_for(key)) == 1
}
MOST = 2  # causes beside the first one, whose words are given
SLOW_HARDNESS = ("kh-near-zero", "new-leaves-twisted", "growing-tip-dies")


def first_action(**given):
    outputs = run("diagnose", given)["outputs"]
    return outputs["first_action"], outputs["first_action_for"]


def is_said(cause, action, of):
    """Whether an action is of a cause or one of its root, or has what to do against it at once."""
    return bool(of and root_of(of) == root_of(cause)) or without_change(cause) in action


def test_the_signs_that_point_at_one_cause_are_those_that_a_keeper_would_name():
    assert {"copper-test-shows", "copper-source", "spray-near-tank", "gills-brown"} <= set(POINTING)
    assert "animals-dying" not in POINTING


@pytest.mark.parametrize("hardness", SLOW_HARDNESS)
@pytest.mark.parametrize("sign", POINTING)
def test_lost_hardness_swallows_no_sign_of_danger(sign, hardness):
    action, of = first_action(findings=[sign, hardness])
    assert is_said(POINTING[sign], action, of), action


def test_any_other_signs_leave_the_words_for_each_danger():
    draw = random.Random(7)
    tried = 0
    for _ in range(how_many(3_000)):
        findings = draw.sample(SEEN, draw.choice((2, 3, 4)))
        pointed = {POINTING[key] for key in findings if key in POINTING}
        if not pointed or len(pointed) > MOST:
            continue
        tried += 1
        action, of = first_action(findings=findings)
        for cause in pointed:
            assert is_said(cause, action, of), (findings, cause, of, action)
    assert tried


@pytest.mark.parametrize("sign", ["gasp-all-day", "animals-dying", "fish-dart-or-clamp"])
@pytest.mark.parametrize("leaf", ["new-leaves-twisted", "growing-tip-dies"])
def test_a_leaf_short_of_calcium_does_not_explain_why_animals_suffer(sign, leaf):
    action, of = first_action(findings=[sign, leaf])
    assert of is None
    assert "Animals first. Add air and stop feeding." in action
    assert "a tenth of the water" in action  # soft water takes no large change
    assert "ammonia, nitrite, pH and temperature" in action


def test_shrimp_that_cannot_moult_are_still_answered_with_calcium():
    action, of = first_action(findings=["moult-trouble", "new-leaves-twisted"])
    assert of == "calcium-shortage"
    assert "Then test nitrite and temperature." in action


HARMS = [
    ("threads-with-bladders", {"oxygen_mg_l": 3.1}, "Oxygen is low"),
    ("flat-worms-arrow-head", {"oxygen_mg_l": 4.9}, "Oxygen is low"),
    ("polyps-with-arms", {"nitrate_mg_l": 140}, "Nitrate is at a level that harms"),
    ("white-crust", {"ph": 9.3}, "The pH is so high that it troubles animals"),
    ("polyps-with-arms", {"temperature_c": 15}, "The water is cold for most warm-water kinds"),
]


@pytest.mark.parametrize(("sign", "readings", "said"), HARMS)
def test_a_reading_that_harms_goes_before_leaves_and_pests(sign, readings, said):
    action, of = first_action(findings=[sign], readings=readings)
    assert action.startswith(said), (action, of)
    without, _ = first_action(findings=[sign])
    assert not without.startswith(said)


def test_what_a_room_is_aired_for_comes_before_air_from_the_pump():
    action, _ = first_action(findings=["spray-near-tank", "coat-green-dust", "few-old-leaves-only"])
    assert action.index("open the window") < action.index("add air")
    assert action.count("Animals first") == 1


def test_every_cause_that_is_pointed_at_has_words_without_a_change_of_water():
    for sign, cause in POINTING.items():
        assert without_change(cause), (sign, cause)
        assert "hange" not in without_change(cause) or CAUSES[cause].change is None
