"""A figure stands in one place: no constant is declared twice, and prose agrees with the constant it shows.

A calculator's page text is a docstring, which cannot format a constant, so each such figure is held here.
"""

import pytest

from calculators.core.listing import load_all
from calculators.core.numbers import show_number
from calculators.core.run import run
from calculators.core.wording import PLACES
from calculators.science.animals.feeding import AMMONIA_N_PER_PROTEIN
from calculators.science.nitrogen.alkalinity import CACO3_MG_PER_N
from calculators.science.nitrogen.constants import EXCRETED_PER_PROTEIN
from calculators.science.nitrogen.filter_load import LEAST_FILM, MOST_FILM
from calculators.science.nitrogen.plant_constants import (
    CRITICAL_N_PERCENT,
    DRY_SHARE_ROOTED,
    FLOATING_LAYER_G_M2,
    HEALTHY_N_FLOATING,
    HEALTHY_N_ROOTED,
)
from calculators.science.water.ammonia import ACT_NH3_MG_N_L, WATCH_NH3_MG_N_L
from calculators.science.water.chemistry import NITROGEN_SHARE_OF_PROTEIN
from scripts.structure.sizes import figures_declared_twice
from tests.own_modules import own_modules

PAGE_TEXT = {
    "free-ammonia": (
        f"{WATCH_NH3_MG_N_L:g} mg/L NH₃ nitrogen, act from the chronic limit or {ACT_NH3_MG_N_L:g} mg/L",
    ),
    "nitrogen-balance": (
        f"{AMMONIA_N_PER_PROTEIN:g} g of ammonia nitrogen for each gram of protein",
        f"{show_number(CACO3_MG_PER_N, 2)} mg of calcium carbonate a mg of nitrogen nitrified",
        f"{FLOATING_LAYER_G_M2:g} g dry mass a m², {HEALTHY_N_FLOATING / 10:.1f} % nitrogen",
        f"{100 * DRY_SHARE_ROOTED:g} % dry matter, {HEALTHY_N_ROOTED / 10:g} %",
        f"bacteria {LEAST_FILM:g} to {MOST_FILM:g} times the water's surface",
    ),
    "nitrogen-forecast": (f"Below {CRITICAL_N_PERCENT} % of dry mass leaves brown",),
    "stocking": (f"{AMMONIA_N_PER_PROTEIN:g} g of nitrogen for each gram of protein eaten",),
    "trimmings": (f"protein is {100 * NITROGEN_SHARE_OF_PROTEIN:g} % nitrogen",),
}


def test_no_constant_of_one_name_and_number_stands_in_two_rooms():
    modules = own_modules()
    assert len(modules) > 600
    assert figures_declared_twice(modules) == {}


@pytest.mark.parametrize("name", PAGE_TEXT)
def test_the_text_of_a_page_shows_the_figures_of_its_constants(name):
    text = " ".join(load_all()[name].description.split())
    for words in PAGE_TEXT[name]:
        assert words in text, words


def test_feed_gives_the_same_nitrogen_wherever_it_is_asked():
    """Timmons and Ebeling's 0.092 g for each gram of protein: 10 g of feed with 40 % in a week."""
    by_hand = 1000 * 10 / 7 * 0.40 * 0.092
    balance = run("nitrogen-balance", {"feed_g_week": 10, "protein_percent": 40})["outputs"]
    assert balance["ammonia_n_mg_day"] == pytest.approx(by_hand)
    assert pytest.approx(0.092) == EXCRETED_PER_PROTEIN


def test_places_have_one_name_in_the_records_and_in_sentences(library):
    labels = {key: words["label"] for key, words in library.vocabulary["place"].items()}
    assert {key: name.removeprefix("the ") for key, name in PLACES.items()} == labels
    assert library.places.keys() == PLACES.keys()
    place = next(one for one in load_all()["pick"].inputs if one.key == "place")
    shown = dict(zip(place.choices, place.words, strict=True))
    assert {key: shown[key] for key in labels} == labels
