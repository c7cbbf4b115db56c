"""Minerals: masses against molmass, the water against PHREEQC and two standard waters, harm in words."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from molmass import Formula
from phreeqpython import PhreeqPython

from calculators.core.run import compute, run
from calculators.dosing.salts import SALTS as DOSED
from calculators.remineralise.mineral_salts import GYPSUM_G_L, ION_G_MOL, SALTS
from calculators.remineralise.recipe import ions_of
from calculators.science.animals.reading_lines import edge_of

FORMULAS = {
    "cacl2_2h2o": "CaCl2(H2O)2", "caso4_2h2o": "CaSO4(H2O)2", "mgso4_7h2o": "MgSO4(H2O)7",
    "mgcl2_6h2o": "MgCl2(H2O)6", "nahco3": "NaHCO3", "khco3": "KHCO3",
}  # fmt: skip
IONS = {
    "calcium": "Ca", "magnesium": "Mg", "sodium": "Na", "potassium": "K", "sulfate": "SO4",
    "chloride": "Cl", "bicarbonate": "HCO3",
}  # fmt: skip
MMOL_PER_DH = 10 / Formula("CaO").mass  # DIN 38409-6 has 0.1783, MEMORY
CALCIUM, MAGNESIUM, CARBONATE = (
    ("cacl2_2h2o", "caso4_2h2o"), ("mgso4_7h2o", "mgcl2_6h2o"), ("nahco3", "khco3"),
)  # fmt: skip


def mixed(**given_):
    return run("remineralise", given_)


def texts(answer, level=None):
    return " ".join(note["text"] for note in answer["notes"] if level in (None, note["level"]))


@pytest.fixture(scope="module")
def geochemist():
    return PhreeqPython(database="phreeqc.dat")


def phreeqc_water(geochemist, adds, temperature_c=25):
    """The water of these ions in balance with carbon dioxide at 840 ppm, pH from the charges."""
    elements = {
        "Ca": "calcium", "Mg": "magnesium", "Na": "sodium", "K": "potassium", "S(6)": "sulfate",
        "Cl": "chloride",
    }  # fmt: skip
    water = {"units": "mmol/kgw", "temp": temperature_c, "pH": "7.5 charge"}
    for element, ion in elements.items():
        if adds[ion]:
            water[element] = adds[ion] / Formula(IONS[ion]).mass
    water["C(4)"] = f"1 CO2(g) {math.log10(840e-6)}"
    return geochemist.add_solution(water)


@pytest.mark.parametrize("key", SALTS)
def test_molar_masses_are_those_of_the_library(key):
    assert SALTS[key].g_mol == pytest.approx(Formula(FORMULAS[key]).mass, abs=0.012)


@pytest.mark.parametrize("ion", ION_G_MOL)
def test_ions_are_those_of_the_library(ion):
    assert ION_G_MOL[ion] == pytest.approx(Formula(IONS[ion]).mass, abs=0.008)


@pytest.mark.parametrize("key", sorted(SALTS.keys() & DOSED.keys()))
def test_a_salt_is_the_same_here_and_where_it_is_dosed(key):
    assert SALTS[key].atoms == DOSED[key].atoms
    assert SALTS[key].ions == DOSED[key].yields


def test_one_degree_is_that_of_the_standard():
    assert pytest.approx(0.1783, abs=0.0001) == MMOL_PER_DH


@given(
    st.floats(0, 30), st.floats(0, 20), st.floats(0.5, 100), st.floats(1, 1000),
    st.sampled_from(CALCIUM), st.sampled_from(MAGNESIUM), st.sampled_from(CARBONATE),
)  # fmt: skip
def test_grams_solve_the_three_wishes(gh, kh, ratio, volume, calcium, magnesium, carbonate):
    """Three equations in three masses, set up from the library's molar masses and solved by numpy."""
    ca, mg = Formula("Ca").mass, Formula("Mg").mass
    per_gram = [
        1000 / Formula(FORMULAS[key]).mass / volume for key in (calcium, magnesium, carbonate)
    ]
    wishes = np.array([
        [per_gram[0], per_gram[1], 0],
        [per_gram[0] * ca, -ratio * per_gram[1] * mg, 0],
        [0, 0, per_gram[2]],
    ])  # fmt: skip
    grams = np.linalg.solve(wishes, [gh * MMOL_PER_DH, 0, kh * 2 * MMOL_PER_DH])
    found = mixed(
        volume_l=volume, target_gh_dh=gh, target_kh_dh=kh, calcium_to_magnesium=ratio,
        calcium_from=calcium, magnesium_from=magnesium, carbonate_from=carbonate,
    )["outputs"]  # fmt: skip
    keys = ("calcium_salt_g", "magnesium_salt_g", "carbonate_salt_g")
    assert [found[key] for key in keys] == pytest.approx(list(grams), rel=3e-4, abs=1e-9)
    assert found["dissolved_mg_l"] == pytest.approx(sum(found["adds"].values()))
    charges = {"calcium": 2, "magnesium": 2, "sodium": 1, "potassium": 1, "sulfate": -2}
    charge = sum(
        mg_l / Formula(IONS[ion]).mass * charges.get(ion, -1) for ion, mg_l in found["adds"].items()
    )
    assert charge == pytest.approx(0, abs=2e-3)


@pytest.mark.parametrize("calcium", CALCIUM)
@pytest.mark.parametrize(
    ("gh", "kh"), [(6, 3), (4, 0.5), (14, 2), (5, 8), (12, 6), (20, 10), (0, 3)]
)
def test_the_water_stands_at_the_ph_of_phreeqc(geochemist, gh, kh, calcium):
    found = mixed(target_gh_dh=gh, target_kh_dh=kh, calcium_from=calcium)["outputs"]
    assert found["settled_ph"] == pytest.approx(
        phreeqc_water(geochemist, found["adds"]).pH, abs=0.01
    )


@pytest.mark.parametrize("carbonate", CARBONATE)
@pytest.mark.parametrize("kh", [2, 4, 8])
def test_a_titration_reads_the_hardness_that_was_wanted(geochemist, kh, carbonate):
    """Acid is dripped into PHREEQC's water, as a kit does, until it turns at pH 4.5 (ISO 9963-1, MEMORY)."""
    adds = mixed(target_gh_dh=6, target_kh_dh=kh, carbonate_from=carbonate)["outputs"]["adds"]
    water, dripped = phreeqc_water(geochemist, adds), 0.0
    while water.pH > 4.5:
        water.add("HCl", 0.01)
        dripped += 0.01
    assert dripped / 2 / MMOL_PER_DH == pytest.approx(kh, abs=0.25)  # far below a drop of a kit


def test_the_united_states_standard_water_is_as_hard_as_they_say():
    """EPA medium (NIES): 60 mg gypsum, 60 mg MgSO4, 96 mg NaHCO3 a litre.

    The hardness of 80 to 100 and alkalinity of 57 to 70 mg/L as calcium carbonate are from MEMORY.
    """
    amounts = (
        (SALTS["caso4_2h2o"], 60 / Formula(FORMULAS["caso4_2h2o"]).mass),
        (SALTS["mgso4_7h2o"], 60 / Formula("MgSO4").mass),
        (SALTS["nahco3"], 96 / Formula("NaHCO3").mass),
    )
    adds = ions_of(amounts)
    hardness = adds["calcium"] / Formula("Ca").mass + adds["magnesium"] / Formula("Mg").mass
    assert 80 < hardness * Formula("CaCO3").mass < 100
    gh, kh = hardness / MMOL_PER_DH, adds["bicarbonate"] / Formula("HCO3").mass / 2 / MMOL_PER_DH
    assert 57 < kh * MMOL_PER_DH * Formula("CaCO3").mass < 70
    back = mixed(
        volume_l=1000, target_gh_dh=gh, target_kh_dh=kh,
        calcium_to_magnesium=adds["calcium"] / adds["magnesium"],
    )["outputs"]  # fmt: skip
    assert back["calcium_salt_g"] == pytest.approx(60, rel=1e-3)
    assert back["carbonate_salt_g"] == pytest.approx(96, rel=1e-3)


@pytest.mark.parametrize("temperature_c", [10, 20, 25])
def test_so_much_gypsum_dissolves(geochemist, temperature_c):
    water = geochemist.add_solution({"temp": temperature_c})
    water.equalize(["Gypsum"], [0])
    most = water.total("Ca") * Formula(FORMULAS["caso4_2h2o"]).mass / 1000
    assert GYPSUM_G_L <= most < 1.1 * GYPSUM_G_L


def test_lime_is_spoken_of_where_phreeqc_finds_it_over_full(geochemist):
    hard, soft = (mixed(target_gh_dh=gh, target_kh_dh=kh) for gh, kh in ((8, 8), (6, 3)))
    assert phreeqc_water(geochemist, hard["outputs"]["adds"]).si("Calcite") > 0.5
    assert "drop lime" in texts(hard)
    assert phreeqc_water(geochemist, soft["outputs"]["adds"]).si("Calcite") < 0
    assert "drop lime" not in texts(soft)


def test_gypsum_asks_for_its_water_and_calcium_chloride_for_none():
    outputs = mixed(volume_l=100, target_gh_dh=10)["outputs"]
    assert outputs["gypsum_water_l"] == pytest.approx(outputs["calcium_salt_g"] / 2.4)
    other = mixed(calcium_from="cacl2_2h2o")
    assert other["outputs"]["gypsum_water_l"] is None
    assert "Gypsum dissolves" not in texts(other)


@pytest.mark.parametrize("over", [{"start_gh_dh": 7}, {"start_kh_dh": 4}])
def test_a_water_above_the_target_is_not_given_a_salt(over):
    found = compute("remineralise", {"target_gh_dh": 6, "target_kh_dh": 3, **over})
    outputs = found.answer["outputs"]
    hard = "start_gh_dh" in over
    assert (outputs["calcium_salt_g"] is None) == hard
    assert (outputs["magnesium_salt_g"] is None) == hard
    assert (outputs["carbonate_salt_g"] is None) != hard
    assert outputs["reached_gh_dh" if hard else "reached_kh_dh"] == next(iter(over.values()))
    assert "no salt takes hardness out" in texts(found.answer, "caution")
    [link] = [one for note in found.notes for one in note.links if one.page.endswith("hardness/")]
    assert run("hardness", link.given)["outputs"]


def test_a_start_is_taken_off():
    half = mixed(volume_l=100, start_gh_dh=3, target_gh_dh=6, start_kh_dh=1.5, target_kh_dh=3)
    whole = mixed(volume_l=100, target_gh_dh=6, target_kh_dh=3)
    for key in ("calcium_salt_g", "magnesium_salt_g", "carbonate_salt_g"):
        assert half["outputs"][key] == pytest.approx(whole["outputs"][key] / 2)


@pytest.mark.parametrize(("kh", "level"), [(3, None), (4, "caution"), (7, "danger")])
def test_potassium_is_held_against_the_table(kh, level):
    answer = mixed(target_kh_dh=kh, carbonate_from="khco3")
    potassium = answer["outputs"]["adds"]["potassium"]
    assert potassium == pytest.approx(kh * 2 * MMOL_PER_DH * Formula("K").mass, rel=1e-3)
    lines = [edge_of("potassium_mg_l", edge) for edge in ("harmful_high", "deadly_high")]
    assert (level is None) == (potassium < lines[0])
    assert (level == "danger") == (potassium >= lines[1])
    if level:
        assert answer["notes"][0]["level"] == level
        assert "mg/L of potassium" in answer["notes"][0]["text"]
    else:
        assert "which plants take up" in texts(answer, "info")


@pytest.mark.parametrize(
    ("kh", "level", "words"),
    [  # 359 and 989 mg/L of NaHCO3 are 12.0 and 33.0 °dH (Farag and Harper 2014, Harper and others 2014)
        (11.9, "caution", "of sodium. That is much"),
        (12.1, "caution", "is much: at 359"),
        (33.1, "danger", "can kill"),
    ],
)
def test_bicarbonate_is_held_against_what_harmed(kh, level, words):
    answer = mixed(target_kh_dh=kh)
    assert words in texts(answer, level)
    assert ("is much: at 359" in texts(answer)) == (12 < kh < 33)


@pytest.mark.parametrize(
    ("given_", "words"),
    [
        ({"target_gh_dh": 0}, "short of calcium"),
        ({"target_gh_dh": 31}, "troubles soft-water fish"),
        ({"target_kh_dh": 0}, "next to no buffer"),
        (
            {"target_gh_dh": 20, "calcium_from": "cacl2_2h2o", "magnesium_from": "mgcl2_6h2o"},
            "chloride",
        ),
        ({"calcium_to_magnesium": 0.5}, "out of the common"),
        ({"volume_l": 2}, "a kitchen scale is a guess"),
        ({}, "never dry in a tank with animals"),
        ({}, "no more than about 2 °dH a day"),
        ({}, "raise neither KH nor pH"),
        ({}, "de-icing salt"),
    ],
)
def test_says_what_the_keeper_must_know(given_, words):
    assert words in texts(mixed(**given_))


def test_nothing_to_add_is_said():
    answer = mixed(start_gh_dh=6, target_gh_dh=6, start_kh_dh=3, target_kh_dh=3)
    assert "Nothing is to be added" in texts(answer)
    assert answer["outputs"]["dissolved_mg_l"] == 0
