"""What a build asks of every calculator: found without importing them, where an earlier build has asked.

All of them take a tenth of a second to import, and most changes of a record need none.
"""

import json
from functools import cache
from typing import NamedTuple

from scripts.setup.file_hash import hash_of_files
from scripts.setup.kept import kept
from scripts.setup.paths import TABLES
from scripts.setup.surroundings import packages

KIND = "calculator-facts"


class CalculatorFacts(NamedTuple):
    """Of one calculator: its name, title and purpose, and the keys of the sources that it cites."""

    name: str
    title: str
    purpose: str
    sources: list[str]


@cache
def calculator_facts() -> list[CalculatorFacts]:
    """Of every calculator, by name. They follow from our code, and from the tables that it reads."""
    found = kept(KIND, f"{packages()}\0{tables_now()}", asked_of_all)
    return [CalculatorFacts(*facts) for facts in json.loads(found)]


def asked_of_all() -> str:
    """The facts as JSON, asked of the calculators themselves."""
    from calculators.core.listing import load_all

    facts = [
        CalculatorFacts(spec.name, spec.title, spec.purpose, list(spec.sources))
        for spec in load_all().values()
    ]
    return json.dumps(facts, ensure_ascii=False)


def tables_now() -> str:
    """A hash of the tables that the calculators read."""
    return hash_of_files(sorted(TABLES.glob("*.json")))
