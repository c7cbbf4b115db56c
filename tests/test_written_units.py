"""Numbers with a unit written out are converted, shown as understood, or refused with what would do.

Factors: NIST SP 811 (2008), appendix B.8, from memory; inch, gallons and pound are exact by
definition. French degrees are 10 mg/L as calcium carbonate, English ones 14.25, US grains 17.12
(trade handbooks, from memory).
"""

import json

import pytest

from calculators.bridge import answer
from calculators.core.result import BadInput
from calculators.core.run import run

UNDERSTOOD = [
    ("water-change", "volume_l", "5 gal", 18.92706),
    ("water-change", "volume_l", "5 US gal", 18.92706),
    ("water-change", "volume_l", "5 imp gal", 22.73045),
    ("water-change", "now_mg_l", "250 ppm", 250),
    ("water-change", "now_mg_l", "0.25 g/L", 250),
    ("oxygen", "temperature_c", "78F", 25.55556),
    ("oxygen", "temperature_c", "78 °F", 25.55556),
    ("oxygen", "pressure_hpa", "29.92 inHg", 1013.21),
    ("floaters", "length_cm", "12 in", 30.48),
    ("floaters", "length_cm", "20 cm", 20),
    ("floaters", "length_cm", '12"', 30.48),
    ("tank", "glass_mm", "1 cm", 10),
    ("trimmings", "wet_g", "1 oz", 28.34952),
    ("trimmings", "wet_g", "0.5 kg", 500),
    ("hardness", "gh_dh", "250 ppm", 14.01),
    ("hardness", "gh_dh", "10 °fH", 5.603),
    ("hardness", "gh_dh", "10 °e", 7.986),
    ("hardness", "gh_dh", "10 gpg", 9.591),
    ("hardness", "gh_dh", "1 mmol/L", 5.608),
    ("hardness", "kh_dh", "1 meq/L", 2.804),
    ("dosing", "dose_ml", "2 tsp", 9.857843),
]  # fmt: skip


@pytest.mark.parametrize(("name", "key", "text", "metric"), UNDERSTOOD)
def test_a_written_unit_is_understood_typed_and_in_json(name, key, text, metric):
    for typed in (True, False):
        assert run(name, {key: text}, typed=typed)["inputs"][key] == pytest.approx(metric, rel=3e-4)


def test_a_decimal_comma_is_understood_and_shown():
    reply = remarks("hardness", {"gh_dh": "7,6", "kh_dh": "7.6", "ph": "7"})
    assert reply == {"gh_dh": "Read as 7.6 °dH"}


def remarks(name, given, units="metric"):
    request = {"calculator": name, "given": given, "own": True, "units": units, "given_in": units}
    return json.loads(answer(json.dumps(request)))["remarks"]


def test_it_is_shown_as_understood_in_the_units_of_the_page():
    assert remarks("water-change", {"volume_l": "5 gal"}) == {"volume_l": "Read as 18.93 L"}
    assert remarks("water-change", {"volume_l": "20 L"}, "us") == {
        "volume_l": "Read as 5.283 US gal"
    }
    assert remarks("water-change", {"volume_l": "5 US gal"}, "us") == {}
    assert remarks("water-change", {"volume_l": "20"}) == {}


@pytest.mark.parametrize(
    ("name", "key", "text", "part"),
    [
        ("water-change", "volume_l", "5 lb", "write L, mL, US gal"),
        ("nitrogen-forecast", "start_ammonia_mg_n_l", "1 ppm", "write mg N/L"),
        ("hardness", "kh_dh", "1 mmol/L", "write °dH"),
        ("hardness", "ph", "7 pH", "write the number alone"),
        ("water-change", "volume_l", "five", "is not a number"),
        ("water-change", "volume_l", "5 ft 3 in", "write L, mL"),
        ("water-change", "volume_l", "1,000 L", "without a thousands mark"),
    ],
)
def test_a_unit_that_will_not_do_is_refused_with_those_that_will(name, key, text, part):
    for typed in (True, False):
        with pytest.raises(BadInput) as bad:
            run(name, {key: text}, typed=typed)
        assert part in dict(bad.value.problems)[key]


def test_plain_text_for_a_number_stays_refused_in_json():
    with pytest.raises(BadInput):
        run("water-change", {"volume_l": "20"})


def test_78_as_celsius_suggests_fahrenheit_and_25_the_other_way_round():
    with pytest.raises(BadInput) as bad:
        run("oxygen", {"temperature_c": 78.0})
    assert "If it is in °F, write 78 °F" in dict(bad.value.problems)["temperature_c"]
    with pytest.raises(BadInput) as bad:
        run("oxygen", {"temperature_c": "25"}, typed=True, system="us")
    assert "If it is in °C, write 25 °C" in dict(bad.value.problems)["temperature_c"]
    with pytest.raises(BadInput) as bad:
        run("oxygen", {"temperature_c": 500.0})
    assert "°F" not in dict(bad.value.problems)["temperature_c"]
