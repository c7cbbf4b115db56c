"""The first step of a diagnosis, word for word where an early or a repeated word would do harm."""

import pytest

from calculators.core.run import run
from calculators.diagnose.first_step import AIR, SOON
from calculators.diagnose.problem_table import CAUSES, FINDINGS, question_of
from calculators.diagnose.tests_named import without_given
from calculators.science.water.careful_change import WaterForChange, with_care


def outputs(findings=(), **readings):
    return run("diagnose", {"findings": list(findings), "readings": readings})["outputs"]


def first(findings=(), **readings):
    return outputs(findings, **readings)["first_action"]


CHANGE = "Change a third of the water now."


@pytest.mark.parametrize("water", [{}, {"ph": 8.0}, {"ph": 7.0}, {"ph": 4.8}])
def test_the_condition_of_a_change_stands_before_the_change(water):
    words = with_care(CHANGE, WaterForChange(**water))
    before = words.lower().partition("change a t")[0]
    assert any(part in before for part in ("no ammonia", "no harder", "reads zero"))


def test_where_none_was_tested_the_danger_pages_conditions_hold():
    words = first(["gills-red"])
    assert (
        "If a test shows no ammonia, or the pH is 7.5 or above and the new water no harder" in words
    )
    assert words.index("If a test shows") < words.index("change a third")
    assert "only if the tank has had this same water every week or two" in words


def test_against_ammonia_nothing_is_said_twice():
    words = first(ammonia_mg_n_l=0.5, ph=9.6, temperature_c=26)
    assert words.lower().count("stop feeding") == 1


def test_nitrite_in_water_with_no_buffer_is_changed_slowly():
    words = first(nitrite_mg_n_l=5, ammonia_mg_n_l=0, ph=6, kh_dh=0)
    assert "Change a third of the water now" in words
    assert words.endswith(
        "Pour it in slowly, over an hour or more: this water has little to hold its pH."
    )


def test_a_large_nitrate_is_brought_down_slowly():
    assert "refilled slowly over an hour" in first(nitrate_mg_l=300, ammonia_mg_n_l=0, ph=7.6)


def test_chlorine_asks_for_a_conditioner_that_knows_chloramine():
    words = first(["water-change-just-before", "no-dechlorinator", "fish-gasping"])
    assert "one that names chloramine and binds ammonia" in words


@pytest.mark.parametrize(
    "readings",
    [
        {"ph": 4, "kh_dh": 0},
        {"temperature_c": 34},
        {"nitrite_mg_n_l": 5},
        {"ammonia_mg_n_l": 8, "ph": 9},
    ],
)
def test_beside_a_reading_that_kills_the_next_look_is_not_about_leaves(readings):
    check = outputs(**readings)["next_check"]
    urgent = {
        question_of(key)
        for cause in CAUSES.values()
        if cause.urgency == "now"
        for key in cause.rows
    }
    assert check is not None
    assert question_of(check["finding"]) in urgent
    assert FINDINGS[check["finding"]].where not in ("old-leaves", "new-leaves", "stem", "coating")


BROWNING = [
    # what was seen, what was read, how old; and the cause that must stand first
    (["fast-stems-suffer-first", "old-leaves-brown-drop"], {"nitrate_mg_l": 0}, {}, "fast-stems-brown-lean"),
    (["new-leaves-pale-green-veins"], {"ph": 8, "kh_dh": 12}, {}, "iron-chlorosis"),
    (["old-leaves-pinholes"], {"nitrate_mg_l": 20}, {}, "potassium-starvation"),
    (["old-leaves-brown-drop"], {"nitrate_mg_l": 0}, {"days_since_planting": 10}, "emersed-melt"),
    (["gaps-between-leaves-long", "lower-leaves-drop-green"], {}, {"light_hours": 5}, "low-light-legginess"),
    (["only-under-cover", "stem-bare-below"], {}, {"cover_percent": 90}, "floater-shading"),
    (["holes-bitten", "snails-many"], {}, {}, "snail-grazing"),
    (["few-old-leaves-only", "new-leaves-healthy"], {}, {}, "old-leaf-senescence"),
    (["coat-brown-dust"], {}, {"tank_age_days": 30}, "diatoms"),
    (["old-leaves-yellow-between-veins"], {"gh_dh": 2}, {}, "magnesium-starvation"),
]  # fmt: skip


@pytest.mark.parametrize(("seen", "read", "more", "cause"), BROWNING)
def test_causes_of_browning_are_told_apart(seen, read, more, cause):
    found = run("diagnose", {"findings": seen, "readings": read, **more})["outputs"]
    assert found["ranked"][0]["problem"] == cause
    assert not found["urgent"]


@pytest.mark.parametrize(
    "seen", [["old-leaves-brown-drop"], ["animal-missing"], ["fish-listless"], []]
)
def test_one_sign_is_not_enough_to_tell(seen):
    answer = run("diagnose", {"findings": seen})
    assert not answer["outputs"]["enough"]
    assert any(note["text"].startswith("Not enough to tell") for note in answer["notes"])
    assert answer["outputs"]["first_action"].startswith("Change nothing yet.")


def test_a_problems_own_step_knows_which_test_is_done():
    words = first(nitrite_mg_n_l=0.3, ammonia_mg_n_l=0, ph=8)
    assert words.endswith("Your reading of ammonia shows none: that test is done.")
    assert "that test is done" not in first(nitrite_mg_n_l=0.3, ph=8)


def test_in_acid_water_ammonia_is_tested_before_a_problems_large_change():
    words = first(["copper-test-shows"], ph=6)
    assert words.startswith("At this pH test ammonia before any large change of water.")
    assert not first(["copper-test-shows"], ph=8).startswith("At this pH")


def test_a_test_is_asked_for_once():
    assert first(kh_dh=0).count("mmonia") == 1


def test_a_spray_near_the_tank_leads_to_the_poisons_first_step_and_to_the_animals():
    found = outputs(["spray-near-tank"])
    assert found["urgent"]
    assert found["first_action_for"] == "chemical-injury"
    assert found["first_action"].index("open the window") < found["first_action"].index("add air")
    assert FINDINGS[found["next_check"]["finding"]].where == "animals"


@pytest.mark.parametrize("sign", ["spray-near-tank", "copper-source"])
def test_where_animals_may_be_in_danger_the_next_look_is_at_them_until_one_was_taken(sign):
    assert FINDINGS[outputs([sign])["next_check"]["finding"]].where == "animals"
    looked = outputs([sign, "animals-well"])["next_check"]
    assert looked is None or looked["finding"] != "animals-well"


FERTILISED = ["fertiliser-just-dosed", "shrimp-in-distress", "soil-through-cap"]


def test_no_reading_that_was_given_is_asked_for_again():
    asked = first(FERTILISED, nitrate_mg_l=90)
    assert "look at the animals and test nitrite;" in asked
    none = first(FERTILISED, ammonia_mg_n_l=0, ph=7.8, nitrite_mg_n_l=0, nitrate_mg_l=100)
    assert "Then look at the animals; change half again" in none
    acid = first(FERTILISED, ph=6.2, ammonia_mg_n_l=1, nitrite_mg_n_l=0)
    assert "test nitrate." in acid
    assert "test ammonia, nitrite and nitrate" not in acid


@pytest.mark.parametrize(
    ("words", "given", "left"),
    [
        ("Test ammonia, nitrite and pH.", ["nitrite_mg_n_l"], "Test ammonia and pH."),
        ("Look, and feed less and read ammonia and nitrite.", ["ammonia_mg_n_l", "nitrite_mg_n_l"],
         "Look, and feed less."),
        ("test ammonia, nitrite and the tap.", ["ammonia_mg_n_l", "nitrite_mg_n_l"], "test the tap."),
        ("Test ammonia and nitrite: if both read zero, wait.", ["ammonia_mg_n_l", "nitrite_mg_n_l"],
         "Test ammonia and nitrite: if both read zero, wait."),
        ("Test nitrite and nitrate.", [], "Test nitrite and nitrate."),
    ],
)  # fmt: skip
def test_a_list_of_tests_loses_what_was_given(words, given, left):
    assert without_given(words, given) == left


SOFT = {"ph": 6.0, "kh_dh": 0.0, "ammonia_mg_n_l": 0.0}  # as many keep soft-water shrimp on purpose


@pytest.mark.parametrize(
    ("signs", "problem", "says"),
    [
        (["medicine-or-remedy-used", "shrimp-in-distress"], "chemical-injury", "stop the product"),
        (["gills-brown"], "nitrite-emergency", "Stop feeding"),
        (["hot-weather", "fish-gasping"], "dawn-low-oxygen", "Make the surface ripple"),
        (["only-invertebrates-die"], "copper-poisoning", "Take the source out"),
        (["gasp-before-dawn-only"], "dawn-low-oxygen", "Make the surface ripple"),
    ],
)
def test_in_soft_acid_water_the_first_step_is_for_what_the_animals_show(signs, problem, says):
    found = outputs(signs, **SOFT)
    assert found["first_action_for"] == problem
    assert says in found["first_action"]
    assert "harder tap water" not in found["first_action"]
    for large in ("Change half", "Change a third", "Change a quarter"):
        assert large not in found["first_action"]


@pytest.mark.parametrize("ph", [6.0, 8.2])
@pytest.mark.parametrize(
    ("signs", "stop"),
    [
        (["medicine-or-remedy-used", "shrimp-in-distress"], "stop the product"),
        (["fertiliser-just-dosed", "fish-gasping"], "give no further dose"),
        (["copper-source", "only-invertebrates-die"], "Take the source out"),
    ],
)
def test_what_was_put_in_is_stopped_though_ammonia_shows_too(signs, stop, ph):
    assert stop in first(signs, ph=ph, kh_dh=0.0 if ph < 7 else 8.0, ammonia_mg_n_l=1.0)


@pytest.mark.parametrize("water", [{}, SOFT, SOFT | {"ammonia_mg_n_l": 1.0}, {"ph": 8.2}])
@pytest.mark.parametrize(
    "sign", sorted(key for key, one in FINDINGS.items() if one.danger and one.where == "animals")
)
def test_where_animals_suffer_air_is_among_the_first_words(sign, water):
    assert AIR.search(first([sign], **water)[:SOON])
