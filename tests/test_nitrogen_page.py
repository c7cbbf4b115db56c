"""The page of the nitrogen model says what the code does: every rate, constant and state, with sources."""

import ast
import inspect
import re

import pytest

from calculators.core.numbers import show_number
from calculators.science.nitrogen import (
    alkalinity,
    edges,
    feed_fate,
    model,
    nitrifiers,
    plant_rates,
    right_side,
    soil_pools,
    steady,
    transport,
)
from calculators.science.nitrogen.forecast_tank import Rates
from calculators.science.nitrogen.start import build
from calculators.science.water import chemistry
from scripts.pages.calculators import nitrogen_model
from scripts.pages.calculators.calculator_page import linked
from scripts.pages.calculators.nitrogen_equations import (
    CONSTANTS,
    RATES,
    constants_of,
    documentation,
)
from scripts.pages.calculators.nitrogen_model import formula, model_page
from scripts.pages.calculators.nitrogen_names import ADDRESS, TITLE
from scripts.pages.search import entries
from tests.nitrogen_tanks import LEAN

# They change units, and carry no knowledge of tanks.
IN_PERCENT = {"CRITICAL_N_PERCENT"}  # as CRITICAL_N, which the page has
# Working lines of the words that other calculators' pages explain, and the share of a run read off.
WORDS = {"STEADY_MG_L_WEEK", "LAST_SHARE"}
# Of the weekly budget: a sum, a rule of three, and when to stop reckoning.
NO_RATE = {"days_to_nothing", "within_reason", "nitrate_of"}
ALL = [constant for module in CONSTANTS.values() for constant in constants_of(module)]


@pytest.fixture(scope="module")
def page(library):
    return model_page(library)


def own(module):
    """The public functions that a module itself defines."""
    return {
        name: function
        for name, function in vars(module).items()
        if inspect.isfunction(function) and function.__module__ == module.__name__
    }


def test_every_rate_in_the_code_is_on_the_page(page):
    listed = {function for rates in RATES.values() for function, _ in rates}
    for module in (feed_fate, transport, nitrifiers, alkalinity, soil_pools, plant_rates, steady):
        for name, function in own(module).items():
            assert function in listed or name in NO_RATE, f"{module.__name__}.{name}"
    for one in documentation():
        assert str(nitrogen_model.escape(f"{one.title}.")) in page


def test_every_function_that_the_right_hand_side_calls_is_explained():
    called = {
        name
        for name, value in vars(right_side).items()
        if inspect.isfunction(value) and value.__module__ != right_side.__name__
    }
    explained = {function.__name__ for rates in RATES.values() for function, _ in rates}
    assert called
    assert called <= explained


@pytest.mark.parametrize("module", CONSTANTS.values(), ids=CONSTANTS)
def test_every_number_of_the_model_says_what_it_is(module):
    tree = ast.parse(inspect.getsource(module))
    bare = {
        target.id
        for node in tree.body
        if isinstance(node, ast.Assign)
        for target in node.targets
        if isinstance(target, ast.Name) and target.id.isupper()
    }
    assert bare <= IN_PERCENT | WORDS
    assert constants_of(module)


def test_every_constant_is_on_the_page_with_its_value_and_a_source_or_a_reason(page, library):
    for one in ALL:
        place = f'id="{one.name.lower().replace("_", "-")}"'
        assert place in page
        row = page[page.index(place) :].split("</tr>")[0]
        assert f"<td><b>{show_number(one.value)}" in row, one.name
        assert one.about.origin, one.name
        assert one.about.sure in library.vocabulary["sure"]
        if one.about.source:
            assert one.about.source in library.sources, one.name
        elif one.about.sure != "uncertain":
            assert one.name in {"NITROGEN_OF_PROTEIN", "DRY_SHARE_FLOATING"}, (
                f"{one.name}: on whose word?"
            )


def test_every_source_named_is_listed_once_at_the_foot(page):
    named = set(re.findall(r'href="#source-([\w-]+)"', page))
    listed = re.findall(r'<span id="source-([\w-]+)">', page)
    assert named == set(listed)
    assert len(listed) == len(set(listed)) > 15


def known_numbers():
    """Every number that an equation may print: constants, and what follows from them."""
    found = {show_number(one.value) for one in ALL} | {f"{one.value:.3g}" for one in ALL}
    found |= {
        f"{one.value / 10:g}" for one in ALL if one.name.endswith(("_N", "ROOTED", "FLOATING"))
    }
    found |= {f"{100 * one.value:g}" for one in ALL}
    found |= {f"{chemistry.N:.3f}", f"{chemistry.NITRATE_PER_N:.3f}", f"{chemistry.MEQ_PER_DH:.4f}"}
    found |= {f"{one.value:g}" for one in ALL}
    found |= {"0.999", f"{ALL[0].value:.3f}", "3.0"}
    return {number.replace(",", "") for number in found}


def test_no_equation_prints_a_number_that_the_code_does_not_use():
    """So that a constant cannot be changed and its equation left behind."""
    known = known_numbers()
    for one in documentation():
        for number in re.findall(r"\d+\.\d+", one.equation):
            assert number in known, f"{one.title}: {number}"


def test_the_states_are_those_that_the_solver_follows():
    tank = LEAN
    started, states = build(tank)
    cohorts = len(started.cohorts)
    named = len(model.OF_TANK) + cohorts * len(model.OF_COHORT) + len(model.ADDED_UP)
    assert named == len(states)
    assert len(model.OF_TANK) == model.FIRST_COHORT
    assert -len(model.ADDED_UP) == model.NITRIFIED
    assert model.ALKALINITY == model.FIRST_COHORT - 1


def test_the_edges_of_the_band_are_the_published_ones():
    """20, 30, 40 % kept (Summerfelt and Penne); 1 and 30 mg N a m² and day around 5 (Veraart; streams)."""
    least, most = edges.edges(Rates())
    assert (most.retained_percent, least.retained_percent) == (20, 40)
    assert 5 * most.denitrification == pytest.approx(1)
    assert 5 * least.denitrification == pytest.approx(30)


def test_powers_are_raised_and_indices_lowered():
    assert formula("1.07^(T − 20)") == "<code>1.07<sup>(T − 20)</sup></code>"
    assert formula("D_max · N") == "<code>D<sub>max</sub> · N</code>"
    assert formula("a < b_c") == "<code>a &#60; b<sub>c</sub></code>"


def test_both_calculators_the_book_and_search_lead_to_it(site, library):
    for name in ("nitrogen-forecast", "nitrogen-balance", "trend"):
        text = (site / "calculators" / name / "index.html").read_text(encoding="utf-8")
        assert f'<a href="../../{ADDRESS}">{TITLE}</a>' in text
    about = (site / "about" / "index.html").read_text(encoding="utf-8")
    assert f'href="../{ADDRESS}"' in about
    assert [one.title for one in entries(library, {}) if one.address == ADDRESS] == [TITLE]
    made = (site / ADDRESS / "index.html").read_text(encoding="utf-8")
    assert "<script>" not in made
    assert "Michaelis-Menten" in made


def test_a_paragraph_that_names_no_page_stays_text():
    assert linked("a * b") == "a &#42; b"
