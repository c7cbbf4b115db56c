"""A plugin of pytest that says, at a run's end, in which engines the core path was walked."""

from typing import Protocol

TESTS = "tests/engines/"
WALKED = "core path by engine: "  # how the line begins
PROPERTY = "engine"  # what a walk records: the engine's name and version


class WalkReport(Protocol):
    """What is asked of pytest's report of one phase of a test."""

    when: str
    nodeid: str
    outcome: str
    longrepr: object
    user_properties: list[tuple[str, object]]


class Terminal(Protocol):
    """What is asked of pytest's terminal."""

    def write_line(self, line: str) -> None:
        """Print one line."""


class EnginesWalked:
    """Collects the walks as they end, and prints a line for each."""

    def __init__(self) -> None:
        self.lines: list[str] = []

    def pytest_runtest_logreport(self, report: WalkReport) -> None:
        """Note a walk that ended, or why one was not made."""
        if not report.nodeid.startswith(TESTS):
            return
        name = report.nodeid.partition("[")[2].rstrip("]")
        if report.outcome == "skipped":
            reason = str(report.longrepr[2]) if isinstance(report.longrepr, tuple) else ""
            self.lines.append(f"{name}: not walked ({reason.removeprefix('Skipped: ')})")
        elif report.when == "call":
            versions = [str(value) for key, value in report.user_properties if key == PROPERTY]
            self.lines.append(f"{versions[0] if versions else name}: {report.outcome}")

    def pytest_terminal_summary(self, terminalreporter: Terminal) -> None:
        """Print what was walked, where any walk was asked for."""
        if self.lines:
            terminalreporter.write_line(WALKED + "; ".join(sorted(self.lines)))
