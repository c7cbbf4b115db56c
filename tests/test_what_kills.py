"""What kills is asked of ammonia in two ways: one declaration each, and where they differ a reason."""

from itertools import product

import pytest

from calculators.core.run import run
from calculators.science.animals.toxic_lines import (
    ammonia_grade,
    ammonia_kills,
    least_deadly_ammonia_mg_n_l,
)
from calculators.science.nitrogen.filter_load import filter_load
from calculators.science.water.ammonia import (
    acute_limit_mg_n_l,
    free_kills,
    unionised_share,
)

WATERS = list(product((5.5, 6.5, 7.0, 7.6, 8.0, 8.6, 9.0), (8.0, 18.0, 25.0, 31.0)))


@pytest.mark.parametrize(("ph", "warmth"), WATERS)
def test_free_ammonia_that_kills_is_deadly_and_the_total_may_be_so_before_it(ph, warmth):
    for total in (0.02, 0.1, 0.5, 2.0, 8.0, 25.0, 50.0):
        free = free_kills(total * unionised_share(ph, warmth))
        assert not free or ammonia_kills(total, ph, warmth)
        by_total = total > acute_limit_mg_n_l(ph, warmth)
        assert ammonia_kills(total, ph, warmth) == (free or by_total)
        assert ammonia_kills(total, ph, warmth) == (ammonia_grade(total, ph, warmth) == "deadly")


def test_in_acid_water_the_total_kills_while_little_of_it_is_free():
    """By the criterion for an hour; hardly any of the ammonium is free there."""
    total, ph, warmth = 30.0, 6.2, 25.0
    assert total > acute_limit_mg_n_l(ph, warmth)
    assert not free_kills(total * unionised_share(ph, warmth))
    assert ammonia_kills(total, ph, warmth)


@pytest.mark.parametrize(("ph", "warmth"), WATERS)
def test_a_stopped_filter_kills_when_either_line_is_reached(ph, warmth):
    """The free part reaches its line long before the acute criterion in warm, alkaline water."""
    load = filter_load(60.0, 60.0, ph, warmth)
    hours = 24 * least_deadly_ammonia_mg_n_l(ph, warmth) / 1.0
    assert load.hours_to_death == pytest.approx(hours)
    assert load.hours_to_death <= 24 * acute_limit_mg_n_l(ph, warmth)


@pytest.mark.parametrize("gh", [4.0, 24.0])
def test_ammonia_that_kills_by_its_total_is_bound_and_its_change_not_hurried(gh):
    """A quick change of such water would free what it is meant to take out."""
    given = {"ammonia_mg_l": 32.0, "reported_as": "nitrogen", "ph": 6.6, "kh_dh": 0.5, "temperature_c": 5.0,
             "tap_ph": 6.6, "tap_kh_dh": 0.5, "gh_dh": 4.0, "tap_gh_dh": gh}  # fmt: skip
    answer = run("ammonia-change", given)
    text = answer["notes"][0]["text"]
    assert "animals can die within hours" in text
    assert "To gain time, give a conditioner that binds ammonia" in text
    assert "kills sooner" not in text
    assert answer["outputs"]["advised_percent"] * (gh - 4.0) / 100 <= 2.0
