"""Readings alone and in pairs through every calculator: none advises what another forbids."""

import re
from itertools import combinations

import pytest

from calculators.core.result import BadInput
from calculators.core.run import run
from calculators.diagnose.problem_table import CAUSES, FINDINGS
from calculators.science.animals.reading_lines import LINE_SOURCES, LINES, standing
from calculators.science.animals.reading_steps import STEPS
from calculators.science.animals.toxic_lines import ammonia_acts, ammonia_standing, nitrite_standing
from scripts.setup.paths import ROOT
from tests import harm_predicates as predicates
from tests.effort import share_of
from tests.harm_predicates import PREDICATES, Case
from tests.plain_yaml import read_yaml

READINGS = read_yaml(ROOT / "tests" / "harm_readings.yml")
SOURCES = read_yaml(ROOT / "species" / "sources.yml")
NO_SOURCE = "common practice, no source"
DIAGNOSED = {
    "nitrate_mg_l", "phosphate_mg_l", "ammonia_mg_n_l", "nitrite_mg_n_l", "ph", "temperature_c",
    "gh_dh", "kh_dh", "oxygen_mg_l",
}  # fmt: skip
LOGGED = DIAGNOSED | {"copper_ug_l"}  # what a tank's log may hold
# Each calculator that speaks of a reading: the inputs that it takes it by, and what goes with them.
AMMONIA = {"ammonia_mg_n_l": "ammonia_mg_l", "ph": "ph", "temperature_c": "temperature_c"}
TAKES = {
    "free-ammonia": (AMMONIA, {"reported_as": "nitrogen"}, {"ammonia_mg_n_l"}),
    "ammonia-change": ({**AMMONIA, "kh_dh": "kh_dh"}, {"reported_as": "nitrogen"}, {"ammonia_mg_n_l"}),
    "water-change": ({"nitrate_mg_l": "now_mg_l"}, {"tap_mg_l": 5, "target_mg_l": 20}, {"nitrate_mg_l"}),
    "oxygen": ({"oxygen_mg_l": "oxygen_mg_l", "temperature_c": "temperature_c"}, {}, {"oxygen_mg_l"}),
    "hardness": ({key: key for key in ("gh_dh", "kh_dh", "ph", "temperature_c")}, {}, {"gh_dh", "kh_dh"}),
    "kh-budget": ({"kh_dh": "kh_dh"}, {}, {"kh_dh"}),
    "top-up": ({key: key for key in ("gh_dh", "kh_dh")}, {}, {"gh_dh", "kh_dh"}),
    "stocking": (
        {"temperature_c": "temperature_c"},
        {"animals": [{"kind": "neocaridina-davidi", "count": 30, "mean_length_mm": 20}], "volume_l": 60},
        {"temperature_c"},
    ),
    "nitrogen-balance": ({"nitrate_mg_l": "nitrate_mg_l"}, {}, {"nitrate_mg_l"}),
    "nitrogen-forecast": (
        {
            "nitrate_mg_l": "nitrate_mg_l", "ammonia_mg_n_l": "start_ammonia_mg_n_l",
            "nitrite_mg_n_l": "start_nitrite_mg_n_l", "ph": "ph", "temperature_c": "temperature_c",
        },
        {"days": 5},
        {"nitrate_mg_l", "ammonia_mg_n_l", "nitrite_mg_n_l", "temperature_c"},
    ),
    "chloride": (
        {"nitrite_mg_n_l": "nitrite_mg_n_l", "chloride_mg_l": "chloride_mg_l"},
        {"volume_l": 60},
        {"nitrite_mg_n_l", "chloride_mg_l"},
    ),
    # One unit for 1,000 L, so that its mg of copper are the micrograms a litre.
    "medicine-volume": (
        {"copper_ug_l": "copper_mg_per_unit"},
        {"label_amount": 1, "label_for_l": 1_000},
        {"copper_ug_l"},
    ),
    "acclimate": ({"ph": "tank_ph", "temperature_c": "tank_temperature_c"}, {}, {"ph", "temperature_c"}),
}  # fmt: skip
SLOW = {"nitrogen-forecast"}
BESIDE = ("diagnose", "standing")


def named(one):
    beside = "".join(f",{key}={value}" for key, value in one.get("beside", {}).items())
    return f"{one['reading']}={one['value']}{beside}"


def values_of(*rows):
    """The readings of some rows; what is measured goes before what stands beside an ammonia."""
    beside = {key: value for one in rows for key, value in one.get("beside", {}).items()}
    return beside | {one["reading"]: one["value"] for one in rows}


def level(values, reading):
    if reading == "ammonia_mg_n_l":
        return ammonia_standing(
            values[reading], values.get("ph"), values.get("temperature_c")
        ).level
    return standing(reading, values[reading]).level


def answered(name, values):
    """A calculator's answer to those readings that it takes; None where it speaks of none, or refuses."""
    if name == "diagnose":
        return run(
            name, {"readings": {key: value for key, value in values.items() if key in DIAGNOSED}}
        )
    if name == "standing":
        return stands({key: value for key, value in values.items() if key in LOGGED})
    inputs, given, about = TAKES[name]
    if about.isdisjoint(values):
        return None
    taken = {there: values[here] for here, there in inputs.items() if here in values}
    try:
        return run(name, given | taken)
    except BadInput as bad:
        assert {key for key, _ in bad.problems} <= set(taken), bad
        return None


def stands(values):
    """How a tank stands in whose log are these readings, all of one day."""
    if not values:
        return None
    entries = [
        {"id": key, "at": "2026-11-28T12:00:00Z", "kind": "reading", "what": key, "value": value}
        for key, value in values.items()
    ]  # fmt: skip
    tank = {"id": "jar", "name": "Jar", "change": {"percent": 50, "every_days": 7}}
    try:
        return run("standing", {"tank": tank, "entries": entries, "today": "2026-11-28"})
    except BadInput as bad:
        assert all(key.endswith(".value") for key, _ in bad.problems), bad
        return None


def taken_by(name):
    """The readings that a calculator takes."""
    own = {"diagnose": DIAGNOSED, "standing": LOGGED}
    return own.get(name) or set(TAKES[name][0])


def case_of(values, *names):
    """All answers to some readings. A calculator is held to what kills among the readings it takes."""
    answers = {name: answered(name, values) for name in names}
    kills = [key for key in values if level(values, key) == "deadly"]
    return Case(values, kills, {name: one for name, one in answers.items() if one})


def held(case):
    """Every contradiction by its name, in the answers together and in each about its own readings."""
    wrong = {}
    for predicate in PREDICATES:
        found = predicate(case) if predicate not in OWN else []
        for name, one in case.answers.items() if predicate in OWN else ():
            takes = taken_by(name)
            own = Case(case.readings, [key for key in case.deadly if key in takes], {name: one})
            found += [f"{name}: {sentence}" for sentence in predicate(own)]
        if found:
            wrong[predicate.__name__] = found
    return wrong


OWN = {
    predicates.says_change_nothing_though_it_kills,
    predicates.is_calm_though_it_kills,
    predicates.feeds_where_water_kills,
}
ALONE = [values_of(one) for one in READINGS]


def test_the_table_is_large_and_every_reading_has_a_source():
    assert len(READINGS) >= 40
    for one in READINGS:
        assert one["source"] == NO_SOURCE or one["source"] in SOURCES, one
    assert set(LINE_SOURCES) <= set(SOURCES)


@pytest.mark.parametrize("one", READINGS, ids=named)
def test_the_lines_put_each_reading_where_others_put_it(one):
    beside = one.get("beside", {})
    if one["reading"] == "ammonia_mg_n_l":
        found = ammonia_standing(one["value"], beside.get("ph"), beside.get("temperature_c"))
    else:
        found = standing(one["reading"], one["value"])
    assert found == (one["band"], one["side"])


VERDICTS = {"deadly": "act", "harmful": "watch", "in-range": "calm"}
IN_A_LOG = [one for one in READINGS if LOGGED.issuperset(values_of(one))]


@pytest.mark.parametrize("one", IN_A_LOG, ids=named)
def test_a_tank_with_that_reading_alone_stands_in_its_band(one):
    values = values_of(one)
    worst = min((level(values, key) for key in values), key=list(VERDICTS).index)
    if one["reading"] == "nitrite_mg_n_l":  # one line, at which to act
        worst = "in-range" if nitrite_standing(one["value"]).level == "in-range" else "deadly"
    if (
        one["reading"] == "ammonia_mg_n_l" and one["value"] > 0
    ):  # none is calm; over a limit it acts
        beside = one.get("beside", {})
        acts = ammonia_acts(one["value"], beside.get("ph"), beside.get("temperature_c"))
        worst = "deadly" if acts else "harmful"
    answer = stands(values)
    if answer is not None:  # what no log may hold is refused
        assert answer["outputs"]["verdict"] == VERDICTS[worst]


def test_most_of_the_readings_are_tried_in_a_log():
    assert len(IN_A_LOG) >= 30
    assert sum(stands(values_of(one)) is None for one in IN_A_LOG) <= 3


@pytest.mark.parametrize("one", share_of(READINGS, 2), ids=named)
def test_alone_no_answer_harms(one):
    wrong = {name: held(case_of(values_of(one), name)) for name in (*BESIDE, *TAKES)}
    assert not any(wrong.values()), wrong


@pytest.mark.parametrize("one", share_of(READINGS[1:], 2), ids=named)
def test_alone_no_calculator_advises_what_another_forbids(one):
    assert held(case_of(values_of(one), *BESIDE, *set(TAKES) - {"ammonia-change"})) == {}


OUTSIDE = [one for one in READINGS if one["band"] != "in-range" or one["value"] == 6]


def goes_with(one, other):
    """Whether two readings can be of one tank: no reading twice."""
    keys = [{row["reading"], *row.get("beside", ())} for row in (one, other)]
    return keys[0].isdisjoint(keys[1])


PAIRS = [pair for pair in combinations(OUTSIDE, 2) if goes_with(*pair)]


@pytest.mark.parametrize("reading", sorted({one["reading"] for one in READINGS}))
def test_in_pairs_no_calculator_advises_what_another_forbids(reading):
    names = [*BESIDE, *(set(TAKES) - SLOW - {"ammonia-change"})]
    wrong = {}
    for pair in share_of([pair for pair in PAIRS if pair[0]["reading"] == reading], 7):
        found = held(case_of(values_of(*pair), *names))
        wrong |= {f"{named(pair[0])} {named(pair[1])}": found} if found else {}
    assert wrong == {}


# The forecast takes a quarter of a second, so it goes through every ninth pair that it reads both of.
IN_FORECAST = set(TAKES["nitrogen-forecast"][0])
SAMPLED = [
    pair for pair in PAIRS if IN_FORECAST.issuperset(values_of(*pair)) and len(values_of(*pair)) > 1
][::9]


@pytest.mark.parametrize("pair", SAMPLED, ids=lambda pair: " ".join(map(named, pair)))
def test_in_pairs_the_forecast_advises_nothing_that_another_forbids(pair):
    assert held(case_of(values_of(*pair), "diagnose", "nitrogen-forecast", "free-ammonia")) == {}


def test_the_sample_has_ammonia_beside_each_other_reading():
    assert len(SAMPLED) >= 15
    beside = {key for pair in SAMPLED for key in values_of(*pair)}
    assert beside == IN_FORECAST


def test_there_are_many_pairs():
    assert len(PAIRS) >= 300


@pytest.mark.parametrize(
    ("ammonia", "nitrite", "ph"),
    [
        (2, 0, 6),  # 3 would bring nitrite over its own line within the day
        (3, 0, 8),
        (0.9, 0, 8),
        (0.3, 0, 8.2),
        (0, 0.1, 7),
        (0, 0.7, 7),
        (0, 9.2, 7),
        (0, 0, 7),
    ],
)
def test_the_forecast_puts_a_start_in_the_band_of_the_table(ammonia, nitrite, ph):
    """Toxic ammonia of 0.05 mg N/L, and nitrite of 0.6, kill in one calculator as in every other."""
    start = {"start_ammonia_mg_n_l": ammonia, "start_nitrite_mg_n_l": nitrite, "ph": ph, "days": 1}
    answer = run("nitrogen-forecast", start | {"temperature_c": 25, "filter_maturity_percent": 100})
    worst = {ammonia_standing(ammonia, ph, 25).level, nitrite_standing(nitrite).level}
    verdict = answer["outputs"]["verdict"]
    assert (verdict == "deadly") == ("deadly" in worst)
    assert (verdict in ("deadly", "harmful", "watch")) == (worst != {"in-range"})


def test_nitrite_has_one_line_at_which_to_act():
    """British Columbia's maximum at under 2 mg/L of chloride: diagnosis, shelf and forecast act from it."""
    line = LINES["nitrite_mg_n_l"].harmful_high
    finding = read_yaml(ROOT / "species" / "findings.yml")["nitrite-shows"]
    assert finding["derived_from"]["above"] == line == 0.06
    for value, acts in ((line * 0.97, False), (line * 1.03, True)):
        urgent = run("diagnose", {"readings.nitrite_mg_n_l": value})["outputs"]["urgent"]
        here = stands({"nitrite_mg_n_l": value})["outputs"]["verdict"]
        start = {"feed_g_week": 0, "plants": [], "start_nitrite_mg_n_l": value, "days": 1}
        ahead = run("nitrogen-forecast", start)["outputs"]["verdict"]
        assert (urgent, here == "act", ahead == "harmful") == (acts, acts, acts)


A_RATE = re.compile(r"([\d.]+(?: to [\d.]+)?) °C(?: \([^)]*\))? an hour")
PROSE = [
    *sorted((ROOT / "docs").glob("*.md")), *sorted((ROOT / "docs" / "guides").glob("*.md")),
    *sorted((ROOT / "species" / "problems").glob("*.yml")),
]  # fmt: skip
EXTREME = [
    {"temperature_c": value} for value in (5, 13, 31, 36)
]  # far too cold, cold, warm, far too warm


def test_warming_and_cooling_go_at_one_pace_everywhere():
    """About 1 °C an hour (common practice, no source): no page and no answer names another pace."""
    told = [path.read_text(encoding="utf-8") for path in PROSE]
    for readings in EXTREME:
        names = ("diagnose", "nitrogen-forecast", "stocking", "oxygen", "hardness")
        answers = [answered(name, readings) for name in names]
        told += [" ".join(predicates.sentences(one)) for one in answers if one]
    paces = [pace for text in told for pace in A_RATE.findall(text)]
    assert len(paces) > 10
    assert set(paces) == {"1"}


WORDS = {  # what the first step against a reading that kills must speak of
    ("temperature_c", "low"): ("heater", "an hour at most"),
    ("temperature_c", "high"): ("heater", "an hour at most", "add air"),
    ("ph", "low"): ("Put in nothing that raises it", "ammonia"),
    ("ph", "high"): ("no acid", "ammonia", "Add air"),
    ("nitrate_mg_l", "high"): ("a quarter",),
    ("nitrite_mg_n_l", "high"): ("Stop feeding",),
    ("oxygen_mg_l", "low"): ("ripple",),
    ("ammonia_mg_n_l", "high"): ("Stop feeding",),
}


@pytest.mark.parametrize("one", [one for one in READINGS if one["band"] == "deadly"], ids=named)
def test_a_reading_that_kills_is_urgent_alone_with_a_first_step_of_its_own(one):
    answer = answered("diagnose", values_of(one))
    assert answer["outputs"]["urgent"]
    for words in WORDS[one["reading"], one["side"]]:
        assert words.lower() in answer["outputs"]["first_action"].lower()
    assert "nothing yet" not in str(answer["notes"])
    assert answer["notes"][0]["level"] == "danger"


@pytest.mark.parametrize("one", [one for one in READINGS if one["band"] == "harmful"], ids=named)
def test_a_reading_that_harms_is_said_and_is_not_change_nothing_yet(one):
    answer = answered("diagnose", values_of(one))
    assert "nothing yet" not in answer["outputs"]["first_action"] + str(answer["notes"])
    told = [note for note in answer["notes"] if note["level"] != "info"]
    assert told


@pytest.mark.parametrize("value", [17, 20, 24])
def test_cool_tanks_that_are_well_are_no_alarm(value):
    outputs = run("diagnose", {"readings": {"temperature_c": value}})["outputs"]
    assert not outputs["urgent"]


def test_what_kills_first_is_said_first():
    readings = {"oxygen_mg_l": 1, "temperature_c": 36, "ph": 4, "nitrate_mg_l": 400}
    action = run("diagnose", {"readings": readings})["outputs"]["first_action"]
    places = [
        action.index(words) for words in ("ripple", "Unplug the heater", "raises it", "Nitrate")
    ]
    assert places == sorted(places)
    assert action.count("hange a ") == 1


@pytest.mark.parametrize("kh", [0, None])
@pytest.mark.parametrize("temperature", [25, None])
def test_ammonia_in_acid_soft_water_never_gives_half_the_water_now(kh, temperature):
    """By the speciation model a change with a tap of pH 7.8 and 8 °dH takes it to the act line."""
    readings = {"ph": 6.0, "kh_dh": kh, "ammonia_mg_n_l": 3, "temperature_c": temperature}
    answer = run("diagnose", {"readings": readings})
    assert answer["outputs"]["urgent"]
    assert not [one for one in predicates.sentences(answer) if predicates.orders(one)]


def test_every_listed_cause_says_the_same_of_the_water_as_the_banner():
    from calculators.core.run import find
    from calculators.diagnose.diagnosis_at_tank import diagnosis_and_question

    given = {
        "readings": {"ph": 6.0, "kh_dh": 0, "ammonia_mg_n_l": 3},
        "findings": ["animals-dying"],
    }
    answer = run("diagnose", given)
    shown = diagnosis_and_question(
        find("diagnose"), answer, {"place": "animals", "asked": []}, "metric"
    )
    for cause in shown["causes"]:
        made = {"outputs": {"first_action": cause["first_action"]}, "notes": []}
        assert not [one for one in predicates.sentences(made) if predicates.orders(one)], cause[
            "name"
        ]


@pytest.mark.parametrize("cause", sorted(CAUSES))
def test_a_problem_that_orders_a_change_says_what_to_do_without_it(cause):
    record = CAUSES[cause]
    made = {"outputs": {"first_action": record.first_action}, "notes": []}
    if any(predicates.LARGE.search(one) for one in predicates.sentences(made)):
        assert record.besides
    if record.besides:
        assert not predicates.LARGE.search(record.besides)


def test_gasping_in_cold_water_mentions_the_heater():
    outputs = run("diagnose", {"findings": ["fish-gasping"], "readings": {"temperature_c": 19}})[
        "outputs"
    ]
    assert "heater" in outputs["first_action"]
    warm = run("diagnose", {"findings": ["fish-gasping"], "readings": {"temperature_c": 25}})[
        "outputs"
    ]
    assert "heater" not in warm["first_action"]


def test_findings_that_mean_danger_agree_with_the_lines():
    for key, finding in FINDINGS.items():
        reading = (finding.input or "").removeprefix("readings.")
        if not finding.danger or reading not in LINES:
            continue
        edge = finding.up_to if finding.above is None else finding.above + 1e-9
        assert standing(reading, edge).level != "in-range", key
    for reading in ("nitrate_mg_l", "ph", "temperature_c", "oxygen_mg_l", "nitrite_mg_n_l"):
        assert reading in {key for key, _ in STEPS}


@pytest.mark.parametrize("value", [333, 395])
def test_nitrate_has_one_band_everywhere(value):
    assert standing("nitrate_mg_l", value).level == "deadly"
    plan = run("dosing", {"now_mg_l": value - 9, "rise_mg_l": 9, "schedule": "once"})
    assert "danger" in [note["level"] for note in plan["notes"] if "nitrate to" in note["text"]]
    assert run("diagnose", {"readings": {"nitrate_mg_l": value}})["outputs"]["urgent"]


def test_chloride_shifts_where_nitrite_harms_by_the_published_steps():
    """British Columbia's maxima: 0.06 below 2 mg/L of chloride, 0.18 at 4 to 6, 0.60 above 10."""
    assert [nitrite_standing(0.1, chloride).level for chloride in (None, 0, 3, 5, 50)] == [
        "harmful", "harmful", "in-range", "in-range", "in-range",
    ]  # fmt: skip
    assert nitrite_standing(0.2, 5).level == "harmful"
    assert nitrite_standing(0.7, 50).level == "deadly"


def made_up(*texts, action="", **outputs):
    notes = [{"level": "info", "text": text} for text in texts]
    return {"outputs": {"first_action": action, **outputs}, "notes": notes}


ACID = {"ph": 6.0, "ammonia_mg_n_l": 3}
HALF = made_up(action="Change half the water now.")
NOT_YET = made_up("Do not change water with this tap yet.")
HIGH = {"nitrate_mg_l": 400}
CONTRADICTORY = [
    ("orders_a_change_and_forbids_it", ACID, [], {"diagnose": HALF, "free-ammonia": NOT_YET}),
    ("orders_a_large_change_in_acid_water", ACID, [], {"diagnose": HALF}),
    (
        "says_change_nothing_though_it_kills",
        {},
        ["ph"],
        {"diagnose": made_up("Change nothing yet.")},
    ),
    (
        "is_calm_though_it_kills",
        HIGH,
        [*HIGH],
        {"nitrogen-forecast": made_up("Steady: all is level.")},
    ),
    ("is_calm_though_it_kills", HIGH, [*HIGH], {"water-change": made_up("No change is needed.")}),
    ("raises_ph_with_ammonia", ACID, [], {"hardness": made_up("Raise KH with harder water.")}),
    (
        "warms_and_cools",
        {},
        [],
        {"diagnose": made_up("Warm by 1 °C."), "oxygen": made_up("Cool it.")},
    ),
    ("warms_or_cools_with_no_limit", {}, [], {"diagnose": made_up("Warm the water now.")}),
    (
        "darkens_where_oxygen_kills",
        {},
        ["oxygen_mg_l"],
        {"diagnose": made_up("Turn the light off.")},
    ),
    ("feeds_where_water_kills", {}, [*HIGH], {"nitrogen-forecast": made_up("Feed more.")}),
    ("is_not_urgent_though_it_kills", {}, ["ph"], {"diagnose": made_up(urgent=False)}),
]


@pytest.mark.parametrize(("name", "readings", "kills", "answers"), CONTRADICTORY)
def test_each_predicate_can_fail(name, readings, kills, answers):
    predicate = getattr(predicates, name)
    assert predicate(Case(readings, kills, answers))
    calm = {calculator: made_up(urgent=True) for calculator in answers}
    assert predicate(Case(readings, kills, calm)) == []


def test_every_predicate_is_shown_to_fail():
    assert {one[0] for one in CONTRADICTORY} == {one.__name__ for one in PREDICATES}
