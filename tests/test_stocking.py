import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.core.result import BadInput
from calculators.core.run import run
from calculators.science.animals.animal_table import ANIMALS
from calculators.science.animals.feeding import excreted_ammonia_n_g, feed_nitrogen_g, living_mass_g
from calculators.science.animals.respiration import resting_oxygen_mg_h
from calculators.science.animals.swimming_room import common_length_mm

ADDING_UP = (
    "biomass_g", "feed_g_week", "ammonia_n_mg_day", "load_mg_n_l_day", "oxygen_mg_h",
    "feed_low_g_week", "feed_high_g_week", "oxygen_active_mg_h", "nitrate_rise_mg_l_week",
)  # fmt: skip


def ask(*rows, **more):
    keys = ("kind", "count", "mean_length_mm")
    return run("stocking", {"animals": [dict(zip(keys, row, strict=True)) for row in rows], **more})


# MEM: P_TAN = F x PC x 0.092 (Timmons and Ebeling); the figure was seen in two public programs, not
# in the book. Expected values by hand.
@pytest.mark.parametrize(
    ("feed", "protein", "nitrogen", "ammonia"),
    [(1, 45, 0.0720, 0.0414), (2, 40, 0.128, 0.0736), (1, 35, 0.056, 0.0322)],
)
def test_nitrogen_from_feed_by_hand(feed, protein, nitrogen, ammonia):
    assert feed_nitrogen_g(feed, protein) == pytest.approx(nitrogen)
    assert excreted_ammonia_n_g(feed, protein) == pytest.approx(ammonia)


# Clarke and Johnston 1999, abstract: a fish at 30 °C uses about six times what one at 0 °C does, mean
# Q10 of 1.83 from 0 to 30 °C, exponent 0.80 of mass.
def test_oxygen_rises_with_warmth_as_the_source_says():
    ratio = resting_oxygen_mg_h(50, 30) / resting_oxygen_mg_h(50, 0)
    assert ratio == pytest.approx(6, abs=0.25)
    assert ratio ** (1 / 3) == pytest.approx(1.83, abs=0.01)
    assert resting_oxygen_mg_h(10, 25) / resting_oxygen_mg_h(1, 25) == pytest.approx(10**0.80)


# Their general equation over all temperatures, ln R = 0.80 ln M - 5.43 (mmol/h), is a separate fit: it
# must cross the temperature curve somewhere in the middle of the range that was studied.
def test_the_sources_two_equations_meet_in_the_middle_of_its_range():
    general = math.exp(0.80 * math.log(50) - 5.43) * 31.998
    assert resting_oxygen_mg_h(50, 2) < general < resting_oxygen_mg_h(50, 20)


# Froese 2006 and the FishBase manual: 10 g at 10 cm in order of magnitude, exponents of 2.5 to 3.5.
@pytest.mark.parametrize("key", [key for key, kind in ANIMALS.items() if kind.group == "fish"])
def test_fish_weigh_what_fish_of_their_length_weigh(key):
    kind = ANIMALS[key]
    assert 5 <= living_mass_g(10, kind.a, kind.b) <= 20
    assert 2.5 <= kind.b <= 3.5


# Sethi and others 2012: ponds W = 0.000006 L^3.205 in g and mm, a stout river prawn.
@pytest.mark.parametrize(
    "key",
    ["neocaridina-davidi", "caridina-multidentata", "caridina-logemanni", "palaemon-paludosus"],
)
def test_dwarf_shrimp_are_slighter_than_river_prawns_would_be(key):
    kind = ANIMALS[key]
    for length in (20, 40):
        prawn = 0.000006 * length**3.205
        assert prawn / 2 < living_mass_g(length / 10, kind.a, kind.b) < prawn


def test_sums_by_hand():
    found = ask(("neocaridina-davidi", 10, 20), volume_l=50, protein_percent=40)["outputs"]
    kind = ANIMALS["neocaridina-davidi"]
    mass = 10 * kind.a * 2**kind.b
    feed = 7 * mass * (kind.feed_low + kind.feed_high) / 200
    assert found["biomass_g"] == pytest.approx(mass)
    assert found["feed_g_week"] == pytest.approx(feed)
    assert found["ammonia_n_mg_day"] == pytest.approx(1000 * feed / 7 * 0.40 * 0.092)
    assert found["load_mg_n_l_day"] == pytest.approx(found["ammonia_n_mg_day"] / 50)
    assert found["nitrate_rise_mg_l_week"] == pytest.approx(
        7 * found["load_mg_n_l_day"] * 4.42680, rel=1e-4
    )


def test_two_rows_add_up_and_the_middle_lies_between_the_ends():
    fish, snail = ("danio-rerio", 6, 35), ("physella-acuta", 20, 8)
    both, one, other = (ask(*rows)["outputs"] for rows in ((fish, snail), (fish,), (snail,)))
    for key in ADDING_UP:
        total = both[key]
        assert total == pytest.approx(one[key] + other[key])
    assert both["feed_low_g_week"] < both["feed_g_week"] < both["feed_high_g_week"]


def test_unknown_kind_is_refused_with_the_nearest():
    with pytest.raises(BadInput) as bad:
        ask(("danio-rario", 2, 30), ("danio-rerio", 2.5, 30))
    (kind, message), (count, _) = bad.value.problems
    assert (kind, count) == ("animals[1].kind", "animals[2].count")
    assert "did you mean danio-rerio?" in message


def test_no_animals_is_an_answer():
    answer = ask()
    assert {answer["outputs"][key] for key in ADDING_UP} == {0}
    assert answer["outputs"]["hours_to_no_oxygen"] is None
    assert len(answer["notes"]) == 1


def levels_and_text(answer):
    return {note["level"] for note in answer["notes"]}, " ".join(n["text"] for n in answer["notes"])


def test_shrimp_alone_feed_plants_little_and_copper_is_named():
    _, text = levels_and_text(ask(("neocaridina-davidi", 40, 20), volume_l=54))
    assert "fast plants may run short" in text
    assert "copper" in text
    _, text = levels_and_text(ask(("danio-rerio", 8, 35)))
    assert "copper" not in text


def test_wrong_warmth_and_length_are_named():
    _, text = levels_and_text(ask(("danio-rerio", 8, 90), temperature_c=32))
    assert "18 to 28 °C; 32 °C is outside" in text
    assert "grows to about 50 mm" in text


def test_too_few_of_a_shoal_and_too_many_fighters_are_named():
    _, text = levels_and_text(ask(("paracheirodon-innesi", 3, 30)))
    assert "Neon tetra (Paracheirodon innesi) lives in groups: keep 8 or more together." in text
    levels, text = levels_and_text(ask(("betta-splendens", 2, 50)))
    assert "one to a tank" in text
    assert "caution" in levels
    _, text = levels_and_text(ask(("trichogaster-chuna", 9, 45)))
    assert "at most 6 together" in text
    for stock in (
        ("paracheirodon-innesi", 8, 30),
        ("betta-splendens", 1, 50),
        ("physella-acuta", 1, 8),
    ):
        _, text = levels_and_text(ask(stock))
        assert "together" not in text
        assert "one to a tank" not in text


def test_a_crowd_in_little_water_is_dangerous_at_night():
    assert "danger" in levels_and_text(ask(("xiphophorus-maculatus", 12, 50), volume_l=20))[0]
    assert "danger" not in levels_and_text(ask(("xiphophorus-maculatus", 2, 40), volume_l=120))[0]


@given(
    st.lists(st.tuples(st.sampled_from(sorted(ANIMALS)), st.integers(0, 500), st.floats(1, 600))),
    st.floats(0, 40),
)
def test_any_stock_gives_finite_figures(rows, temperature):
    found = ask(*rows, temperature_c=temperature)["outputs"]
    assert all(0 <= found[key] < math.inf for key in ADDING_UP)
    hours = [found[key] for key in found if key.startswith("hours")]
    assert all(value is None or 0 <= value < math.inf for value in hours)


def test_an_animal_on_which_a_law_bears_says_so_once_with_its_page(library):
    """The places are those of the record; the genus of the apple snail is banned in the Union."""
    answer = ask(("pomacea-diffusa", 1, 40), ("pomacea-diffusa", 2, 30), ("danio-rerio", 8, 30))
    laws = [note["text"] for note in answer["notes"] if note["text"].startswith("Law:")]
    assert len(laws) == 2
    assert "the European Union" in laws[0]
    assert "Pomacea diffusa" in laws[0]
    assert "Danio rerio" in laws[1]
    marked = {key for key, animal in library.animals.items() if animal.law}
    assert marked == {key for key, animal in ANIMALS.items() if animal.law}
    assert "Law" not in str(ask(("neocaridina-davidi", 10, 20))["notes"])
    asked = {"animals": ["danio-rerio"], "place": "us"}
    assert "Law: rules of" not in str(run("pick", asked)["notes"])
    assert "Law: rules of" in str(run("pick", asked | {"place": "eu"})["notes"])


@pytest.mark.parametrize(
    ("kind", "litres", "outgrows"),
    # A grown fish in a tank of five of its lengths: common practice, no source
    [
        ("pterophyllum-scalare", 20, True),
        ("pterophyllum-scalare", 180, False),
        ("carassius-auratus", 60, True),
        ("paracheirodon-innesi", 20, False),
        ("neocaridina-davidi", 1, False),
    ],
)
def test_a_fish_that_outgrows_the_tank_is_told_however_light_its_load(kind, litres, outgrows):
    notes = ask((kind, 1, 20), volume_l=litres)["notes"]
    said = [note for note in notes if "too short for a grown one" in note["text"]]
    assert len(said) == outgrows
    if outgrows:
        assert said[0]["level"] == "caution"
        assert not any("No line of ours is reached" in note["text"] for note in notes)


def test_the_common_tank_is_twice_as_long_as_it_is_wide_and_high():
    assert common_length_mm(54) == pytest.approx(600)  # 60 x 30 x 30 cm
    assert common_length_mm(16) == pytest.approx(400)  # 40 x 20 x 20 cm
