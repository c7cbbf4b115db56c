"""What the last run of the tests took is written down and told."""

import json
from types import SimpleNamespace

from scripts.benches.suite import SuiteRecord, last_suite


def test_a_run_counts_each_test_once_and_is_told(tmp_path):
    file = tmp_path / "build" / "suite.json"
    assert last_suite(file).startswith("no run")
    record = SuiteRecord(["tests/test_x.py"], file)
    for when in ("setup", "call", "teardown", "setup", "teardown"):  # the second was skipped
        record.pytest_runtest_logreport(SimpleNamespace(when=when))
    record.start -= 100
    record.pytest_unconfigure()
    held = json.loads(file.read_text(encoding="utf-8"))
    assert held["tests"] == 2
    assert held["seconds"] >= 100
    assert last_suite(file).startswith("100 s for the last run of 2 tests (tests/test_x.py), ")
