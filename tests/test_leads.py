"""Answers lead on: every lead is data, its keys exist, and the target takes what it is given."""

import json
import re
from urllib.parse import parse_qsl

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.bridge import answer
from calculators.core.declare import CATALOGUE
from calculators.core.fields import Kind
from calculators.core.lead_checks import check_leads, check_notes
from calculators.core.leads import Lead, OnlyBeside, Rows, Scaled, Value, leads
from calculators.core.listing import load_all
from calculators.core.paint.lead_links import query
from calculators.core.read import read_inputs
from calculators.core.result import Note, StillNeeded
from calculators.core.run import run

LEADS = [(name, lead) for name, spec in load_all().items() for lead in spec.leads_to]
IDS = [f"{name}->{lead.calculator}" for name, lead in LEADS]
# Worked examples that answer nothing of their own: what a keeper would give.
KEEPERS = {
    "diagnose": [
        {
            "findings": ["fish-gasping"],
            "readings": {"ammonia_mg_n_l": 0.4, "ph": 7.4, "temperature_c": 25},
            "volume_l": 60,
        },
        {
            "findings": ["new-leaves-pale-green-veins"],
            "absent": ["old-leaves-pale-evenly"],
            "readings": {"ph": 8, "kh_dh": 14, "nitrate_mg_l": 10},
            "volume_l": 60,
        },
        {
            "findings": ["stem-bare-below", "stems-short-thin"],
            "plant": "limnophila-sessiliflora",
            "readings": {"nitrate_mg_l": 1},
            "feed_g_week": 0.5,
            "volume_l": 54,
            "cover_percent": 60,
        },
        {"findings": ["lower-leaves-drop-green", "gaps-between-leaves-long"], "light_hours": 5},
    ]
}
OF_A_PICTURE = "surface-cover"  # test_surface_cover.py follows its lead


def filled(spec):
    """Every input of the worked example given, so that nothing counts as not the keeper's."""
    return {field.key: field.default for field in spec.inputs if field.default is not None}


def leads_of(name):
    """All leads of the worked example's answer, or of a keeper's where the example has none."""
    asked = KEEPERS.get(name) or [filled(load_all()[name])]
    return [lead for one in asked for lead in run(name, one).get("leads", [])]


def accepted(name, inputs):
    """The inputs as the calculator reads them. What it still needs it may ask for; nothing may be wrong."""
    try:
        return read_inputs(load_all()[name].inputs, inputs, typed=False, own=True)
    except StillNeeded as still:
        assert not still.problems, still.problems
        return still.values


def test_every_declared_lead_has_two_ends():
    assert len(LEADS) > 25
    check_leads(load_all())


@pytest.mark.parametrize(
    ("lead", "fault"),
    [
        (Lead("no-such", "On"), "no such calculator"),
        (Lead("units", "On", {"volume": "volume_l"}), "that has no input volume"),
        (Lead("water-change", "On", {"volume_l": "volume"}), "it has no input or output volume"),
        (Lead("water-change", "On", {"what": Value("gold")}), "gold is no choice of what"),
        (Lead("water-change", "On", needs=("volume",)), "it has no input or output volume"),
        (
            Lead("upkeep", "On", {"tanks": Rows({"plants": Rows({"colour": "volume_l"})})}),
            "that has no input colour",
        ),
        (
            Lead("water-change", "On", {"volume_l": OnlyBeside("volume_l", "litres")}),
            "it has no input or output litres",
        ),
    ],
)
def test_a_lead_with_an_end_that_is_not_there_is_refused(lead, fault):
    wrong = CATALOGUE["stocking"]._replace(leads_to=(lead,))
    with pytest.raises(TypeError, match=fault):
        check_leads(CATALOGUE | {"stocking": wrong})


def test_a_note_that_leads_to_what_is_not_declared_is_refused():
    with pytest.raises(TypeError, match="undeclared"):
        check_notes(CATALOGUE["units"], [Note("info", "x", leads=("tank",))])


@pytest.mark.parametrize(("name", "lead"), LEADS, ids=IDS)
def test_the_target_takes_what_the_worked_example_leads_on_with(name, lead):
    if name == OF_A_PICTURE:
        pytest.skip("its picture comes from a file")
    for one in leads_of(name):
        if one["calculator"] == lead.calculator:
            assert one["inputs"].keys() <= lead.takes.keys()
            accepted(one["calculator"], one["inputs"])


def test_nearly_every_lead_is_seen_from_a_worked_example():
    """Else the test above would test nothing."""
    seen = {
        (name, one["calculator"])
        for name in load_all()
        if name != OF_A_PICTURE
        for one in leads_of(name)
    }
    unseen = {(name, lead.calculator) for name, lead in LEADS} - seen
    assert len(unseen) <= 5, unseen


@pytest.mark.parametrize("name", load_all())
def test_every_answer_of_a_keeper_says_where_to_go_on(name):
    ends = {"round", "units", "upkeep"}
    assert bool(load_all()[name].leads_to) != (name in ends)


def test_what_nobody_gave_does_not_pass_for_given():
    way = Lead(
        "other", "On", {"a": "volume", "b": "protein", "c": Value("x"), "d": Scaled("out", 2)}
    )
    (lead,) = leads((way,), {"volume": 60.0, "protein": 40.0}, {"out": 1.5}, {"protein"})
    assert lead["inputs"] == {"a": 60.0, "c": "x", "d": 3.0}
    assert leads((way._replace(needs=("out",)),), {}, {"out": 0}) == []


def test_a_path_reaches_into_lists_and_stops_where_nothing_is():
    way = Lead(
        "other",
        "On",
        {"plant": "rows.0.plant", "second": "rows.1.plant", "none": "x.y", "n": "rows.a.n"},
    )
    (lead,) = leads((way,), {}, {"rows": [{"plant": "a", "n": 2}]})
    assert lead["inputs"] == {"plant": "a", "n": 2}


def test_rows_are_filled_one_or_each_and_never_by_constants_alone():
    each = Rows({"name": "plant", "floating": Value(False)}, "rows")
    one = Rows({"name": Value("Bed"), "every": OnlyBeside("percent", "days")})
    way = Lead("other", "On", {"plants": each, "tanks": one})
    inputs = {"percent": 0, "days": 14}
    (lead,) = leads((way,), inputs, {"rows": [{"plant": "a"}, {"plant": None}]})
    assert lead["inputs"] == {"plants": [{"name": "a", "floating": False}]}
    (lead,) = leads((way,), inputs | {"percent": 25}, {"rows": []})
    assert lead["inputs"] == {"tanks": [{"name": "Bed", "every": 14}]}


def test_a_pick_hands_its_set_to_the_forecast_and_its_best_bed_to_the_plan():
    spec = load_all()["pick"]
    found = run("pick", filled(spec))
    ways = {lead["calculator"]: lead["inputs"] for lead in found["leads"]}
    rows, set_rows = ways["nitrogen-forecast"]["plants"], found["outputs"]["together"]
    assert [row["name"] for row in rows] == [row["name"] for row in set_rows]
    assert [row["wet_g"] for row in rows if not row["floating"]] == [
        row["amount"] for row in set_rows if row["unit"] == "g"
    ]
    first = found["outputs"]["ranked"][0]
    if first["spacing_cm"] is not None:
        assert ways["planting-plan"]["spacing_cm"] == first["spacing_cm"]


def test_a_diagnosis_hands_on_the_keepers_figures_and_no_example():
    ways = {lead["calculator"]: lead["inputs"] for lead in leads_of("diagnose")}
    assert ways["ammonia-change"] == {
        "ammonia_mg_l": 0.4, "reported_as": "nitrogen", "ph": 7.4, "temperature_c": 25,
        "volume_l": 60,
    }  # fmt: skip
    assert ways["dosing"] == {"volume_l": 60, "nutrient": "iron", "source": "fe_dtpa"}


def test_ph_of_one_water_is_not_handed_on_as_that_of_another():
    """Conditioner takes the higher pH of tank and tap; a change of water needs each."""
    for name, other in (("conditioner", "ammonia-change"), ("ammonia-change", "conditioner")):
        lead = next(one for one in load_all()[name].leads_to if one.calculator == other)
        assert "ph" not in lead.takes


def reply(given, **more):
    request = {"calculator": "stocking", "given": given, "own": True, **more}
    return json.loads(answer(json.dumps(request)))


def test_a_page_leads_on_from_a_keepers_figures_alone():
    rows = [{"kind": "danio-rerio", "count": "10", "mean_length_mm": "30"}]
    given = {"animals": rows, "volume_l": "60", "temperature_c": "24"}
    mine = reply(given)
    (lead,) = mine["answer"]["leads"]
    assert lead["calculator"] == "nitrogen-balance"
    assert lead["inputs"]["volume_l"] == 60
    assert "protein_percent" not in lead["inputs"]  # assumed, not given
    assert re.search(
        r'href="../../calculators/nitrogen-balance/\?volume_l=60&amp;', mine["painted"]["html"]
    )
    borrowed = {"keys": ["volume_l"], "source": "the worked example"}
    assert "nitrogen-balance" not in reply(given, borrowed=borrowed)["painted"]["html"]


def test_a_link_inside_a_note_is_filled_in_as_the_lead_is():
    given = {
        "volume_l": "60", "evaporation_l_week": "3", "gh_dh": "13", "kh_dh": "7", "top_up_gh_dh": "12",
        "top_up_kh_dh": "8", "change_percent": "20", "change_every_days": "14", "tap_gh_dh": "12",
        "tap_kh_dh": "8",
    }  # fmt: skip
    request = {"calculator": "top-up", "given": given, "own": True}
    html = json.loads(answer(json.dumps(request)))["painted"]["html"]
    assert 'href="../../calculators/kh-budget/?volume_l=60&amp;kh_dh=7&amp;' in html
    assert 'href="../../calculators/kh-budget/"' not in html


def test_lists_of_a_lead_come_to_the_next_form_as_text():
    spec = load_all()["planting-plan"]
    given = {key: str(value) for key, value in filled(spec).items()}
    request = {"calculator": spec.name, "given": given, "own": True}
    html = json.loads(answer(json.dumps(request)))["painted"]["html"]
    assert "upkeep/?tanks=%5B%7B" in html
    assert next(field for field in load_all()["upkeep"].inputs).kind == Kind.LIST


NO_HALVES = st.text(st.characters(exclude_categories=["Cs"]))


@given(st.dictionaries(st.text("abc_.", min_size=1), NO_HALVES, max_size=3))
def test_an_address_is_quoted_so_that_it_can_be_read_back(inputs):
    assert dict(parse_qsl(query(inputs)[1:], keep_blank_values=True)) == inputs
