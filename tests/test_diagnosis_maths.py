"""Bayes' rule and expected information, against textbook figures and a second way of computing."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import entropy

from calculators.diagnose import likelihood
from calculators.diagnose.case_read import read_case
from calculators.diagnose.cause_posterior import posterior
from calculators.diagnose.likelihood import ratio, shares
from calculators.diagnose.next_check import answer_bits, columns, leading
from calculators.diagnose.problem_table import CAUSES, FINDINGS, QUESTIONS, covers_all
from calculators.science.evidence import weighing
from calculators.science.evidence.weighing import SOMETHING_ELSE, normal, together
from scripts.setup.paths import ROOT
from tests.plain_yaml import read_yaml

SHARE = st.floats(0.001, 0.6)
ODDS = st.sampled_from(sorted(likelihood.ODDS.values()))


def test_a_screening_test_as_the_textbooks_have_it():
    """Eddy 1982 (MEM): 1 % have it, the test finds 80 %, and wrongly 9.6 %: 7.8 % after a yes."""
    found = 0.8 / 0.096
    assert normal([0.01 * found, 0.99])[0] == pytest.approx(0.078, abs=0.0005)
    assert normal([0.01 * 0.2 / 0.904, 0.99])[0] == pytest.approx(0.0022, abs=0.0001)


@given(SHARE, ODDS)
def test_a_question_of_yes_or_no_raises_the_odds_by_the_class(base, odds):
    shown = shares({"sign": base}, {"sign": odds}, ())["sign"]
    assert shown / (1 - shown) == pytest.approx(odds * base / (1 - base))


@given(SHARE, ODDS)
def test_present_and_absent_balance(base, odds):
    """Averaged over tanks without the cause, a likelihood ratio is 1: neither answer is free."""
    usual, shown = {"sign": base}, shares({"sign": base}, {"sign": odds}, ())
    there, gone = ratio(shown, usual, "sign", ()), ratio(shown, usual, None, ["sign"])
    assert base * there + (1 - base) * gone == pytest.approx(1)
    assert (there > 1) == (gone < 1) or odds == 1


@given(st.lists(st.tuples(st.floats(0.01, 0.24), ODDS), min_size=2, max_size=4))
def test_bands_of_one_reading_add_up(bands):
    usual = {str(number): share for number, (share, _) in enumerate(bands)}
    odds = {str(number): odd for number, (_, odd) in enumerate(bands)}
    shown = shares(usual, odds, ())
    rest = 1 - sum(shown.values())
    usual_rest = 1 - sum(usual.values())
    mean = sum(usual[key] * ratio(shown, usual, key, ()) for key in usual)
    assert mean + usual_rest * ratio(shown, usual, None, list(usual)) == pytest.approx(1)
    assert rest > 0


@given(SHARE)
def test_a_hallmark_nearly_always_shows(base):
    shown = shares({"sign": base}, {"sign": 16.0}, ["sign"])
    assert shown["sign"] == pytest.approx(likelihood.HALLMARK_SHOWS)


def test_neutral_says_nothing_and_classes_stand_in_order():
    base = {"sign": 0.12}
    assert ratio(shares(base, {"sign": 1.0}, ()), base, "sign", ()) == pytest.approx(1)
    odds = [
        likelihood.ODDS[key] for key in ("strong-for", "for", "neutral", "against", "rules-out")
    ]
    assert odds == sorted(odds, reverse=True)
    assert odds[1] * odds[3] == 1, "for and against weigh the same"


def test_several_answers_count_less_than_their_product_but_the_first_in_full():
    assert together([2.0]) == 2.0
    assert 2.0 < together([2.0, 1.0]) < 3.0
    assert together([-1.0, -2.0]) == pytest.approx(-3.0 * weighing.SHARED)
    assert together([]) == 0


def test_the_posterior_is_what_the_records_say_computed_another_way():
    """From the YAML, with numpy, for signs that stand alone and imply nothing."""
    folder = ROOT / "species" / "problems"
    records = {p.stem: read_yaml(p) for p in folder.glob("*.yml")}
    seen, gone = ["coat-black-tufts", "flow-strong", "dying-leaves-left"], ["snails-many"]
    signs = read_yaml(ROOT / "species" / "findings.yml")
    base = np.array([likelihood.USUAL[signs[key]["usual"]] for key in [*seen, *gone]])
    slugs, logs = sorted(records), []
    for slug in slugs:
        rows = {row["finding"]: row for row in records[slug]["evidence"]}
        odds = np.array(
            [likelihood.ODDS[rows[k]["strength"]] if k in rows else 1.0 for k in [*seen, *gone]]
        )
        shown = odds * base / (1 - base + odds * base)
        marks = np.array([rows.get(k, {}).get("hallmark", False) for k in [*seen, *gone]])
        shown[marks] = 0.97
        there = np.array([True] * len(seen) + [False] * len(gone))
        evidence = np.log(np.where(there, shown / base, (1 - shown) / (1 - base)))
        # flow-strong excludes surface-still, which counts where nothing is said of flow-strong
        if "flow-strong" not in rows and "surface-still" in rows:
            b = likelihood.USUAL[signs["surface-still"]["usual"]]
            k = likelihood.ODDS[rows["surface-still"]["strength"]]
            evidence = np.append(evidence, np.log((1 - k * b / (1 - b + k * b)) / (1 - b)))
        logs.append(
            math.log(likelihood.PRIOR_WEIGHT[records[slug]["prior"]])
            + 0.8 * evidence.sum() + 0.2 * max(0, evidence.max())
        )  # fmt: skip
    weights = np.append(np.exp(logs), likelihood.SOMETHING_ELSE_WEIGHT)
    expected = 0.95 * weights / weights.sum()
    found = posterior(read_case(seen, gone, {}), ())
    for slug, chance in zip(slugs, expected, strict=False):
        assert found[slug] == pytest.approx(chance, rel=1e-9), slug
    assert found[SOMETHING_ELSE] == pytest.approx(expected[-1] + 0.05)
    assert sum(found.values()) == pytest.approx(1)


@pytest.mark.parametrize(
    "question", ["readings.nitrate_mg_l", "coat-hard-green-dots", "cover_percent"]
)
def test_expected_information_is_the_entropy_it_takes_away(question):
    """I(cause; answer) = H(cause) - mean H(cause | answer), by scipy's entropy."""
    chances = posterior(read_case(["growth-slow-all"], [], {}), ())
    told = columns(question, chances, leading(chances))
    prior = np.array([chance for _, chance, _ in told])
    assert prior.sum() == pytest.approx(1)
    shown = np.array([[given[key] for key in QUESTIONS[question]] for _, _, given in told])
    shown = np.hstack([shown, 1 - shown.sum(axis=1, keepdims=True)])
    joint = prior[:, None] * shown
    marginal = joint.sum(axis=0)
    left = sum(
        share * entropy(joint[:, at] / share, base=2)
        for at, share in enumerate(marginal)
        if share > 1e-12
    )
    bits = answer_bits(told, tuple(QUESTIONS[question]))
    assert bits == pytest.approx(entropy(prior, base=2) - left, abs=1e-9)
    assert bits > 0


def test_bands_without_gaps_are_certain_to_hold_one():
    for answers in QUESTIONS.values():
        bands = [FINDINGS[key] for key in answers]
        if len(bands) > 1 and covers_all(bands):
            assert sum(answers.values()) == pytest.approx(1)
    assert not covers_all([FINDINGS["nitrate-low"], FINDINGS["nitrate-enough"]])


def test_bands_take_in_their_upper_end():
    for figure, key in [
        (2, "nitrate-near-zero"),
        (2.01, "nitrate-low"),
        (5, "nitrate-low"),
        (41, "nitrate-high"),
    ]:
        case = read_case([], [], {"readings.nitrate_mg_l": figure})
        assert case.answers["readings.nitrate_mg_l"].present == key


def test_what_a_finding_implies_counts_once_and_only_where_it_is_not_named():
    case = read_case(["gasp-before-dawn-only"], [], {})
    assert case.follows["fish-gasping"] == (True, frozenset({"gasp-before-dawn-only"}))
    assert case.follows["animals-well"][0] is False
    assert "fish-gasping" in CAUSES["dawn-low-oxygen"].rows
    both = posterior(read_case(["gasp-before-dawn-only", "fish-gasping"], [], {}), ())
    assert both["dawn-low-oxygen"] >= posterior(case, ())["dawn-low-oxygen"]
    none = read_case([], ["fish-gasping"], {})
    assert none.follows["gasp-all-day"][0] is False
