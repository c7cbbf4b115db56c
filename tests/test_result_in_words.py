"""The form's answer as a keeper reads it: words and links, where the JSON has keys and bare figures."""

import html
import json
import re

import pytest

from calculators.bridge import answer
from calculators.core.run import run
from calculators.diagnose.problem_table import CAUSES, FINDINGS
from calculators.identify.trait_table import plant_book
from scripts.setup.paths import ROOT
from tests.effort import share_of
from tests.plain_yaml import read_yaml

CASES = read_yaml(ROOT / "tests" / "diagnosis_cases.yml")
AMMONIA = {"findings": ["gasp-all-day"], "readings": {"ammonia_mg_n_l": 1, "ph": 8}}
LEAN = {
    "findings": ["old-leaves-pale-evenly"],
    "readings": {"nitrate_mg_l": 0},
    "volume_l": 54,
    "tank_age_days": 500,
}
FIGURE_NAME = re.compile(r"\b[a-z]+(?:_[a-z0-9]+)+\b")
KEYS = re.compile(
    "|".join(rf"(?<![\w-]){key}(?![\w-])" for key in [*FINDINGS, *CAUSES] if "-" in key)
)


def painted(calculator, given):
    reply = answer(json.dumps({"calculator": calculator, "given": given})).replace("\\u00a0", " ")
    return json.loads(reply.replace("\u00a0", " "))["painted"]


def text_of(painted_html):
    """What stands between the tags."""
    return html.unescape(re.sub(r"<[^>]*>", "\n", painted_html))


def read(label, painted_html):
    """The list below a heading."""
    return painted_html.partition(f"<h3>{label}</h3>")[2].partition("<h3>")[0]


@pytest.mark.parametrize("case", share_of(CASES, 6), ids=lambda case: case["case"][:40])
def test_no_key_and_no_bare_figure_stands_where_words_exist(case):
    made = painted("diagnose", case["given"])
    for text in (text_of(made["html"]), "\n".join(made["lines"])):
        assert KEYS.findall(text) == []
        assert FIGURE_NAME.findall(text) == []
    assert " of 100" not in made["html"]


def test_what_to_look_at_next_is_a_question_and_a_reason():
    found = run("diagnose", LEAN)["outputs"]["next_check"]
    listed = html.unescape(read("Look at this next", painted("diagnose", LEAN)["html"]))
    assert f"<b>{found['question']}</b><p>{found['why']}</p>" in listed


def test_what_to_expect_stands_below_its_days_and_what_else_behind_it():
    outputs = run("diagnose", AMMONIA)["outputs"]
    whole = html.unescape(painted("diagnose", AMMONIA)["html"])
    listed = read("What to expect, and by which day", whole)
    first = outputs["expect"][0]
    assert (first["from_day"], first["to_day"]) == (0, 1)
    assert f"<b>Day 0 to 1</b><p>{first['text']}</p>" in listed
    assert whole.index("What to expect") < whole.index("If that does not come")
    assert outputs["if_not"] in whole


def test_the_problem_of_the_first_step_is_a_name_with_its_page():
    problem = run("diagnose", AMMONIA)["outputs"]["first_action_for"]
    listed = read("The problem that the first step is for", painted("diagnose", AMMONIA)["html"])
    assert f'<a href="../../problems/{problem}/"><b>{CAUSES[problem].name}</b></a>' in listed


def test_what_to_do_first_stands_before_all_else_as_wide_as_the_answer():
    outputs = run("diagnose", AMMONIA)["outputs"]
    whole = html.unescape(painted("diagnose", AMMONIA)["html"])
    assert f'<h3>Do first</h3><ul class="picks"><li>{outputs["first_action"]}</li>' in whole
    assert whole.index("Do first") < whole.index("<table>")


def test_calculators_are_links_with_the_keepers_figures_and_none_of_an_example():
    listed = html.unescape(
        read("Calculators with your figures", painted("diagnose", AMMONIA)["html"])
    )
    assert (
        '<a href="../../calculators/free-ammonia/?reported_as=nitrogen&ammonia_mg_l=1&ph=8">'
        "<b>Free ammonia</b></a><p>" in listed
    )
    assert "volume_l=" not in listed  # the record's example has one, this keeper gave none
    lean = read("Calculators with your figures", painted("diagnose", LEAN)["html"])
    assert "volume_l=54" in lean
    assert "wet_g" not in lean


def test_how_sure_it_is_stands_in_words_and_whole_percent():
    made = painted("diagnose", LEAN)["html"]
    first = run("diagnose", LEAN)["outputs"]["ranked"][0]["probability_percent"]
    assert re.search(rf"(very )?(likely|possible), {round(first)} %</p>", made)
    assert re.search(r"not in this book</th><td>less likely, \d+ %</td>", made)


def test_the_lines_kept_beside_an_answer_name_what_to_look_at():
    found = run("diagnose", LEAN)["outputs"]["next_check"]
    assert f"Look at this next: {found['question']}" in painted("diagnose", LEAN)["lines"]


def test_the_command_line_keeps_the_values():
    """Scripts read the keys; the words are the page's."""
    outputs = run("diagnose", AMMONIA)["outputs"]
    assert set(outputs["next_check"]) == {"finding", "question", "why"}
    assert outputs["next_check"]["finding"] in FINDINGS
    assert set(outputs["expect"][0]) == {"text", "from_day", "to_day"}
    free = next(one for one in outputs["calculators"] if one["calculator"] == "free-ammonia")
    assert free["inputs"]["temperature_c"] == 25  # the record's example, as ever


def test_a_plant_is_named_and_its_next_question_asked_in_words():
    given = {"label": "vallisneria"}
    outputs = run("identify", given)["outputs"]
    made = painted("identify", given)["html"]
    assert plant_book().plants[outputs["best"]].name in text_of(made)
    assert outputs["best"] not in text_of(made)
    listed = html.unescape(read("Look at this next", made))
    assert f"<b>{outputs['ask_next']['question']}</b>" in listed


def test_a_diagnosis_never_says_a_plain_no_to_danger():
    def shown(**readings):
        given = {"findings": ["old-leaves-pale-evenly"], "readings": readings}
        asked = {"calculator": "diagnose", "given": given, "own": True, "units": "metric"}
        html = json.loads(answer(json.dumps(asked)))["painted"]["html"]
        return html.split("Animals may be in danger</th><td>")[1].split("</td>")[0]

    untested = "nothing that was said shows it; ammonia and nitrite were not both tested"
    assert shown() == shown(ammonia_mg_n_l="0") == untested
    assert shown(ammonia_mg_n_l="0", nitrite_mg_n_l="0") == "nothing that was said shows it"
    assert shown(ammonia_mg_n_l="4", nitrite_mg_n_l="0", ph="8") == "yes"
