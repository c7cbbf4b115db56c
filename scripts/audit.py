#!/usr/bin/env python3
"""Asks pip-audit and npm audit whether a locked version is known to be unsafe.

python3 scripts/audit.py

Ends with 0 where all were asked and nothing was found, 1 where something was, 2 where one could not be
asked: what was not reached is not called clean.
"""

import os
import sys

if __package__ in (None, ""):  # in place of scripts/, whose test.py would hide Python's own
    sys.path[0] = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))

from scripts.setup.python_version import check_python_version

check_python_version()

from scripts.setup.known_unsafe import Audit, audits
from scripts.setup.say import say

STATUS = {"clean": 0, "found": 1, "not asked": 2}


def main() -> int:
    """Print a line for each lock, and what was found below it. Returns the exit status."""
    results: list[Audit] = []
    for result in audits():
        say(f"{result.lock}: {result.state}{f' ({result.why})' if result.why else ''}")
        for line in result.found:
            say(f"  {line}")
        results.append(result)
    states = {result.state for result in results}
    return next(STATUS[state] for state in ("found", "not asked", "clean") if state in states)


if __name__ == "__main__":
    raise SystemExit(main())
