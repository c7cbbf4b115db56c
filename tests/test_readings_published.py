"""Published figures for the calculators of readings and animals."""

from pathlib import Path

import pytest
import yaml

from calculators.core.run import run

PUBLISHED = Path(__file__).parent / "published"
CASES = [
    pytest.param(calculator, case, id=case["name"][:60])
    for calculator in ("trend", "oxygen", "stocking")
    for case in yaml.safe_load((PUBLISHED / f"{calculator}.yml").read_text(encoding="utf-8"))
]


@pytest.mark.parametrize(("calculator", "case"), CASES)
def test_reproduces_the_published_figure(calculator, case):
    outputs = run(calculator, case["given"])["outputs"]
    within = case.get("within", 0.0)
    for key, expected in case["expect"].items():
        if isinstance(expected, str):
            assert outputs[key] == expected
        else:
            tolerance = within[key] if isinstance(within, dict) else within
            assert outputs[key] == pytest.approx(expected, abs=tolerance, rel=0), key
