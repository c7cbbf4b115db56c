"""The command that runs the tests, once it is inside the project's environment."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from scripts.benches.suite import SuiteRecord
from scripts.records.load import BadRecords
from scripts.setup.chromium import ensure_chromium
from scripts.setup.cores import cores
from scripts.setup.engines import ensure_engines
from scripts.setup.engines_walked import TESTS, WALKED, EnginesWalked
from scripts.setup.node import browser_parts
from scripts.setup.say import Missing, say, stop
from scripts.tables.make import make_tables

ENGINES = "--engines"
THOROUGH = "--thorough"  # it takes the whole browser, as people have it
MOST_WORKERS = 4  # more would fight for memory, each with a browser of its own


def main() -> int:
    """Make the tables, find or install a browser, run the tests; the exit status is pytest's."""
    try:
        make_tables()
        os.environ["CHROMIUM"] = ensure_chromium(windowless=THOROUGH not in sys.argv)
        browser_parts(tools=True)
        if ENGINES in sys.argv:
            ensure_engines()
    except Missing as missing:
        stop(str(missing))
    except BadRecords as bad:
        stop(f"the records do not hold\n{bad}")
    except KeyboardInterrupt:
        stop("interrupted; the same command goes on from here", status=130)
    words = sys.argv[1:]
    walks = ENGINES in words and not names_tests(words)
    walked, line = walk_alone() if walks else (0, "")
    if walks:
        words = [*(word for word in words if word != ENGINES), f"--ignore={TESTS}"]
    status = int(
        pytest.main(
            [*in_parallel(THOROUGH in words), *words], plugins=[SuiteRecord(words), EnginesWalked()]
        )
    )
    if line:
        say(line)
    return status or walked


def in_parallel(thorough: bool) -> list[str]:
    """How the work is shared out: one worker more than cores, since in everyday use a third of them wait for
    their browser. In a thorough run they build and count, and each has a core.
    """
    workers = cores() if thorough else cores() + 1
    return ["-n", str(min(workers, MOST_WORKERS)), "--dist", "worksteal"]


def names_tests(words: list[str]) -> bool:
    """Whether some of the words are files or folders of tests, so that these alone are run."""
    return any(Path(word.partition("::")[0]).exists() for word in words)


def walk_alone() -> tuple[int, str]:
    """Walk the core path in each engine before the other tests, which would take its time.

    The exit status, and the line that says which engines were walked.
    """
    command = [sys.executable, "-m", "scripts.test", ENGINES, TESTS, "-n", "0"]
    done = subprocess.run(command, stdout=subprocess.PIPE, text=True)
    print(done.stdout, flush=True)
    lines = [one for one in done.stdout.splitlines() if one.startswith(WALKED)]
    return done.returncode, "".join(lines[-1:])
