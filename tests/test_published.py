"""Every calculator gives the published figures of tests/published/, within the tolerance beside them."""

import pytest

from calculators.core.listing import load_all
from calculators.core.run import run
from scripts.records.published import cases

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
