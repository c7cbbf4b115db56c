"""Conditioner: the label's dose, what chloramine leaves, and that no sentence harms in some water."""

import molmass
import pytest

from calculators.conditioner.chlorine import HARMS_MG_L, oxygen_taken_mg_l
from calculators.core.result import BadInput
from calculators.core.run import compute, run
from calculators.science.water.ammonia import ACT_NH3_MG_N_L
from tests.effort import share_of

TREATED = {"water_l": 40, "label_ml": 10, "label_treats_l": 40, "tank_l": 120}


def asked(**given):
    found = compute("conditioner", TREATED | given)
    return found.answer["outputs"], found.notes, " ".join(note.text for note in found.notes)


def test_the_dose_goes_by_the_label_and_the_water():
    out, notes, _ = asked(water_l=60, label_ml=5, label_treats_l=20)
    assert out["dose_ml"] == pytest.approx(15)
    assert out["tank_dose_ml"] == pytest.approx(30)
    assert notes[0].text.startswith("Give 15 mL to 60 L of new water before it meets animals")


def test_masses_are_those_of_a_library_of_molar_masses():
    """The library has chlorine at 35.453, our table the abridged 35.45."""
    chlorine, nitrogen = molmass.Formula("Cl2").mass, molmass.Formula("N").mass
    crystals = molmass.Formula("Na2S2O3(H2O)5").mass
    out, _, _ = asked(chlorine_mg_l=2, water_l=100)
    assert out["ammonia_freed_mg_n_l"] == pytest.approx(2 * nitrogen / chlorine, rel=3e-4)
    assert out["thiosulfate_g"] == pytest.approx(0.2 * 2 * crystals / chlorine, rel=3e-4)
    # 4 Cl2 + S2O3(2-) + 5 H2O -> 8 Cl- + 2 SO4(2-) + 10 H+
    assert out["thiosulfate_g"] > 0.2 * crystals / chlorine / 4


def test_unused_thiosulfate_takes_the_oxygen_of_its_way_to_sulfate():
    """S2O3(2-) + 2 O2 + H2O -> 2 SO4(2-) + 2 H+; an eighth of it was used up by the chlorine."""
    per_litre = 4 / molmass.Formula("Cl2").mass * 2  # mmol of thiosulfate for 4 mg/L of chlorine
    oxygen = per_litre * 7 / 8 * 2 * molmass.Formula("O2").mass
    assert oxygen_taken_mg_l(4) == pytest.approx(oxygen, rel=3e-4)


@pytest.mark.parametrize("ratio", [3, 4, 5])
def test_the_most_is_never_less_than_a_suppliers_ratio_brings(ratio):
    out, _, _ = asked(chlorine_mg_l=3)
    assert out["most_ammonia_mg_n_l"] >= 3 / ratio - 1e-9


def test_chlorine_alone_frees_no_ammonia_and_one_who_does_not_know_gets_the_worse():
    assert asked(kind="chlorine")[0]["ammonia_freed_mg_n_l"] == 0
    unknown, known = asked(kind="unknown")[0], asked(kind="chloramine")[0]
    assert unknown["nh3_mg_n_l"] == known["nh3_mg_n_l"] > 0
    assert "If the supplier uses chloramine" in asked(kind="unknown")[2]


WATERS = [
    (kind, chlorine, ph, tank)
    for kind in ("chlorine", "chloramine", "unknown")
    for chlorine in (0, 0.05, 0.5, 2, 4, 6, 20)
    for ph in (None, 6.0, 7.6, 8.5)
    for tank in (None, 40, 400)
]


@pytest.mark.parametrize(("kind", "chlorine", "ph", "tank"), share_of(WATERS, 5))
def test_in_no_water_is_it_calm_about_chlorine_or_the_ammonia_left(kind, chlorine, ph, tank):
    out, notes, text = asked(kind=kind, chlorine_mg_l=chlorine, ph=ph, tank_l=tank)
    assert "before it meets animals" in notes[0].text
    assert str(HARMS_MG_L) in notes[0].text
    assert "label goes before this page" in text
    assert "whole tank" in text
    assert "safe to" not in text
    if chlorine > 5:
        assert any(note.level == "danger" and "do not use the water" in note.text for note in notes)
    if kind == "chlorine":
        assert "Suppliers change over to chloramine" in text
    else:
        assert "some do not treat it at all" in text
    if out["nh3_mg_n_l"] is not None and out["nh3_mg_n_l"] >= ACT_NH3_MG_N_L:
        assert any(note.level == "danger" and "binds the ammonia" in note.text for note in notes)


def test_low_ph_is_no_promise():
    _, _, text = asked(ph=6, chlorine_mg_l=2)
    assert "more turns toxic as pH rises" in text


def test_links_are_filled_in_and_taken():
    for note in asked(ph=8.5)[1]:
        for link in note.links:
            if link.page.startswith("calculators/"):
                assert run(link.page.split("/")[1], link.given)["outputs"]


def test_what_cannot_be_weighed_is_dissolved():
    out, _, text = asked(chlorine_mg_l=0.5, water_l=10)
    assert out["thiosulfate_g"] < 0.1
    assert "dissolve 10 g in water to make 1 L, and use 3.5 mL" in text


def test_a_tank_that_holds_less_than_the_new_water_is_refused_by_name():
    with pytest.raises(BadInput) as bad:
        run("conditioner", {"water_l": 50, "tank_l": 40})
    assert bad.value.problems[0][0] == "tank_l"
    assert "50" in bad.value.problems[0][1]
