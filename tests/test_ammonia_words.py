"""Words about ammonia: an order of doing, a unit that never under-reads, no change unasked in acid water."""

import re

import pytest

from calculators.core.listing import load_all
from calculators.core.paint.notes import brief
from calculators.core.run import compute, run
from calculators.science.water.ammonia import ACT_NH3_MG_N_L, rate
from scripts.records.load import load
from scripts.setup.paths import ROOT
from tests import harm_predicates as predicates

RATINGS = {"low", "watch", "act"}
TO_CHANGE = re.compile(
    r"\b[Cc]hang(?:e|ing)\b(?: \w+){0,2} (?:water|half|third|quarter|fifth|daily)"
)


@pytest.fixture(scope="module")
def library():
    return load(ROOT / "species")


@pytest.mark.parametrize("tap_ph", [8.5, 9.5])
@pytest.mark.parametrize("kh", [0, 2])
def test_ammonia_that_harms_is_never_only_so_much_and_air_comes_first(kh, tap_ph):
    water = {"ph": 8.5, "kh_dh": kh, "temperature_c": 26, "tap_ph": tap_ph, "tap_kh_dh": 20}
    answer = run("ammonia-change", {"ammonia_mg_l": 10, "reported_as": "nitrogen", **water})
    assert answer["outputs"]["way"] == "match-first"
    assert answer["outputs"]["now_nh3_mg_n_l"] > ACT_NH3_MG_N_L
    said = answer["notes"][0]["text"]
    assert "Only" not in said
    assert "Move the surface with air now" in said


def test_no_rating_calls_a_tank_with_ammonia_safe():
    [field] = [one for one in load_all()["free-ammonia"].outputs if one.key == "rating"]
    assert set(field.choices) == RATINGS
    for total in (0.0, 0.05, 0.5, 3.0, 20.0):
        answer = compute("free-ammonia", {"ammonia_mg_l": total, "ph": 6.5})
        assert answer.answer["outputs"]["rating"] in RATINGS
        assert "safe" not in " ".join(note.text for note in answer.notes).split()
    assert rate(0.0, 0.0) == "low"


@pytest.mark.parametrize("name", ["free-ammonia", "ammonia-change"])
def test_an_unknown_unit_is_answered_for_the_most_nitrogen(name):
    [field] = [one for one in load_all()[name].inputs if one.key == "reported_as"]
    assert field.assumed
    key = "total_mg_n_l" if name == "free-ammonia" else "later_total_mg_n_l"
    totals = {
        choice: run(name, {"ammonia_mg_l": 2.0, "reported_as": choice})["outputs"][key]
        for choice in field.choices
    }
    assert set(totals) == {"nitrogen", "ammonium", "ammonia", "unknown"}
    assert totals["unknown"] == max(totals.values())
    assert run(name, {"ammonia_mg_l": 2.0})["outputs"][key] == max(totals.values())
    said = " ".join(note.text for note in compute(name, {"reported_as": "unknown"}).notes)
    assert "Look on the colour card or leaflet" in said
    said = " ".join(note.text for note in compute(name, {"reported_as": "ammonium"}).notes)
    assert "colour card" not in said


@pytest.mark.parametrize(("ph", "ammonia"), [(6.0, 3.0), (6.8, 4.0), (7.4, 2.0), (8.2, 2.0)])
def test_above_the_act_line_there_is_an_order_of_doing(ph, ammonia):
    answer = compute("free-ammonia", {"ammonia_mg_l": ammonia, "ph": ph})
    assert answer.answer["outputs"]["rating"] == "act"
    steps = [note for note in answer.notes if note.text[:2] in {f"{n}." for n in range(1, 9)}]
    assert [note.text[0] for note in steps] == ["1", "2", "3", "4", "5"]
    assert all(note.level == "danger" for note in steps)
    assert steps[0].text.startswith("1. Stop feeding")
    assert [note.leads for note in steps if note.leads] == [("ammonia-change",)]
    [lead] = answer.answer["leads"]
    assert lead["inputs"] == {"ammonia_mg_l": ammonia, "ph": ph}


@pytest.mark.parametrize("ph", [5.5, 6.0, 6.5, 6.9])
def test_in_acid_water_the_steps_change_nothing_before_the_readings(ph):
    answer = compute("free-ammonia", {"ammonia_mg_l": 4.0, "ph": ph})
    second = next(note.text for note in answer.notes if note.text.startswith("2. "))
    assert second.startswith("2. Do not change water yet")
    assert "binds ammonia" in second
    assert "the tap's KH" in second


def test_a_low_reading_in_acid_water_leads_on_too():
    answer = compute("free-ammonia", {"ammonia_mg_l": 0.5, "ph": 6.2})
    assert answer.answer["outputs"]["rating"] == "low"
    assert any("ammonia-change" in note.leads for note in answer.notes)


def sentences(problem):
    """Everything that a problem tells a keeper to do."""
    told = [problem.first_action, *problem.this_week, problem.stop_and_ask]
    return " ".join(one.text for one in told)


def test_where_ammonia_may_show_a_change_is_asked_about_first(library):
    """A problem that ammonia speaks for, and that tells to change water, leads to the calculator."""
    asked = 0
    for slug, problem in library.problems.items():
        speaks = {
            row.finding
            for row in problem.evidence
            if row.finding in ("ammonia-shows", "ammonia-trace")
            and row.strength in ("for", "strong-for")
        }
        if speaks and TO_CHANGE.search(sentences(problem)):
            asked += 1
            names = {one.calculator for one in problem.calculators}
            assert "ammonia-change" in names, slug
    assert asked >= 4


def test_no_problem_calls_small_changes_harmless_in_acid_water(library):
    for slug, problem in library.problems.items():
        assert "a quarter at a time, hours apart" not in sentences(problem), slug
        assert "or a quarter if pH is under" not in sentences(problem), slug


@pytest.mark.parametrize(
    "slug",
    ["ammonia-emergency", "new-soil-ammonia", "holiday-die-off", "kh-crash", "soil-gas-sulphide"],
)
def test_first_actions_keep_harder_water_from_acid_water_with_ammonia(library, slug):
    problem = library.problems[slug]
    first = problem.first_action.text
    assert "the calculator below" in first
    assert "pH" in first
    given = next(one for one in problem.calculators if one.calculator == "ammonia-change").inputs
    outputs = run("ammonia-change", given | {"tap_ph": 7.8, "tap_kh_dh": 8})["outputs"]
    assert outputs["way"] == "match-first"
    assert outputs["later_nh3_mg_n_l"] > ACT_NH3_MG_N_L


def test_the_danger_page_asks_before_a_change_in_acid_water():
    page = (ROOT / "docs" / "danger.md").read_text(encoding="utf-8")
    second = next(line for line in page.splitlines() if line.startswith("2. "))
    assert "calculators/ammonia-change.md" in second
    assert "not even a little" in second
    assert "quarter at a time" not in page


GUIDES = sorted((ROOT / "docs" / "guides").glob("*.md"))


@pytest.mark.parametrize("path", GUIDES, ids=[path.stem for path in GUIDES])
def test_no_guide_tells_to_change_water_for_any_ammonia(path):
    text = path.read_text(encoding="utf-8")
    assert "Change a quarter for any reading" not in text
    assert not re.search(r"[Aa]ny (?:reading of )?ammonia or nitrite[^.]*\bchange\b", text)
    if path.stem in ("power-cuts", "heat-waves", "holidays", "setting-up"):
        assert "{open: ammonia-change" in text


NITRITE_AND_A_CHANGE = re.compile(
    r"(?=.*[Nn]itrite)(?=.*\b[Cc]hange (?:water|again|half|a (?:third|quarter))\b)"
)
AMMONIA_DECIDES = re.compile(
    r"\balone\b|no ammonia|unless ammonia shows|[Ii]f none shows|both read zero|[Bb]oth show"
    r"|conditioner|no animals inside"
)


def lines_of_prose(library):
    """Each thing that a problem, a guide or the danger page tells, with where it stands."""
    for slug, problem in library.problems.items():
        told = [problem.first_action, *problem.this_week, problem.stop_and_ask, *problem.do_not]
        yield from ((slug, one.text) for one in told)
    for path in [*GUIDES, ROOT / "docs" / "danger.md"]:
        lines = path.read_text(encoding="utf-8").splitlines()
        yield from (
            (path.stem, line) for line in lines if not line.startswith("|")
        )  # of empty tanks


def test_nitrite_never_orders_a_change_past_an_ammonia_that_shows_too(library):
    """Both often show in a new tank; the change for nitrite is then the one that ammonia allows."""
    found = [(at, text) for at, text in lines_of_prose(library) if NITRITE_AND_A_CHANGE.match(text)]
    assert len(found) >= 10
    for at, text in found:
        assert "mmonia" in text or "alone" in text, (at, text)
        assert AMMONIA_DECIDES.search(text) or "mmonia" not in text, (at, text)


def test_a_first_action_that_orders_a_change_speaks_of_ammonia(library):
    asked = [
        one for one in library.problems.values() if predicates.LARGE.search(one.first_action.text)
    ]
    assert len(asked) >= 8
    for problem in asked:
        assert "mmonia" in problem.first_action.text, problem.name


@pytest.mark.parametrize(("ph", "kh"), [(6.8, 2.0), (7.0, 3.0), (7.2, 4.0)])
def test_no_large_change_is_ordered_where_the_model_says_that_it_can_harm(ph, kh):
    """Ammonia not read: a third of a hard tap would leave more of it toxic than no change."""
    tap = {"tap_ph": 8.2, "tap_kh_dh": 15, "change_percent": 33}
    given = {
        "ammonia_mg_l": 3,
        "reported_as": "nitrogen",
        "ph": ph,
        "kh_dh": kh,
        "temperature_c": 25,
    }
    outputs = run("ammonia-change", given | tap)["outputs"]
    assert outputs["later_nh3_mg_n_l"] > outputs["aired_nh3_mg_n_l"]
    readings = {"ph": ph, "kh_dh": kh}
    answer = run("diagnose", {"findings": ["fish-gasping"], "readings": readings})
    assert answer["outputs"]["urgent"]
    assert not [one for one in predicates.sentences(answer) if predicates.orders(one)]
    assert "test ammonia before" in answer["outputs"]["first_action"]


@pytest.mark.parametrize(("ph", "ammonia"), [(6.0, 3.0), (7.4, 2.0), (8.2, 20.0)])
def test_the_line_in_view_says_what_to_do_and_not_the_number_of_a_step(ph, ammonia):
    spec = load_all()["free-ammonia"]
    given = {"ammonia_mg_l": ammonia, "ph": ph, "temperature_c": 25, "reported_as": "nitrogen"}
    line = brief(spec, compute("free-ammonia", given))
    assert line["level"] == "danger"
    assert re.match(r"1\. Stop feeding and take out|Above the acute limit", line["text"])
