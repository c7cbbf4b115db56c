"""The command that runs the tests, once it is inside the project's environment."""

import os
import sys

import pytest

from scripts.benches.suite import SuiteRecord
from scripts.records.load import BadRecords
from scripts.setup.chromium import ensure_chromium
from scripts.setup.engines import ensure_engines
from scripts.setup.engines_walked import EnginesWalked
from scripts.setup.node import browser_parts
from scripts.setup.say import Missing, stop
from scripts.tables.make import make_tables

ENGINES = "--engines"
THOROUGH = "--thorough"  # it takes the whole browser, as people have it
# A worker for each core; more than four would fight for memory, each with a browser of its own.
IN_PARALLEL = ("-n", "auto", "--maxprocesses", "4", "--dist", "worksteal")


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
    return int(pytest.main([*IN_PARALLEL, *words], plugins=[SuiteRecord(words), EnginesWalked()]))
