"""What a first action orders of a change of water stands in a field of its record, not in its prose."""

import pytest
from pydantic import ValidationError

from calculators.diagnose import water_step
from calculators.diagnose.problem_table import CAUSES, ChangeOrdered
from calculators.diagnose.water_step import ORDERED, with_this_tap
from calculators.science.water.careful_change import WaterForChange
from scripts.records.problem import Problem
from scripts.setup.paths import ROOT
from tests.plain_yaml import read_yaml

FAR = WaterForChange(kh_dh=3.0, tap_kh_dh=18.0, ph=7.8, ammonia_mg_n_l=0.0)
WITH_CHANGE = sorted(key for key, cause in CAUSES.items() if cause.change)


def written(name):
    return read_yaml(ROOT / "species" / "problems" / f"{name}.yml")


def test_the_words_of_each_change_stand_in_its_first_action():
    assert len(WITH_CHANGE) == 12
    for key in WITH_CHANGE:
        cause = CAUSES[key]
        assert cause.change.words in cause.first_action
        assert cause.change.share in ORDERED
        assert cause.besides


def test_the_share_is_that_of_the_field_whatever_the_words_are(monkeypatch):
    """A translation or a new turn of phrase must not lose the warning."""
    cause = CAUSES["soil-gas-sulphide"]._replace(
        first_action="Do not stir it. Renew three parts in ten, if no ammonia shows.",
        change=ChangeOrdered("third", "Renew three parts in ten"),
    )
    monkeypatch.setitem(water_step.CAUSES, "soil-gas-sulphide", cause)
    text = with_this_tap("soil-gas-sulphide", FAR)
    assert "a change of 33 % would raise it by 5 °dH at once" in text
    assert text.index("begin with 13 %") < text.index("Renew three parts in ten")


def test_words_that_order_nothing_ask_for_no_care(monkeypatch):
    cause = CAUSES["diatoms"]._replace(
        first_action="Do not change half of it, whatever you read.", besides=None, change=None
    )
    monkeypatch.setitem(water_step.CAUSES, "diatoms", cause)
    assert with_this_tap("diatoms", FAR) == cause.first_action


@pytest.mark.parametrize("missing", ["change", "besides"])
def test_a_record_has_both_or_neither(missing):
    raw = written("nitrite-emergency")
    del raw[missing]
    with pytest.raises(ValidationError, match="change and besides go together"):
        Problem.model_validate(raw)


@pytest.mark.parametrize(
    ("change", "says"),
    [
        ({"share": "third", "words": "change a third of all water"}, "copy them letter by letter"),
        ({"share": "two thirds", "words": "change a third of the water now"}, "share"),
    ],
)
def test_a_record_is_refused_whose_change_is_not_that_of_its_words(change, says):
    raw = written("nitrite-emergency") | {"change": change}
    with pytest.raises(ValidationError, match=says):
        Problem.model_validate(raw)


def test_a_record_as_it_stands_is_taken():
    assert Problem.model_validate(written("nitrite-emergency")).change.share == "third"
