#!/usr/bin/env python3
"""Measures the build and the phone's waiting time; prints tables. Not a test: figures depend on the machine.
What is measured in a browser is the site that stands in site/: build it first.

python3 scripts/bench.py [builds] [weights] [browser] [calculators] [forecast]
    [claims] [hostile] [same-bytes] [shelf] [shelf-store] [shelf-pages] [structure]
    [first-answer] [--runs 7] [--only first,later,path,stock,slow-line]
The options are for browser (worker, slowed) and first-answer: few runs and rows take minutes less.
"""

import os
import sys

if __package__ in (None, ""):  # in place of scripts/, whose test.py would hide Python's own
    sys.path[0] = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))

from scripts.setup.python_version import check_python_version

check_python_version()

import argparse

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
from scripts.benches.builds import builds
from scripts.benches.calculator_times import every_calculator
from scripts.benches.claim_counts import claims
from scripts.benches.first_answer import first_answer
from scripts.benches.forecast import forecast
from scripts.benches.hostile_addresses import hostile_addresses
from scripts.benches.options import Options
from scripts.benches.same_bytes import same_bytes
from scripts.benches.shelf_pages import shelf_pages
from scripts.benches.shelf_store import shelf_store
from scripts.benches.shelf_sums import shelf
from scripts.benches.structure_report import structure
from scripts.benches.weights import weights

PARTS = {
    "builds": builds,
    "weights": weights,
    "calculators": every_calculator,
    "forecast": forecast,
    "claims": claims,
    "hostile": hostile_addresses,
    "same-bytes": same_bytes,
    "shelf": shelf,
    "shelf-store": shelf_store,
    "shelf-pages": shelf_pages,
    "structure": structure,
}
WITH_OPTIONS = {"browser": browser, "first-answer": first_answer}
RUNS = 7


def main() -> None:
    """Run the parts that are named, or all."""
    reader = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawTextHelpFormatter
    )
    reader.add_argument("parts", nargs="*", metavar="part", help="; ".join([*PARTS, *WITH_OPTIONS]))
    reader.add_argument("--runs", type=int, default=RUNS, help="how often each figure is taken")
    reader.add_argument("--only", default="", help="rows, with commas between them")
    read = reader.parse_args()
    asked = read.parts or [*PARTS, *WITH_OPTIONS]
    for name in asked:
        if name not in PARTS and name not in WITH_OPTIONS:
            stop(f"{name}: there is no such part; there are {', '.join([*PARTS, *WITH_OPTIONS])}")
    options = Options(max(1, read.runs), tuple(filter(None, read.only.split(","))))
    for name in asked:
        print(f"\n## {name}\n", flush=True)
        if name in PARTS:
            PARTS[name]()
        else:
            WITH_OPTIONS[name](options)


if __name__ == "__main__":
    main()
