"""The line that says in which engines the core path was walked, and in which not."""

from types import SimpleNamespace

import pytest

from scripts.setup import test_command
from scripts.setup.engines_walked import EnginesWalked
from scripts.setup.test_command import names_tests


def report(name, *, when="call", outcome="passed", longrepr=None, properties=()):
    return SimpleNamespace(
        nodeid=f"tests/engines/test_core_path.py::test_the_core_path_can_be_walked[{name}]",
        when=when, outcome=outcome, longrepr=longrepr, user_properties=list(properties),
    )  # fmt: skip


def said(*reports):
    lines = []
    walked = EnginesWalked()
    for one in reports:
        walked.pytest_runtest_logreport(one)
    walked.pytest_terminal_summary(SimpleNamespace(write_line=lines.append))
    return lines


def test_each_engine_is_named_with_what_came_of_it():
    missing = ("file", 1, "Skipped: webkit is not on this machine")
    (line,) = said(
        report("firefox", properties=[("engine", "Firefox 140.2")]),
        report("firefox", when="teardown", properties=[("engine", "Firefox 140.2")]),
        report("chromium", outcome="failed"),
        report("webkit", when="setup", outcome="skipped", longrepr=missing),
    )
    assert line == (
        "core path by engine: Firefox 140.2: passed; chromium: failed; "
        "webkit: not walked (webkit is not on this machine)"
    )


def test_nothing_is_said_where_no_walk_was_asked_for():
    other = SimpleNamespace(
        nodeid="tests/test_units.py::test_x",
        when="call",
        outcome="passed",
        longrepr=None,
        user_properties=[],
    )
    assert said(other) == []


def test_words_that_name_tests_are_told_from_options():
    assert names_tests(["--engines", "tests/test_units.py::test_x"])
    assert names_tests(["tests/engines", "-q"])
    assert not names_tests(["--thorough", "--engines", "-q", "-k", "tests and units"])


@pytest.mark.parametrize(("walked", "others", "status"), [(0, 0, 0), (1, 0, 1), (0, 1, 1)])
def test_engines_are_walked_alone_before_the_other_tests_and_said_last(
    monkeypatch, capsys, walked, others, status
):
    line = "core path by engine: Firefox 140.2: passed"
    ran = []

    def run(command, **_):
        ran.append(command[-4:])
        return SimpleNamespace(returncode=walked, stdout=f"...\n{line}\n1 passed\n")

    def run_others(words, plugins):
        ran.append(words)
        return others

    for name in ("make_tables", "ensure_engines"):
        monkeypatch.setattr(test_command, name, lambda: None)
    monkeypatch.setattr(test_command, "ensure_chromium", lambda **_: "chromium")
    monkeypatch.setattr(test_command, "browser_parts", lambda **_: None)
    monkeypatch.setattr(test_command, "SuiteRecord", lambda words: None)
    monkeypatch.setattr(test_command.subprocess, "run", run)
    monkeypatch.setattr(test_command.pytest, "main", run_others)
    monkeypatch.setattr(test_command.sys, "argv", ["test.py", "--thorough", "--engines"])
    monkeypatch.setenv("CHROMIUM", "")
    assert test_command.main() == status
    assert ran[0] == ["--engines", "tests/engines/", "-n", "0"]
    assert ran[1][-2:] == ["--thorough", "--ignore=tests/engines/"]
    assert capsys.readouterr().out.rstrip().endswith(line)
