"""The diagnosis a question at a time: what Python gives the page, and what the build writes into it."""

import json
import re
import xml.etree.ElementTree as ElementTree
from html import unescape
from itertools import combinations

import pytest

from calculators.bridge import answer
from calculators.core.run import find, run
from calculators.diagnose.case_read import in_band
from calculators.diagnose.diagnosis_at_tank import MOST_TAPS, diagnosis_and_question
from calculators.diagnose.follow_up import when
from calculators.diagnose.problem_table import CAUSES, FINDINGS, QUESTIONS, question_of
from calculators.science.evidence.weighing import words_for
from scripts.drawings.places import HEIGHT, PLACES, WIDTH
from scripts.pages.problems import first_questions as page
from scripts.setup.paths import ROOT
from tests.effort import share_of
from tests.plain_yaml import read_yaml

TANKS = read_yaml(ROOT / "tests" / "diagnosis_tanks.yml")


def ask(place, asked=(), units="metric", given_in="metric", on=False, **given):
    text = {
        key: ",".join(value) if isinstance(value, list) else value for key, value in given.items()
    }
    request = {
        "calculator": "diagnose", "given": text, "units": units, "given_in": given_in,
        "questioning": {"place": place, "asked": list(asked), "on": on},
    }  # fmt: skip
    return json.loads(answer(json.dumps(request)))


def tap_through(tank):
    """Answer as the keeper of an invented tank would; stops where the page stops. The last reply."""
    first, signs, figures = tank["tap"], set(tank["signs"]), tank.get("figures", {})
    findings, absent, asked = [first], [], [first]
    while True:
        found = ask(tank["place"], asked, findings=findings, absent=absent)["questioning"]
        if found["done"]:
            return found
        chips = found["ask"]["chips"]
        key = found["ask"]["finding"]
        chip = next((one for one in chips if is_true(one, signs, figures)), None)
        if chip is None and question_of(key) == key:
            chip = next(one for one in chips if one["absent"])
        chip = chip or chips[-1]
        assert chip["words"], chips
        findings += chip["present"]
        absent += chip["absent"]
        asked.append((chip["present"] or [key])[0])


def is_true(chip, signs, figures):
    """Whether an answer is the tank's."""
    for key in chip["present"]:
        value = figures.get(question_of(key))
        if key in signs or (value is not None and in_band(key, value)):
            return True
    return False


@pytest.mark.parametrize("tank", share_of(TANKS, 3), ids=lambda tank: tank["expect"])
def test_six_taps_lead_from_a_place_to_the_cause(tank):
    found = tap_through(tank)
    assert found["taps"] <= MOST_TAPS
    assert found["causes"][0]["problem"] == tank["expect"], [one["name"] for one in found["causes"]]
    assert found["urgent"] == tank.get("urgent", False)


def test_six_taps_are_mostly_enough_to_tell():
    told = [tap_through(tank)["enough"] for tank in TANKS]
    assert sum(told) / len(told) >= 0.8


def test_the_tanks_are_of_many_places():
    assert len({tank["place"] for tank in TANKS}) >= 7
    assert len(TANKS) >= 12


def test_the_ranking_is_the_diagnosis_itself():
    given = {"findings": ["old-leaves-pinholes", "snails-many"]}
    outputs = run("diagnose", given)["outputs"]
    shown = ask("old-leaves", **given)["questioning"]
    told = {one["problem"]: one["probability_percent"] for one in outputs["ranked"]}
    assert shown["urgent"] == outputs["urgent"]
    assert shown["first_action"] == outputs["first_action"]
    listed = [one for one in shown["causes"] if one["problem"] in told]
    assert len(listed) >= 3
    for one in listed:
        assert one["share"] == round(told[one["problem"]])
        assert one["because"] == next(
            r["because"] for r in outputs["ranked"] if r["problem"] == one["problem"]
        )


def test_what_could_not_be_told_is_not_asked_again_and_changes_no_chance():
    plain = ask("stem", ["stem-bare-below"], findings=["stem-bare-below"])["questioning"]
    key = plain["ask"]["finding"]
    after = ask("stem", ["stem-bare-below", key], findings=["stem-bare-below"])["questioning"]
    assert question_of(after["ask"]["finding"]) != question_of(key)
    assert after["causes"] == plain["causes"]
    assert after["taps"] == plain["taps"] + 1
    assert {"keys": [key], "answer": "Not known"}.items() <= after["answers"][-1].items()


def test_the_first_question_is_about_the_place_that_was_tapped():
    for place in ("old-leaves", "new-leaves", "stem", "roots", "surface", "coating", "animals"):
        found = ask(place)["questioning"]["ask"]["finding"]
        assert FINDINGS[found].where == place


def test_every_answer_but_not_knowing_changes_what_is_known():
    for name in share_of([*QUESTIONS], 5):
        asked = next(iter(QUESTIONS[name]))
        chips = [
            chip for chip in page.question(asked, page.fields_of(find("diagnose"))).chips
        ]  # fmt: skip
        assert chips[-1].words == "Don’t know"
        assert not chips[-1].present
        assert not chips[-1].absent
        settled = [set(chip.present) | set(chip.absent) for chip in chips[:-1]]
        assert all(settled)
        assert {key for chip in chips for key in chip.present} == set(QUESTIONS[name])
        for chip in chips[:-1]:
            run("diagnose", {"findings": list(chip.present), "absent": list(chip.absent)})


def test_questions_show_temperature_in_the_units_chosen():
    chips = page.question("water-hot", page.fields_of(find("diagnose")), "us").chips
    assert [chip.words for chip in chips][:2] == ["68 °F or less", "68 to 82.4 °F"]
    reply = ask("water", units="us", given_in="us", **{"readings.temperature_c": "68"})
    assert reply["address"] == {"readings.temperature_c": "20"}


def test_danger_stands_first_and_says_what_to_do():
    found = ask("old-leaves", findings=["old-leaves-pale-evenly", "fish-gasping"])["questioning"]
    assert found["urgent"]
    assert found["first_action"].startswith("Animals first.")
    assert all("See to them first" not in note["text"] for note in found["notes"])
    calm = ask("old-leaves", findings=["old-leaves-pale-evenly"])["questioning"]
    assert not calm["urgent"]
    assert any("how the animals are" in note["text"] for note in calm["notes"])
    well = ask("old-leaves", findings=["old-leaves-pale-evenly", "animals-well"])["questioning"]
    assert not any("how the animals are" in note["text"] for note in well["notes"])


def test_causes_that_explain_what_was_seen_stand_first():
    found = ask(
        "old-leaves",
        findings=[
            "old-leaves-pinholes",
            "nitrate-near-zero",
            "plant-is-rosette",
            "tank-1-to-3-months",
        ],
    )["questioning"]
    first = CAUSES[found["causes"][0]["problem"]].rows
    assert first["old-leaves-pinholes"].strength in ("for", "strong-for")


def test_a_cause_says_what_to_do_when_to_expect_it_and_what_if_not():
    one = ask("old-leaves", findings=["old-leaves-pinholes"], **{"volume_l": "80"})["questioning"][
        "causes"
    ][0]
    record = CAUSES["potassium-starvation"]
    assert one["this_week"] == list(record.this_week)
    assert one["if_not"] == record.ask
    assert one["expect"][0].startswith("Week 2 to 4 (day 14 to 28): ")
    assert one["calculators"][0]["inputs"]["volume_l"] == 80
    run(one["calculators"][0]["name"], one["calculators"][0]["inputs"])
    for made, given in zip(one["calculators"], record.calculators, strict=True):
        # no figure of the record's example passes for the keeper's in the next form
        figures = {key for key, value in made["inputs"].items() if not isinstance(value, str)}
        assert figures <= {"volume_l"}, made
        assert set(made["inputs"]) <= set(given["inputs"])


@pytest.mark.parametrize(
    ("days", "words"),
    [
        ((1, 3), "Day 1 to 3"), ((7, 7), "Day 7"), ((7, 14), "Week 1 to 2 (day 7 to 14)"),
        ((14, 14), "Week 2 (day 14)"), ((0, 8), "Week 1 to 2 (day 0 to 8)"),
    ],
)  # fmt: skip
def test_weeks_in_words(days, words):
    assert when(*days) == words


def test_sureness_in_words_never_falls_as_the_chance_rises():
    order = ["less likely", "possible", "quite possible", "likely", "very likely"]
    found = [order.index(words_for(percent)) for percent in range(0, 101)]
    assert found == sorted(found)
    assert set(found) == set(range(5))


def test_asking_on_goes_beyond_six_taps():
    taps = ["old-leaves-pinholes", *list(FINDINGS)[:5]]
    done = ask("old-leaves", taps, findings=["old-leaves-pinholes"])["questioning"]
    assert done["done"]
    assert done["ask"]
    assert not ask("old-leaves", taps, on=True, findings=["old-leaves-pinholes"])["questioning"][
        "done"
    ]


def test_a_key_that_the_book_does_not_know_is_dropped_by_name():
    reply = ask("stem", findings=["no-such-sign"])
    assert reply["dropped"] == ["no-such-sign"]
    assert "no-such-sign" in reply["left_out"]
    assert (
        ask("stem", ["no-such-sign", "stem"], findings=["stem-bare-below"])["questioning"]["taps"]
        == 1
    )


def test_the_drawing_has_every_place_wide_enough_for_a_thumb_and_apart():
    drawn = ElementTree.fromstring(page.places_drawing({key: key for key in PLACES}, "symptoms/#"))
    links = [one for one in drawn.iter("a")]
    assert {one.get("data-place") for one in links} == set(PLACES)
    boxes = []
    for one in links:
        assert one.get("aria-label")
        reach = one.find("rect")
        left, top, wide, high = (float(reach.get(name)) for name in ("x", "y", "width", "height"))
        assert min(wide, high) >= 44 * WIDTH / (390 - 32)  # the page leaves 16 px on each side
        assert left >= 0 <= top
        assert left + wide <= WIDTH
        assert top + high <= HEIGHT
        boxes.append((left, top, left + wide, top + high))
    for a, b in combinations(boxes, 2):
        assert a[2] <= b[0] or b[2] <= a[0] or a[3] <= b[1] or b[3] <= a[1]


def test_the_page_holds_every_sign_once_with_questions_to_go_on_with(library):
    shown = page.places(library)
    assert shown[0].where == "animals"
    assert {place.where for place in shown} >= set(PLACES)
    signs = [sign.key for place in shown for sign in place.signs]
    assert len(signs) == len(set(signs))
    ready = {name for name, _ in page.first_questions(shown)}
    for place in shown:
        for sign in place.signs:
            assert FINDINGS[sign.key].where == place.where
            assert set(sign.then) <= ready
            assert question_of(sign.key) not in sign.then
    danger = {key for key, one in FINDINGS.items() if one.danger and one.where == "animals"}
    assert {sign.key for sign in shown[0].signs[: len(danger)]} == danger


def test_every_name_of_a_plant_means_one_record(library):
    names = page.plant_names(library)
    assert {slug for _, slug in names} == set(library.offered())
    assert len({name.lower() for name, _ in names}) == len(names)


def test_questioning_needs_no_more_than_the_answer():
    found = diagnosis_and_question(find("diagnose"), run("diagnose", {}), {}, "metric")
    assert found["taps"] == 0
    assert not found["done"]


def test_what_an_address_holds_besides_is_dropped_said_and_the_rest_answered():
    plain = ask("animals", ["fish-gasping"], findings=["fish-gasping"])
    given = {
        "findings": ["fish-gasping", "retired-sign"], "plant": "retired-plant", "fbclid": "abc",
        "__proto__": "x", "readings.old": "1", "readings.ph": "abc",
    }  # fmt: skip
    reply = ask("animals", ["fish-gasping", "retired-sign"], **given)
    assert reply["questioning"] == plain["questioning"]
    assert set(reply["dropped"]) == {
        "fbclid", "__proto__", "readings.old", "retired-sign", "retired-plant",
    }  # fmt: skip
    assert "“fbclid”" in reply["left_out"]
    assert reply["left_out"].endswith("Not used, as it cannot be read: pH.")
    assert list(reply["problems"]) == ["readings.ph"]
    assert plain["left_out"] == ""


def test_of_two_answers_to_one_question_that_of_danger_stays():
    for order in (["ammonia-none", "ammonia-shows"], ["ammonia-shows", "ammonia-none"]):
        reply = ask("water", findings=order, absent=["ammonia-shows"])
        assert reply["questioning"]["findings"] == ["ammonia-shows"]
        assert reply["questioning"]["absent"] == []
        assert reply["dropped"] == ["ammonia-none"]


def test_no_word_for_the_command_line_reaches_a_page():
    given = {"calculator": "pick", "given": {"animals": "no-such-animal"}}
    reply = json.loads(answer(json.dumps(given)))
    assert reply["problems"]
    assert "--" not in str(reply["problems"])


@pytest.mark.parametrize(
    ("given", "word"),
    [
        ({"findings": "retired-sign,fish-gasping"}, "retired-sign"),
        ({"plant": "a-plant-that-is-gone", "findings": "fish-gasping"}, "a-plant-that-is-gone"),
        ({"fbclid": "abc", "findings": "fish-gasping"}, "fbclid"),
    ],
)
def test_the_full_form_leaves_a_retired_word_out_says_so_and_answers_the_rest(given, word):
    request = {"calculator": "diagnose", "given": given, "own": True}
    reply = json.loads(answer(json.dumps(request)))
    first = unescape(reply["painted"]["html"].partition("</ul>")[0])
    assert re.match(r'<ul[^>]*><li class="danger[^>]*>Animals may be in danger', first)
    assert re.search(rf"<li[^>]*>Left out[^<]*{word}", first)
    assert reply["answer"]["outputs"]["urgent"]
