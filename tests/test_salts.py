"""The salts against reference libraries: molmass and periodictable for mass, PHREEQC for dissolving."""

import molmass
import periodictable
import pytest
from phreeqpython import PhreeqPython

from calculators.dosing.salts import ADDED, SALTS
from calculators.science.water.chemistry import ATOMIC_WEIGHT

# The formula of each ion or element as molmass reads it.
UNIT = {
    "nitrate": "NO3", "phosphate": "PO4", "potassium": "K", "magnesium": "Mg", "calcium": "Ca",
    "iron": "Fe", "nitrogen": "N", "sulfate": "SO4", "chloride": "Cl",
}  # fmt: skip
# How many of each a formula holds, read off the formula by eye and not from our table.
HOLDS = {
    "kno3": {"potassium": 1, "nitrate": 1, "nitrogen": 1},
    "kh2po4": {"potassium": 1, "phosphate": 1},
    "k2so4": {"potassium": 2, "sulfate": 1},
    "mgso4_7h2o": {"magnesium": 1, "sulfate": 1},
    "caso4_2h2o": {"calcium": 1, "sulfate": 1},
    "cacl2_2h2o": {"calcium": 1, "chloride": 2},
    "fe_edta": {"iron": 1},
    "fe_dtpa": {"iron": 1},
    "urea": {"nitrogen": 2},
}


@pytest.mark.parametrize("element", sorted(ATOMIC_WEIGHT))
def test_atomic_weights_are_those_of_the_reference_libraries(element):
    ours = ATOMIC_WEIGHT[element]
    assert ours == pytest.approx(molmass.ELEMENTS[element].mass, abs=0.006)
    assert ours == pytest.approx(getattr(periodictable, element).mass, abs=0.006)


@pytest.mark.parametrize("key", sorted(SALTS))
def test_molar_masses_are_those_of_the_reference_libraries(key):
    salt = SALTS[key]
    # the abridged weights differ from the full ones in the fifth figure: sulfur 32.06 for 32.065
    assert salt.g_mol == pytest.approx(molmass.Formula(salt.formula).mass, rel=1e-4)
    assert salt.g_mol == pytest.approx(periodictable.formula(salt.formula).mass, rel=1e-4)


@pytest.mark.parametrize("key", sorted(SALTS))
def test_shares_of_ions_and_elements_are_those_of_the_reference_library(key):
    whole = molmass.Formula(SALTS[key].formula).mass
    for added in ADDED:
        expected = HOLDS[key].get(added, 0) * molmass.Formula(UNIT[added]).mass / whole
        assert SALTS[key].share(added) == pytest.approx(expected, rel=2e-4), added


def test_iron_edta_meets_the_food_standard():
    # JECFA 1999: 12.5 to 13.5 % iron, formula weight 421.09
    assert SALTS["fe_edta"].g_mol == pytest.approx(421.09, abs=0.01)
    assert 0.125 <= SALTS["fe_edta"].share("iron") <= 0.135


def geochemistry(database: str, text: str, punch: str) -> list[float]:
    """Run PHREEQC and give one row of what it computed."""
    library = PhreeqPython(database=database).ip
    library.run_string(f"{text}\nSELECTED_OUTPUT\n-reset false\nUSER_PUNCH\n10 PUNCH {punch}\nEND")
    return library.get_selected_output_array()[-1]


@pytest.mark.parametrize(
    ("key", "mineral", "element", "atoms", "within"),
    [
        ("caso4_2h2o", "Gypsum", "Ca", 1, 0.01),
        ("mgso4_7h2o", "Epsomite", "Mg", 1, 0.01),
        # handbook 111 g (MEMORY) against 102 g computed: the two sources differ by this much
        ("k2so4", "Arcanite", "K", 2, 0.09),
    ],
)
def test_what_dissolves_is_what_a_geochemical_library_computes(
    key, mineral, element, atoms, within
):
    moles, density, litres = geochemistry(
        "pitzer.dat",
        f"SOLUTION 1\ntemp 20\nEQUILIBRIUM_PHASES 1\n{mineral} 0 20",
        f'TOTMOLE("{element}"), RHO, SOLN_VOL',
    )
    grams = moles / atoms * molmass.Formula(SALTS[key].formula).mass
    assert SALTS[key].g_kg_water == pytest.approx(grams, rel=within)
    assert SALTS[key].saturated_g_ml == pytest.approx(density, rel=0.007)
    assert SALTS[key].most_g_l == pytest.approx(grams / litres, rel=within)


@pytest.mark.parametrize(
    ("key", "database", "anhydrous", "ions"),
    [
        ("kno3", "phreeqc.dat", "KNO3", {"K": 1, "N(5)": 1}),
        ("kh2po4", "phreeqc.dat", "KH2PO4", {"K": 1, "P": 1}),
        ("cacl2_2h2o", "pitzer.dat", "CaCl2", {"Ca": 1, "Cl": 2}),
    ],
)
def test_density_of_the_saturated_solution_is_that_of_a_geochemical_library(
    key, database, anhydrous, ions
):
    salt = SALTS[key]
    dry = molmass.Formula(anhydrous).mass / molmass.Formula(salt.formula).mass
    molal = (salt.g_kg_water * dry / (1 + salt.g_kg_water * (1 - dry) / 1000)) / molmass.Formula(
        anhydrous
    ).mass
    amounts = "\n".join(f"{ion} {molal * count}" for ion, count in ions.items())
    (density,) = geochemistry(
        database, f"SOLUTION 1\ntemp 20\nunits mol/kgw\npH 7 charge\n{amounts}", "RHO"
    )
    assert salt.saturated_g_ml == pytest.approx(density, rel=0.002)


@pytest.mark.parametrize(
    ("key", "per_100_g", "dry"),
    [  # handbook figures at 20 °C in 100 g of water, MEMORY; hydrates given anhydrous
        ("kno3", 31.6, "KNO3"),
        ("kh2po4", 22.6, "KH2PO4"),
        ("k2so4", 11.1, "K2SO4"),
        ("mgso4_7h2o", 33.7, "MgSO4"),
        ("cacl2_2h2o", 74.5, "CaCl2"),
        ("urea", 107.9, "CO(NH2)2"),
    ],
)
def test_what_dissolves_agrees_with_the_handbook(key, per_100_g, dry):
    salt = SALTS[key]
    share = molmass.Formula(dry).mass / molmass.Formula(salt.formula).mass
    water = 1000 + salt.g_kg_water * (1 - share)  # the crystals bring water of their own
    assert salt.g_kg_water * share / water * 100 == pytest.approx(per_100_g, rel=0.01)


def test_a_bottle_filled_to_the_mark_holds_less_than_dissolves_in_a_litre_of_water():
    for salt in SALTS.values():
        assert 0 < salt.most_g_l < salt.g_kg_water
