"""Units against reference libraries, and the words where a mix-up does harm."""

import molmass
import pytest

from calculators.core.result import BadInput
from calculators.core.run import run


def convert(value, from_, to):
    return run("units", {"value": value, "from": from_, "to": to})["outputs"]["result"]


def test_p2o5_to_phosphate_is_what_a_library_of_masses_says():
    expected = 2 * molmass.Formula("PO4").mass / molmass.Formula("P2O5").mass
    assert convert(1, "p2o5", "phosphate") == pytest.approx(expected, rel=1e-4)
    assert convert(1, "phosphate", "p2o5") == pytest.approx(1 / expected, rel=1e-4)


@pytest.mark.parametrize("unit", ["french-degree", "english-degree", "grain-us-gallon", "dgh"])
def test_there_and_back_is_the_same(unit):
    assert convert(convert(7.3, unit, "ppm-caco3"), "ppm-caco3", unit) == pytest.approx(7.3)


def test_a_bare_degree_is_not_taken_for_granted():
    notes = run("units", {"from": "dgh", "to": "french-degree"})["notes"]
    assert any("may be German, French or English" in note["text"] for note in notes)


def test_hardness_does_not_become_mass():
    with pytest.raises(BadInput, match="cannot become gram"):
        run("units", {"from": "dgh", "to": "gram"})
