"""Form and types: the same tools that people run."""

import subprocess
import sys

import pytest

from scripts.setup.paths import ROOT


@pytest.mark.parametrize(
    "words",
    [("ruff", "check", "."), ("ruff", "format", "--check", "."), ("mypy",)],
    ids=["lint", "format", "types"],
)
def test_is_clean(words):
    done = subprocess.run([sys.executable, "-m", *words], cwd=ROOT, capture_output=True, text=True)
    assert done.returncode == 0, f"{done.stdout}{done.stderr}"
