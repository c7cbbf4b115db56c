"""An answer as a page shows it, and what goes with it; the page's worked example is made by the same."""

import re
from collections.abc import Mapping
from typing import Any

from calculators.core.address import address, write
from calculators.core.declare import Spec
from calculators.core.origin import assumed_words
from calculators.core.paint.answer import downloads
from calculators.core.paint.asked import asked_rows
from calculators.core.paint.cards import lists
from calculators.core.paint.notes import brief, lead, painted, rest
from calculators.core.plot.pictures import plots
from calculators.core.plot.units import in_units
from calculators.core.result import BadInput
from calculators.core.run import Found
from calculators.core.units import System

COMMAND_ONLY = re.compile(", which --describe names")


def answered(spec: Spec, found: Found, system: System) -> dict[str, Any]:
    """An answer for the page: as the contract has it, painted, and the address that gives it again."""
    return {
        "answer": found.answer | {"inputs": without_octets(spec, found.answer["inputs"])},
        "painted": paint(spec, found, system),
        "address": address(spec, found.answer["inputs"], system),
    }


def problems_shown(bad: BadInput) -> dict[str, str]:
    """What is wrong by field, without what only a command line can do."""
    return {key: COMMAND_ONLY.sub("", text) for key, text in bad.problems}


def paint(spec: Spec, found: Found, system: System = "metric") -> dict[str, Any]:
    """All that a page shows of an answer, in the order in which it stands there."""
    outputs = found.answer["outputs"]
    return {
        "brief": brief(spec, found, system),
        "assumed": assumed_words(found.stood_in, system),
        "lead": [painted(note) for note in lead(spec, found)],
        "lists": lists(spec, outputs, system),
        "rows": asked_rows(spec, found.answer, system),
        "notes": [painted(note) for note in rest(spec, found)],
        "downloads": downloads(spec, outputs),
        "onward": leads_shown(found),
        "plots": plots(in_units(found.series, system)),
    }


def leads_shown(found: Found) -> list[dict[str, Any]]:
    """The ways on as a page links them: label, calculator, and inputs as text for its address."""
    return [
        {**way, "inputs": {key: write(value, 6) for key, value in way["inputs"].items()}}
        for way in found.answer.get("leads", ())
    ]


def without_octets(spec: Spec, values: Mapping[str, Any]) -> dict[str, Any]:
    """The inputs without pictures, which the page has already and which are long."""
    long = {field.key for field in spec.inputs if field.octets}
    return {key: value for key, value in values.items() if key not in long}
