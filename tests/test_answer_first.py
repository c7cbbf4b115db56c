"""What a page shows before the figures: danger with what to do, then the answer in plain words."""

import json
import re
from itertools import product

import pytest

from calculators.bridge import answer
from calculators.core.listing import load_all
from calculators.core.paint.notes import brief, lead, rest
from calculators.core.run import compute, run
from calculators.science.water.ammonia import rate
from scripts.setup.paths import ROOT
from tests.effort import share_of

NEW_TANK = {
    "filter_maturity_percent": 0.0,
    "feed_g_week": 8.0,
    "plants": [{"name": "A", "wet_g": 20, "doubling_days": 20}],
}
HARMFUL_NOW = [
    {"start_ammonia_mg_n_l": 3.0, "ph": 8.0},
    {"start_nitrite_mg_n_l": 0.6},
    {"start_nitrite_mg_n_l": 20.0, "start_ammonia_mg_n_l": 20.0, "ph": 8.8, "temperature_c": 30.0},
]


def found(name="nitrogen-forecast", **given):
    return load_all()[name], compute(name, given)


@pytest.mark.parametrize("name", load_all())
def test_a_calculator_with_a_verdict_says_it_before_the_figures(name):
    spec, here = found(name)
    first = lead(spec, here)
    if any(field.kind == "choice" for field in spec.outputs):
        assert first
    assert [note for note in here.notes if note not in first] == rest(spec, here)
    assert not any(note.level == "danger" for note in rest(spec, here))
    assert 0 < len(brief(spec, here)["text"]) <= 91


def test_the_budget_and_the_forecast_word_their_verdict_in_a_sentence():
    hungry = {
        "nitrogen-balance": {},
        "nitrogen-forecast": {"nitrate_mg_l": 1.0, "feed_g_week": 0.5},
    }
    for name, given in hungry.items():
        (note,) = lead(*found(name, **given))
        assert note.text.startswith("Running short: ")
        assert brief(*found(name, **given)) == {
            "level": "caution",
            "text": "Verdict: plants run short",
        }


def test_a_rating_without_a_sentence_becomes_one():
    spec, here = found("free-ammonia", ammonia_mg_l=0.1)
    assert [note.text for note in lead(spec, here)] == ["Rating: below the working lines."]
    assert len(here.notes) == len(here.answer["notes"])  # and is no note of the answer itself


def test_danger_comes_first_and_says_what_to_do_within_the_hour():
    spec, here = found(**NEW_TANK)
    levels = [note.level for note in lead(spec, here)]
    assert levels == sorted(levels, key=["danger", "caution", "info"].index)
    assert lead(spec, here)[0].text.startswith("Animals first")
    assert "within the hour: take out leftovers" in lead(spec, here)[1].text
    assert brief(spec, here)["level"] == "danger"


@pytest.mark.parametrize("given", HARMFUL_NOW)
def test_readings_that_harm_already_are_acted_on_now(given):
    spec, here = found(**given)
    assert lead(spec, here)[1].text.startswith("Now, within the hour: ")


@pytest.mark.parametrize(
    ("ammonia", "nitrite", "ph"),
    share_of(list(product((0.0, 0.3, 1.5, 6.0), (0.0, 0.05, 0.3, 2.0), (6.4, 7.4, 8.4))), 5),
)
def test_no_forecast_with_harmful_water_is_without_its_caution(ammonia, nitrite, ph):
    """The lines are those of the free-ammonia calculator and of the nitrite guideline in outlook.py."""
    spec, here = found(start_ammonia_mg_n_l=ammonia, start_nitrite_mg_n_l=nitrite, ph=ph, days=10.0)
    alone = run(
        "free-ammonia",
        {"ammonia_mg_l": ammonia, "reported_as": "nitrogen", "ph": ph, "temperature_c": 25.0},
    )["outputs"]
    assert rate(alone["chronic_ratio"], alone["unionised_mg_n_l"]) == alone["rating"]
    levels = [note.level for note in lead(spec, here)]
    if alone["rating"] == "act" or here.answer["outputs"]["peak_nitrite_mg_n_l"] >= 0.6:
        assert levels[:2] == ["danger", "danger"]
        assert "within the hour" in lead(spec, here)[1].text
    elif alone["rating"] == "watch" or here.answer["outputs"]["peak_nitrite_mg_n_l"] >= 0.06:
        assert "caution" in levels or "danger" in levels


@pytest.mark.parametrize("given", [NEW_TANK, *HARMFUL_NOW])
def test_links_of_a_note_lead_to_pages_and_calculators_that_take_them(given):
    _, here = found(**given)
    links = [link for note in here.notes for link in note.links]
    assert links[0].page == "danger/"
    for link in links:
        if link.page.startswith("calculators/"):
            name = link.page.split("/")[1]
            assert run(name, link.given)["outputs"]
        else:
            assert (ROOT / "docs" / f"{link.page.strip('/')}.md").is_file()


@pytest.mark.parametrize(
    "reading",
    [{"start_nitrite_mg_n_l": 2.0}, {"nitrate_mg_l": 260.0}],
    ids=["nitrite", "nitrate"],
)
def test_a_link_to_a_change_hands_on_the_hardness_that_is_known_and_no_other(reading):
    _, here = found(**reading, kh_dh=2.0, tap_kh_dh=9.0)
    changes = [
        link.given
        for note in here.notes
        for link in note.links
        if link.page == "calculators/water-change/"
    ]
    assert changes
    for given in changes:
        assert {key: given.get(key) for key in ("kh_dh", "tap_kh_dh", "gh_dh", "tap_gh_dh")} == {
            "kh_dh": 2.0, "tap_kh_dh": 9.0, "gh_dh": None, "tap_gh_dh": None,
        }  # fmt: skip
        said = compute("water-change", given).answer["notes"]
        assert any("°dH" in note["text"] for note in said)  # 7 °dH apart: more than animals bear


def test_links_reach_the_page_as_text_and_stay_out_of_the_contract():
    reply = json.loads(
        answer(
            json.dumps({"calculator": "nitrogen-forecast", "given": {"start_nitrite_mg_n_l": "2"}})
        )
    )
    lead = reply["painted"]["html"].partition("</ul>")[0]
    assert 'href="../../danger/"' in lead
    assert re.search(r'href="../../calculators/water-change/\?what=nitrite&amp;now_mg_l=2', lead)
    assert {tuple(sorted(note)) for note in reply["answer"]["notes"]} == {("level", "text")}


def test_traces_are_said_as_traces():
    spec, here = found(feed_g_week=0.0, ph=6.5)
    from calculators.core.paint.answer import rows

    shown = {row["key"]: row["value"] for row in rows(spec, here.answer["outputs"])}
    assert shown["peak_unionised_mg_n_l"] == "under 0.001"
    nothing = compute("free-ammonia", {"ammonia_mg_l": 0.0}).answer["outputs"]
    shown = {row["key"]: row["value"] for row in rows(load_all()["free-ammonia"], nothing)}
    assert shown["unionised_mg_n_l"] == "0"


IN_WORDS = (
    "dosing", "light", "water-change", "floaters", "trimmings", "tank", "hardness", "upkeep",
    "planting-plan", "surface-cover", "conditioner", "chloride", "medicine-volume", "acclimate",
    "warmth", "soil", "kh-budget", "top-up", "remineralise",
)  # fmt: skip


@pytest.mark.parametrize("name", IN_WORDS)
def test_a_tool_says_its_answer_in_words_before_the_figures(name):
    spec, here = found(name)
    first = [note for note in lead(spec, here) if note.first]
    assert first
    assert first[0].text.endswith(".")
    assert any(sign.isdigit() for sign in first[0].text)


def test_a_bottle_that_cannot_hold_the_salt_is_not_promised():
    spec, here = found("dosing", rise_mg_l=15.0, dose_ml=10.0)  # 294 g/L: below 316, above 279
    assert here.answer["outputs"]["dissolves"] is True
    assert "does not dissolve" in lead(spec, here)[0].text
