"""The line that says in which engines the core path was walked, and in which not."""

from types import SimpleNamespace

from scripts.setup.engines_walked import EnginesWalked


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
