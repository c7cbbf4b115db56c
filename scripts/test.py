#!/usr/bin/env python3
"""Set everything up and run every test, the browser's included. Words after it go to pytest.

python3 scripts/test.py [--thorough] [pytest's options]

``--thorough`` draws every example that a property asks for; without it a sample of them is drawn.
"""

import sys
from pathlib import Path

if __package__ in (None, ""):
    sys.path[0] = str(
        Path(__file__).resolve().parents[1]
    )  # not scripts/: this file would hide Python's test

from scripts.setup.environment import enter
from scripts.setup.say import Missing, stop

try:
    enter(("build", "test"), "scripts.test")
except Missing as missing:
    stop(str(missing))

import os

import pytest

from scripts.benches.suite import SuiteRecord
from scripts.records.load import BadRecords
from scripts.setup.chromium import ensure_chromium
from scripts.setup.node import browser_parts
from scripts.tables.make import make_tables

# A worker for each core; more than four would fight for memory, each with a browser of its own.
IN_PARALLEL = ("-n", "auto", "--maxprocesses", "4", "--dist", "worksteal")


def main() -> int:
    """Make the tables, find or install a browser, run the tests; the exit status is pytest's."""
    try:
        make_tables()
        os.environ["CHROMIUM"] = ensure_chromium()
        browser_parts(tools=True)
    except Missing as missing:
        stop(str(missing))
    except BadRecords as bad:
        stop(f"the records do not hold\n{bad}")
    words = sys.argv[1:]
    return int(pytest.main([*IN_PARALLEL, *words], plugins=[SuiteRecord(words)]))


if __name__ == "__main__":
    raise SystemExit(main())
