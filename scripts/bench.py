#!/usr/bin/env python3
"""Measures the build and the phone's waiting time; prints tables. Not a test: figures depend on the machine.

python3 scripts/bench.py [builds] [weights] [browser] [calculators] [forecast]
    [shelf] [shelf-store] [shelf-pages] [structure]
"""

import os
import sys

if __package__ in (None, ""):  # in place of scripts/, whose test.py would hide Python's own
    sys.path[0] = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))

from scripts.setup.python_version import check_python_version

check_python_version()

from scripts.setup.enter import enter_or_stop

enter_or_stop(("build", "test"), "scripts.bench")

from scripts.records.load import BadRecords
from scripts.setup.say import stop
from scripts.tables.make import make_tables

try:
    make_tables()  # before the calculators, which read them as they are imported
except BadRecords as bad:
    stop(f"the records do not hold\n{bad}")

from scripts.benches.browser import browser
from scripts.benches.builds import builds, weights
from scripts.benches.calculators import every_calculator
from scripts.benches.forecast import forecast
from scripts.benches.shelf import shelf
from scripts.benches.shelf_pages import shelf_pages
from scripts.benches.shelf_store import shelf_store
from scripts.benches.structure import structure

PARTS = {
    "builds": builds,
    "weights": weights,
    "browser": browser,
    "calculators": every_calculator,
    "forecast": forecast,
    "shelf": shelf,
    "shelf-store": shelf_store,
    "shelf-pages": shelf_pages,
    "structure": structure,
}


def main() -> None:
    """Run the parts that are named, or all."""
    asked = sys.argv[1:] or list(PARTS)
    for name in asked:
        if name not in PARTS:
            stop(f"{name}: there is no such part; there are {', '.join(PARTS)}")
    for name in asked:
        print(f"\n## {name}\n", flush=True)
        PARTS[name]()


if __name__ == "__main__":
    main()
