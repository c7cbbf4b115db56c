"""Floaters: what to take out and when, figures of the record, rings that cannot lie side by side."""

import itertools
import math

import pytest

from calculators.core.data import read_table
from calculators.core.result import BadInput
from calculators.core.run import compute, run
from calculators.floaters.ring_fit import largest_ring, most_rings
from calculators.floaters.thinning import ThinningPlan, saw
from scripts.tables import floating_plants


def refusals(**given):
    with pytest.raises(BadInput) as bad:
        run("floaters", given)
    return dict(bad.value.problems)


def texts(**given):
    return [note["text"] for note in run("floaters", given)["notes"]]


def first(**given):
    """The first note, and whether it stands before the figures."""
    note = compute("floaters", given).notes[0]
    assert note.first
    return note


# What to take out, and when. By hand from 80 by 35 cm, 2,800 cm².


@pytest.mark.parametrize(
    ("cover", "low", "area", "share", "steps"),
    [
        (95, 30, 1820, 100 * 65 / 95, 2),
        (60, 30, 840, 50, 1),  # at the limit
        (59, 30, 812, 100 * 29 / 59, 1),  # within a day of it
        (100, 10, 2520, 90, 3),
    ],
)
@pytest.mark.parametrize("doubling", [4, 7, 20])
def test_at_the_upper_limit_the_area_brings_the_cover_to_the_lower_one_now(
    cover, low, area, share, steps, doubling
):
    given = {"cover_percent": cover, "low_percent": low, "doubling_days": doubling}
    found = run("floaters", given)["outputs"]
    assert found["remove_cm2"] == pytest.approx(area)
    assert found["remove_percent"] == pytest.approx(share)
    assert found["thin_in_days"] == 0
    assert found["covered_cm2"] - found["remove_cm2"] == pytest.approx(28 * low)
    assert found["steps"] == steps
    said = first(**given)
    assert said.level == "caution"
    assert said.text.startswith("Thin today")
    assert f"{area} cm²" in said.text
    assert "rhythm holds" not in " ".join(texts(**given))


def test_much_comes_off_in_steps_where_animals_are_used_to_shade_but_not_where_they_gasp():
    """Common practice, no source; the note says so itself."""
    said = " ".join(texts(cover_percent=95))
    assert "2 steps of about 910 cm²" in said
    assert "used to the shade" in said
    assert "common practice, no source" in said
    assert "if they gasp at the surface, take half of it out at once" in said
    assert "steps" not in " ".join(texts(cover_percent=60))


def test_just_under_the_limit_is_due_and_not_a_rhythm_that_holds():
    said = first(cover_percent=59, high_percent=60, doubling_days=7)
    assert "reaches its upper limit within a day" in said.text
    held = first(cover_percent=40, high_percent=60, doubling_days=7)
    assert held.text.startswith("The rhythm holds: thin in about 4 days, then every 7.")


def test_between_thinnings_the_area_is_what_the_lower_limit_grows_to():
    found = run("floaters", {"cover_percent": 40, "doubling_days": 7})["outputs"]
    assert (found["remove_cm2"], found["remove_percent"]) == (pytest.approx(840), 50)
    assert found["thin_in_days"] == pytest.approx(7 * math.log2(60 / 40))


def test_too_seldom_is_told_in_whole_days_that_are_never_too_late():
    """From 33 to 80 % at a doubling a week takes 8.94 days: every 8, not every 9."""
    given = {"low_percent": 33, "high_percent": 80, "cover_percent": 35, "thin_every_days": 14}
    assert "Thin every 8 days" in first(**given, doubling_days=7).text


@pytest.mark.parametrize("cover", [10, 45, 59, 60, 95])
def test_the_picture_is_thinned_when_the_words_say(cover):
    given = {"cover_percent": cover, "doubling_days": 7}
    answer = run("floaters", given)
    days, covers = answer["series"]["cover"]["x"], answer["series"]["cover"]["y"]
    falls = [day for day, (a, b) in zip(days[1:], itertools.pairwise(covers), strict=True) if b < a]
    assert falls[0] == pytest.approx(answer["outputs"]["thin_in_days"])
    assert max(one for day, one in zip(days, covers, strict=True) if day > falls[0]) <= 60 + 1e-6
    assert [b - a for a, b in itertools.pairwise(falls)] == pytest.approx([7] * (len(falls) - 1))


def test_a_cover_that_hardly_grows_draws_an_end():
    assert saw(0.1, ThinningPlan(30, 60, 0.25, 1000)).x[-1] == 56


# The plant's record


def test_an_empty_doubling_time_and_mass_come_from_the_record_and_are_said(library):
    """One layer of duckweed fronds has 6 to 17 g dry a square metre; root of 3 x 12 days."""
    growth = library.plants["lemna-minor"].growth
    given = {
        "plant": "lemna-minor",
        "doubling_days": None,
        "wet_g_m2": None,
        "low_percent": 20,
        "dli_mol": 40,
    }
    answer = run("floaters", given)
    days = math.sqrt(growth.doubling_days.low * growth.doubling_days.high)
    assert answer["outputs"]["doubling_used_days"] == pytest.approx(days)
    assert (growth.layer_dry_g_m2.low, growth.layer_dry_g_m2.high) == (6, 17)
    assert answer["outputs"]["wet_used_g_m2"] == pytest.approx(math.sqrt(6 * 17) / 0.06, rel=0.05)
    said = " ".join(note["text"] for note in answer["notes"])
    assert "record of Lemna minor (uncertain)" in said
    assert "one closed layer, from the middle of 6 to 17 g dry in the record of Lemna minor" in said


def test_a_mass_comes_from_mats_where_no_closed_layer_is_known():
    """Reddy and DeBusk 1985: 35 to 240 g dry a square metre for a Salvinia."""
    answer = run("floaters", {"plant": "salvinia-minima", "wet_g_m2": None, "dli_mol": 40})
    assert answer["outputs"]["wet_used_g_m2"] == pytest.approx(137.5 / 0.06, rel=0.05)


def test_what_the_keeper_gives_stands_and_nothing_is_said_of_the_record():
    answer = run("floaters", {"plant": "lemna-minor", "doubling_days": 5, "wet_g_m2": 900})
    assert answer["outputs"]["doubling_used_days"] == 5
    assert answer["outputs"]["wet_used_g_m2"] == 900
    assert "record" not in " ".join(note["text"] for note in answer["notes"])


def test_a_mass_that_no_record_has_is_called_a_guess():
    said = texts(plant="pistia-stratiotes")
    assert any("1000 g/m², our guess" in text for text in said)
    assert any("1000 g/m², our guess" in text for text in texts(plant=None, doubling_days=7))


def test_neither_plant_nor_doubling_time_is_refused_at_both_fields():
    said = refusals(plant=None, doubling_days=None)
    assert said.keys() == {"plant", "doubling_days"}
    assert "lemna-minor" in said["plant"]
    assert "azolla-filiculoides" in refusals(plant="azola-filiculoides")["plant"]


def test_the_table_of_floating_plants_is_what_the_records_say(library):
    rows = floating_plants.table(library)
    assert read_table("floating-plants") == rows
    floaters = {key for key, plant in library.offered().items() if plant.habit == "floater"}
    assert rows.keys() == floaters
    assert len(rows) >= 10


# Rings


def test_several_rings_give_the_sum_of_their_areas():
    one = run("floaters", {"ring_diameter_cm": 20})["outputs"]
    three = run("floaters", {"ring_diameter_cm": 20, "ring_count": 3})["outputs"]
    assert one["allowed_cm2"] == pytest.approx(314.159, abs=1e-3)
    assert three["allowed_cm2"] == pytest.approx(3 * one["allowed_cm2"])
    assert three["removed_n_mg"] == pytest.approx(3 * one["removed_n_mg"])
    shade = 100 - one["light_left_percent"]
    assert 100 - three["light_left_percent"] == pytest.approx(3 * shade)


def test_with_no_ring_their_number_says_nothing():
    outputs = run("floaters", {"ring_count": 5})["outputs"]
    assert outputs["allowed_cm2"] == outputs["surface_cm2"]


def test_rings_that_do_not_fit_are_refused_with_both_limits():
    said = refusals(length_cm=80, width_cm=35, ring_diameter_cm=30, ring_count=3)
    assert "1 to 2" in said["ring_count"]
    limit = float(said["ring_diameter_cm"].rsplit(" to ", 1)[1].removesuffix(" cm"))
    assert run("floaters", {"ring_diameter_cm": math.floor(limit * 100) / 100, "ring_count": 3})
    assert refusals(ring_diameter_cm=limit + 0.1, ring_count=3)
    assert "0 to 35 cm" in refusals(ring_diameter_cm=36)["ring_diameter_cm"]


@pytest.mark.parametrize(
    ("length", "width", "diameter", "most"),
    [
        (80, 40, 40, 2), (80, 40.1, 40.01, 1), (30, 30, 10, 9), (80, 35, 36, 0),
        # Packings of equal circles in a square of side 1: two fit at 2 - sqrt(2), four at 1/2, by hand.
        (1, 1, 2 - math.sqrt(2) - 1e-9, 2), (1, 1, 2 - math.sqrt(2) + 1e-6, 1), (1, 1, 0.5, 4),
        # Three in a row of triangles: height 1 + sqrt(3)/2, length 2, by Pythagoras.
        (2, 1 + math.sqrt(3) / 2, 1, 3),
    ],
)  # fmt: skip
def test_counts_rings_that_fit(length, width, diameter, most):
    assert most_rings(length, width, diameter) == most
    assert most_rings(width, length, diameter) == most


@pytest.mark.parametrize("diameter", [3, 7.3, 11, 16, 22.2, 35])
def test_never_more_than_the_bound_of_oler(diameter):
    """Points d apart in a convex room: at most 2/sqrt(3) A/d2 + P/(2d) + 1 (Oler 1961, from memory)."""
    long, deep = 80 - diameter, 35 - diameter
    bound = 2 / math.sqrt(3) * long * deep / diameter**2 + (long + deep) / diameter + 1
    most = most_rings(80, 35, diameter)
    assert most <= bound + 1e-9
    assert most >= (80 // diameter) * (35 // diameter)


@pytest.mark.parametrize("count", [1, 2, 3, 7, 40])
def test_the_largest_ring_is_the_one_where_the_number_turns(count):
    largest = largest_ring(80, 35, count)
    assert most_rings(80, 35, largest * (1 - 1e-6)) >= count
    assert largest == 35 or most_rings(80, 35, largest * 1.001) < count


@pytest.mark.parametrize("diameter", [1e-320, 0.01, 0.9])
def test_a_ring_too_small_to_hold_a_plant_is_refused(diameter):
    assert "ring_diameter_cm" in refusals(ring_diameter_cm=diameter)


def test_the_lamp_slows_what_the_record_promises_but_not_what_the_keeper_timed():
    """60 g dry a m² double in 7.6 days at best on 2.9 mol: ln 2 · 60 / (1.877 · 2.9)."""
    given = {"plant": None, "wet_g_m2": 1_000, "dry_matter_percent": 6}
    timed = run("floaters", given | {"doubling_days": 4})
    assert timed["outputs"]["doubling_used_days"] == 4
    assert any("for a doubling in about 7.6 days" in note["text"] for note in timed["notes"])
    lit = run("floaters", given | {"doubling_days": 4, "dli_mol": 2.9})
    assert lit["outputs"]["doubling_used_days"] == pytest.approx(
        math.log(2) * 60 / (12.011 / 16 / 0.4 * 2.9)
    )
    book = run("floaters", {"plant": "salvinia-minima", "doubling_days": None})["outputs"]
    sunny = run("floaters", {"plant": "salvinia-minima", "doubling_days": None, "dli_mol": 40})[
        "outputs"
    ]
    assert book["doubling_used_days"] > sunny["doubling_used_days"]
