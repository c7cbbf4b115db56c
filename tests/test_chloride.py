"""Chloride against nitrite: the salt, and that it is given only where it cannot harm by itself."""

import itertools

import molmass
import pytest

from calculators.chloride.salt import FARM_RATIO, FULL_RATIO
from calculators.core.run import compute, run


def asked(**given):
    found = compute("chloride", {"volume_l": 100} | given)
    return found.answer["outputs"], found.notes, " ".join(note.text for note in found.notes)


def test_salt_and_sodium_are_those_of_a_library_of_molar_masses():
    out, _, _ = asked(nitrite_mg_n_l=1, ratio=40, chloride_mg_l=10)
    salt, chloride = molmass.Formula("NaCl").mass, molmass.Formula("Cl").mass
    assert out["chloride_wanted_mg_l"] == 40
    assert out["chloride_missing_mg_l"] == 30
    assert out["salt_g"] == pytest.approx(30 * salt / chloride / 10, rel=3e-4)
    assert out["sodium_mg_l"] == pytest.approx(30 * (salt / chloride - 1), rel=3e-4)


def test_the_ratios_are_those_of_the_trial_and_of_the_farms():
    """Sixteen ions to one, and ten to one by mass of NO2, as nitrogen."""
    nitrogen, nitrite = molmass.Formula("N").mass, molmass.Formula("NO2").mass
    assert pytest.approx(16 * molmass.Formula("Cl").mass / nitrogen, rel=3e-4) == FULL_RATIO
    assert pytest.approx(10 * nitrite / nitrogen, rel=3e-4) == FARM_RATIO
    assert run("chloride", {})["inputs"]["ratio"] == pytest.approx(FULL_RATIO, rel=0.001)


NITRITES = (0, 0.03, 0.06, 0.3, 0.6, 1.5, 5, 20)
CHLORIDES = (0, 5, 60, 200, 229, 230, 500, 900)


@pytest.mark.parametrize(("nitrite", "chloride"), list(itertools.product(NITRITES, CHLORIDES)))
def test_in_no_water_does_salt_come_before_a_change_or_reach_the_line(nitrite, chloride):
    out, notes, text = asked(nitrite_mg_n_l=nitrite, chloride_mg_l=chloride)
    reached = max(out["chloride_wanted_mg_l"], chloride)
    # 230 mg/L: the United States' line over days
    assert (out["salt_g"] is None) == (reached >= 230)
    assert out["salt_g"] is None or out["salt_g"] >= 0
    if nitrite == 0:
        assert "Only if a vet" not in text
        return
    first = notes[0]
    assert first.text.startswith("Nitrite of")
    assert first.level == ("danger" if nitrite >= 0.6 else "caution")
    assert first.leads == ("water-change",)
    if first.level == "danger":
        assert "comes before salt" in first.text
        assert "Where it shows, ask first" in first.text
    assert "does not protect every fish" in text
    if out["salt_g"]:
        for word in ("plants, snails, mussels, shrimp", "zeolite", "Only if a vet", "Dissolve"):
            assert word in text
    else:
        assert "g of plain salt" not in text


def test_chloride_that_harms_or_kills_is_said_first():
    assert "Give no salt" in asked(nitrite_mg_n_l=0, chloride_mg_l=300)[2]
    _, notes, _ = asked(nitrite_mg_n_l=0, chloride_mg_l=900)
    assert any(note.level == "danger" and note.text.startswith("Chloride of 900") for note in notes)


def test_water_of_unknown_chloride_is_to_be_tested_first():
    assert "some holds 200 mg/L" in asked(nitrite_mg_n_l=0.5, chloride_mg_l=0)[2]
    assert "some holds 200 mg/L" not in asked(nitrite_mg_n_l=0.5, chloride_mg_l=5)[2]


def test_water_with_enough_gets_none():
    out, _, text = asked(nitrite_mg_n_l=0.5, chloride_mg_l=60)
    assert out["salt_g"] == 0
    assert "Give no salt" in text


def test_a_low_ratio_is_named():
    assert "less than what protected catfish" in asked(nitrite_mg_n_l=0.5, ratio=10)[2]
    assert "less than what protected catfish" not in asked(nitrite_mg_n_l=0.5, ratio=33)[2]
