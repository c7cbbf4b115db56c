import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.core.run import run
from calculators.science.water.oxygen_solubility import (
    departure_per_atm,
    pressure_at_altitude_hpa,
    saturation_at_sea_level_mg_l,
    saturation_mg_l,
    vapour_pressure_atm,
)


def ask(**given):
    return run("oxygen", given)


# gsw (TEOS-10), O2sol times density: another fit of the same measurements; its figures as noted when
# they were computed, since the library is not among the tests' own.
@pytest.mark.parametrize(
    ("temperature", "expected"),
    [(0, 14.621), (5, 12.770), (10, 11.287), (15, 10.083), (20, 9.091), (25, 8.262), (30, 7.558),
     (35, 6.949)],
)  # fmt: skip
def test_saturation_agrees_with_the_seawater_library(temperature, expected):
    assert saturation_at_sea_level_mg_l(temperature) == pytest.approx(expected, abs=0.0015)


def test_pressure_changes_nothing_at_one_atmosphere():
    for temperature in (0, 17, 40):
        assert saturation_mg_l(temperature, 1013.25) == pytest.approx(
            saturation_at_sea_level_mg_l(temperature)
        )


# MEM: steam tables (IAPWS), kPa, from memory.
@pytest.mark.parametrize(
    ("temperature", "kilopascal"), [(10, 1.2282), (20, 2.3393), (25, 3.1699), (30, 4.2470)]
)
def test_vapour_pressure_agrees_with_steam_tables(temperature, kilopascal):
    assert vapour_pressure_atm(temperature) == pytest.approx(kilopascal / 101.325, rel=0.002)


# MEM: second virial coefficient of oxygen, -22 cm3/mol at 0 °C and -16 at 25 °C, from memory. A gas
# departs from a perfect one by that over its molar volume, 22,414 and 24,465 cm3/mol at one atmosphere.
@pytest.mark.parametrize(("temperature", "expected"), [(0, 22 / 22_414), (25, 16 / 24_465)])
def test_departure_from_a_perfect_gas_agrees_with_the_virial_coefficient(temperature, expected):
    assert departure_per_atm(temperature) == pytest.approx(expected, rel=0.03)


def test_high_up_oxygen_follows_the_dry_air_above_it():
    share = (800 - 23.393) / (1013.25 - 23.393)  # of dry air at 20 °C, vapour from steam tables
    expected = share * saturation_at_sea_level_mg_l(20)
    assert saturation_mg_l(20, 800) == pytest.approx(expected, rel=0.0004)


# MEM: ISO 2533 from memory.
@pytest.mark.parametrize(
    ("height", "pressure"), [(0, 1013.25), (500, 954.6), (1000, 898.7), (2000, 795.0)]
)
def test_pressure_falls_as_in_the_standard_atmosphere(height, pressure):
    assert pressure_at_altitude_hpa(height) == pytest.approx(pressure, abs=0.1)


@pytest.mark.parametrize(
    ("reading", "rating"),
    [(0, "act"), (2.99, "act"), (3, "act"), (3.01, "watch"), (5, "watch"), (5.01, "good"), (9.8, "good"),
     (10.0, "too-much"), (None, "not-measured")],
)  # fmt: skip
def test_rating_by_its_lines(reading, rating):
    assert ask(temperature_c=25, oxygen_mg_l=reading)["outputs"]["rating"] == rating


def test_low_oxygen_says_first_what_to_do_and_warns_of_electricity():
    notes = ask(oxygen_mg_l=2)["notes"]
    assert [note["level"] for note in notes[:2]] == ["danger", "danger"]
    assert "surface" in notes[1]["text"]
    assert any("Electricity" in note["text"] for note in notes)


def test_a_healthy_reading_frightens_nobody():
    assert {note["level"] for note in ask(oxygen_mg_l=7.5)["notes"]} == {"info"}


def test_without_a_reading_its_figures_are_null_and_a_note_says_so():
    answer = ask(oxygen_mg_l=None)
    assert answer["outputs"]["saturation_percent"] is None
    assert any("No reading was given" in note["text"] for note in answer["notes"])


def test_thin_air_is_not_told_about_altitude_again():
    assert any("955 hPa at 500 m" in note["text"] for note in ask()["notes"])
    assert not any("hPa at" in note["text"] for note in ask(pressure_hpa=900)["notes"])


@given(st.floats(0, 44), st.floats(0.1, 1), st.floats(400, 1099), st.floats(1, 100))
def test_warmth_and_thin_air_hold_less(temperature, warmer, pressure, thicker):
    here = saturation_mg_l(temperature, pressure)
    assert 0 < saturation_mg_l(temperature + warmer, pressure) < here
    assert here < saturation_mg_l(temperature, pressure + thicker)
