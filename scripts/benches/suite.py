"""The last whole run of the tests: written by ``scripts/test.py``, printed by the bench of the structure."""

import json
import os
from datetime import datetime
from pathlib import Path
from time import perf_counter
from typing import Protocol, TypedDict

from scripts.setup.paths import BUILD

FILE = BUILD / "suite.json"


class SuiteRun(TypedDict):
    """A run: when it ended, seconds by the clock and of the processors, tests, and pytest's words."""

    when: str
    seconds: float
    processor_seconds: float
    tests: int
    words: list[str]


class Report(Protocol):
    """What is asked of pytest's report of one phase of a test."""

    when: str


class SuiteRecord:
    """A plugin of pytest that counts tests and writes the run down when it ends."""

    def __init__(self, words: list[str], file: Path = FILE) -> None:
        self.words, self.file, self.tests = words, file, 0
        self.start, self.used = perf_counter(), processor_seconds()

    def pytest_runtest_logreport(self, report: Report) -> None:
        """Count each test once, at its end."""
        self.tests += report.when == "teardown"

    def pytest_unconfigure(self) -> None:
        """Write it down once the workers have ended, so that their seconds are known."""
        run = SuiteRun(
            when=datetime.now().astimezone().isoformat(timespec="seconds"),
            seconds=round(perf_counter() - self.start, 1),
            processor_seconds=round(processor_seconds() - self.used, 1),
            tests=self.tests,
            words=self.words,
        )
        self.file.parent.mkdir(parents=True, exist_ok=True)
        self.file.write_text(json.dumps(run), encoding="utf-8")


def processor_seconds() -> float:
    """Seconds of the processors that this process and those that it waited for have used."""
    times = os.times()
    return times.user + times.system + times.children_user + times.children_system


def last_suite(file: Path = FILE) -> str:
    """The last run in a sentence."""
    if not file.exists():
        return "no run of the tests is on record: run python3 scripts/test.py"
    run: SuiteRun = json.loads(file.read_text(encoding="utf-8"))
    words = f" ({' '.join(run['words'])})" if run["words"] else ""
    return (
        f"{run['seconds']:.0f} s for the last run of {run['tests']} tests{words}, "
        f"{run['processor_seconds']:.0f} s of processors, {run['when']}"
    )
