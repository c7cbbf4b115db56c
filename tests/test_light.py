"""Light: photons for lux against black-body radiation, the way down, and what would bring a plant in."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.constants import N_A, c, h, k
from scipy.integrate import quad

from calculators.core.listing import load_all
from calculators.core.paint.answer import rows
from calculators.core.result import Refused
from calculators.core.run import compute, run
from calculators.light.calculator import light
from calculators.science.light.lamps import LUX_PER_UMOL, daily_light_mol, share_at_depth

LUMENS_PER_WATT = 683  # at 555 nm, by the definition of the candela


def seen_by_the_eye(nm):
    """CIE 1931 luminosity, analytic fit of Wyman, Sloan and Shirley 2013 (read in public code)."""

    def lobe(mean, below, above):
        return math.exp(-0.5 * ((nm - mean) * (below if nm < mean else above)) ** 2)

    return 0.821 * lobe(568.8, 0.0213, 0.0247) + 0.286 * lobe(530.9, 0.0613, 0.0322)


def planck(nm, kelvin):
    metre = nm * 1e-9
    return metre**-5 / math.expm1(h * c / (metre * k * kelvin))


def lux_per_umol(kelvin):
    """Lux for each µmol/m²/s of a black body, photons from 400 to 700 nm."""
    lumens = (
        LUMENS_PER_WATT * quad(lambda nm: planck(nm, kelvin) * seen_by_the_eye(nm), 360, 830)[0]
    )
    photons = quad(lambda nm: planck(nm, kelvin) * nm * 1e-9 / (h * c), 400, 700)[0]
    return lumens / (photons / N_A * 1e6)


@pytest.mark.parametrize(
    ("lamp", "kelvin", "within"),
    # illuminant A is a black body of 2,856 K by definition; the sun is near one of 5,778 K
    [("halogen", 2856, 0.02), ("halogen", 3000, 0.04), ("daylight", 5778, 0.03)],
)
def test_photons_for_lux_agree_with_planck_and_the_standard_eye(lamp, kelvin, within):
    assert LUX_PER_UMOL[lamp] == pytest.approx(lux_per_umol(kelvin), rel=within)


@pytest.mark.parametrize(
    ("umol", "hours", "mol"), [(50, 8, 1.44), (100, 8, 2.88), (30, 6, 0.648), (0, 8, 0), (50, 0, 0)]
)
def test_daily_light_is_seconds_times_photons(umol, hours, mol):
    assert daily_light_mol(umol, hours) == pytest.approx(mol, abs=1e-12)


@pytest.mark.parametrize(
    ("attenuation", "left"), [(0.5, 0.861), (1, 0.741), (2, 0.549), (5, 0.223)]
)
def test_attenuation_over_30_cm(attenuation, left):
    assert share_at_depth(attenuation, 30) == pytest.approx(left, abs=5e-4)


def test_a_meter_goes_before_lumens_and_is_said_to():
    answer = run("light", {"ppfd_surface_umol": 80, "lumens": 9_000})
    assert answer["outputs"]["ppfd_surface_umol"] == 80
    assert any("measured light is used" in note["text"] for note in answer["notes"])
    alone = run("light", {"ppfd_surface_umol": 80, "lumens": None})
    assert alone["outputs"] == answer["outputs"]
    assert not any("half as much" in note["text"] for note in alone["notes"])


def test_refuses_neither_lumens_nor_a_reading():
    with pytest.raises(Refused) as refused:
        light(lumens=None)
    assert [one.key for one in refused.value.refusals] == ["lumens", "ppfd_surface_umol"]


def test_floaters_shade_as_a_mean_over_the_surface():
    # a quarter of the surface under a mat that passes a fifth: 1 - 0.25 × 0.8
    found = light(
        None, 100, depth_cm=0.1, attenuation_per_m=0, floater_cover_percent=25,
        floater_transmission_percent=20,
    )  # fmt: skip
    assert found.light_left_percent == pytest.approx(80)
    assert found.ppfd_substrate_umol == pytest.approx(80)
    assert found.ppfd_under_mat_umol == pytest.approx(20)


@pytest.mark.parametrize(
    ("mol", "expected"),
    [(0.4, "low"), (1.49, "low"), (1.51, "medium"), (2.99, "medium"), (3.01, "high")],
)
def test_classes_begin_where_the_plant_records_have_them(mol, expected):
    umol = mol / (8 * 0.0036)
    found = light(None, umol, depth_cm=0.1, attenuation_per_m=0, floater_cover_percent=0, hours=8)
    assert found.dli_substrate_mol == pytest.approx(mol)
    assert found.light_class == expected


shares = st.floats(0, 100)


@given(
    umol=st.floats(1, 500), depth=st.floats(1, 60), hours=st.floats(0.5, 24), cover=shares,
    passed=shares, wanted=st.floats(0.1, 10),
)  # fmt: skip
def test_hours_and_thinning_do_bring_the_plant_in(umol, depth, hours, cover, passed, wanted):
    given_ = {
        "lumens": None, "ppfd_surface_umol": umol, "depth_cm": depth, "hours": hours,
        "floater_cover_percent": cover, "floater_transmission_percent": passed,
        "wanted_dli_mol": wanted,
    }  # fmt: skip
    found = run("light", given_)["outputs"]
    if found["hours_for_class"] is None:
        assert run("light", given_ | {"hours": 24})["outputs"]["dli_substrate_mol"] < wanted
    else:
        assert 0 < found["hours_for_class"] <= 24
        then = run("light", given_ | {"hours": found["hours_for_class"]})["outputs"]
        assert then["dli_substrate_mol"] == pytest.approx(wanted)
    if found["thin_percent"] is None:
        bare = run("light", given_ | {"floater_cover_percent": 0})["outputs"]
        assert bare["dli_substrate_mol"] < wanted * (1 + 1e-9)
    else:
        left = cover * (1 - found["thin_percent"] / 100)
        thinned = run("light", given_ | {"floater_cover_percent": left})["outputs"]
        assert thinned["dli_substrate_mol"] >= wanted * (1 - 1e-9)


def test_series_end_at_the_figures():
    answer = run("light", {"hours": 8})
    by_depth, by_hours = answer["series"]["ppfd_by_depth"], answer["series"]["dli_by_hours"]
    assert by_depth["y"][-1] == pytest.approx(answer["outputs"]["ppfd_substrate_umol"])
    assert by_depth["x"][-1] == answer["inputs"]["depth_cm"]
    at_8 = by_hours["y"][by_hours["x"].index(8)]
    assert at_8 == pytest.approx(answer["outputs"]["dli_substrate_mol"])


@pytest.mark.parametrize(
    ("given_", "words"),
    [
        ({"hours": 12}, "feed algae"),
        ({"lumens": 300}, "No number of hours"),
        ({"lumens": 300}, "Near the limit"),
        ({}, "Why stems go leggy"),
        ({"lumens": 40_000}, "algae take the rest"),
        ({"lumens": 900_000}, "more light than full sun"),
        ({}, "unplug it before your hands go in"),
    ],
)
def test_says_what_the_keeper_must_know(given_, words):
    assert any(words in note["text"] for note in run("light", given_)["notes"])


def test_a_tip_gains_light_by_length_as_the_law_of_absorption_says():
    """Checked by solving the law for the height with a general root finder."""
    from scipy.optimize import brentq

    given = {
        "ppfd_surface_umol": 120, "lumens": None, "floater_cover_percent": 0, "depth_cm": 40,
        "hours": 8, "attenuation_per_m": 3, "wanted_class": "medium",
    }  # fmt: skip
    answer = run("light", given)
    day = 120 * 8 * 3600 / 1e6
    height = brentq(lambda up: day * math.exp(-3 * (40 - up) / 100) - 1.5, 0, 40)
    assert answer["outputs"]["tip_height_for_class_cm"] == pytest.approx(height, abs=1e-9)
    curve = answer["series"]["dli_by_height"]
    assert curve["x"] == pytest.approx([2 * step for step in range(21)])
    assert curve["y"][-1] == pytest.approx(day)
    assert curve["y"][0] == pytest.approx(answer["outputs"]["dli_substrate_mol"])


def test_a_tip_has_enough_at_the_foot_or_nowhere():
    bright = {"ppfd_surface_umol": 400, "floater_cover_percent": 0}
    assert run("light", bright)["outputs"]["tip_height_for_class_cm"] == 0
    dim = {"ppfd_surface_umol": 20, "floater_cover_percent": 0}
    answer = run("light", dim)
    assert answer["outputs"]["tip_height_for_class_cm"] is None
    assert any("not get what is wanted at any height" in note["text"] for note in answer["notes"])


# Advice that agrees with itself, and the animals' night


def said(**given):
    return " ".join(note["text"] for note in run("light", given)["notes"])


def test_a_closed_cover_with_nothing_through_is_told_one_thing():
    """It said at once that more light is needed and that thinning is enough."""
    text = said(floater_cover_percent=100, floater_transmission_percent=0)
    assert "let nothing through: take out 92 % of them" in text
    for other in ("more light", "stronger lamp", "hours of light a day", "beside it"):
        assert other not in text, other
    dim = said(floater_cover_percent=100, floater_transmission_percent=0, lumens=300)
    assert "open them first, and then look at the lamp" in dim
    assert "take out" not in dim


@given(
    umol=st.floats(1, 500), hours=st.floats(0, 24), cover=shares, passed=shares,
    wanted=st.floats(0.1, 10),
)  # fmt: skip
def test_no_advice_forbids_another(umol, hours, cover, passed, wanted):
    answer = compute("light", {
        "lumens": None, "ppfd_surface_umol": umol, "hours": hours, "floater_cover_percent": cover,
        "floater_transmission_percent": passed, "wanted_dli_mol": wanted,
    })  # fmt: skip
    first, text = answer.notes[0].text, " ".join(note.text for note in answer.notes)
    if "% of the floaters" in first or "% of them" in first:
        assert "open surface is not enough" not in text
        assert "stronger lamp" not in first
    if "hours of light a day" in first:
        assert "No number of hours" not in text
        assert "Longer hours are no way" not in text
    if first.startswith("Enough"):
        assert hours <= 14
        assert answer.answer["outputs"]["dark_hours"] >= 10


@pytest.mark.parametrize("hours", [14.5, 16, 20, 24])
def test_a_day_without_a_night_is_never_enough(hours):
    """Laboratories give fish 10 to 12 hours of dark (Reed and Jennings 2011, second-hand)."""
    answer = compute("light", {"hours": hours, "floater_cover_percent": 0})
    first = answer.notes[0]
    assert first.first
    assert first.level == "caution"
    assert first.text.startswith("Too long a day")
    assert "night for the animals" in first.text
    assert not any(note.text.startswith("Enough") for note in answer.notes)
    assert answer.answer["outputs"]["dark_hours"] == 24 - hours


def test_hours_that_leave_no_night_are_not_offered():
    answer = compute("light", {"lumens": 1_500})
    assert 14 < answer.answer["outputs"]["hours_for_class"] < 24
    text = " ".join(note.text for note in answer.notes)
    assert "hours of light a day" not in text
    assert "Longer hours are no way here" in text


def test_a_difference_that_the_figures_cannot_tell_is_not_too_little():
    umol = 1.46 / (8 * 0.0036)
    text = said(
        lumens=None, ppfd_surface_umol=umol, depth_cm=0.1, attenuation_per_m=0, hours=8,
        floater_cover_percent=0,
    )  # fmt: skip
    assert "Just about enough: the plants get 1.5 mol/m²/day, and 1.5 is wanted." in text
    assert "Too little" not in text


def test_figures_from_lumens_show_two_digits():
    shown = {
        row["key"]: row["value"] for row in rows(load_all()["light"], run("light", {})["outputs"])
    }
    assert shown["ppfd_surface_umol"] == "81"
    assert shown["dli_substrate_mol"] == "1"
    assert "the plants get 1 mol/m²/day" in said()
