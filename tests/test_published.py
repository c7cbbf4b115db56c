"""Every calculator gives the published figures of tests/published/, within the tolerance beside them."""

import pytest

from calculators.core.listing import load_all
from calculators.core.run import run
from scripts.records.published import cases

OURS = ("arithmetic", "point-counting")
ALL = [(name, case) for name in load_all() for case in cases(name)]


@pytest.mark.parametrize("name", load_all())
def test_every_calculator_has_published_cases(name):
    assert cases(name), f"add tests/published/{name}.yml"


@pytest.mark.parametrize(("name", "case"), ALL, ids=[f"{n}: {c.name}" for n, c in ALL])
def test_published_figure(name, case):
    outputs = run(name, case.given)["outputs"]
    for key, expected in case.expect.items():
        if isinstance(expected, float):
            assert outputs[key] == pytest.approx(expected, abs=case.tolerance(key), rel=1e-12), key
        else:
            assert outputs[key] == expected, key


def test_what_is_called_published_is_no_sum_of_ours():
    for name, case in ALL:
        by_hand = case.origin == "by-hand"
        assert by_hand or case.source not in OURS, f"{name}: mark it origin: by-hand"
        if case.name.lower().startswith(("worked by hand", "by hand")):
            assert by_hand, f"{name}: its own words say by hand"


# Calculators that no figure of others covers: their pages say so.
SUMS_ALONE = {
    "floaters",
    "nitrogen-balance",
    "planting-plan",
    "round",
    "surface-cover",
    "top-up",
    "trimmings",
    "upkeep",
    "water-change",
}


def test_every_other_calculator_has_a_figure_of_others():
    alone = {name for name in load_all() if all(c.origin == "by-hand" for c in cases(name))}
    assert alone == SUMS_ALONE
