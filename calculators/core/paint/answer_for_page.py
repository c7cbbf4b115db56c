"""An answer for the page: as the contract has it, painted, and the address that gives it again."""

import re
from collections.abc import Mapping
from typing import Any, TypedDict

from calculators.core.address import address
from calculators.core.declare import Spec
from calculators.core.messages import Answer, Painted
from calculators.core.paint.answered_rows import answered_rows
from calculators.core.paint.figure_table import figure_lines
from calculators.core.paint.fragment import fragment
from calculators.core.paint.notes import brief
from calculators.core.paint.worded_lists import worded_lines
from calculators.core.result import BadInput
from calculators.core.run import Computed
from calculators.core.shown_units import System

COMMAND_ONLY = re.compile(", which --describe names")


class Answered(TypedDict):
    """The part of a reply that an answer makes."""

    answer: Answer
    painted: Painted
    address: dict[str, str]


def answered(spec: Spec, computed: Computed, system: System, *, leads_on: bool = True) -> Answered:
    """The answer and what goes with it; see ``fragment`` for ``leads_on``."""
    data = computed.answer.copy()
    data["inputs"] = without_octets(spec, data["inputs"])
    return {
        "answer": data,
        "painted": {
            "html": fragment(spec, computed, system, leads_on=leads_on),
            "brief": brief(spec, computed, system),
            "lines": [
                *figure_lines(answered_rows(spec, computed.answer, system)),
                *worded_lines(spec, computed.answer),
            ],
        },
        "address": address(spec, computed.answer["inputs"], system),
    }


def problems_shown(bad: BadInput) -> dict[str, str]:
    """What is wrong by field, without what only a command line can do."""
    return {key: COMMAND_ONLY.sub("", text) for key, text in bad.problems}


def without_octets(spec: Spec, values: Mapping[str, Any]) -> dict[str, Any]:
    """The inputs without pictures, which the page has already and which are long."""
    long = {field.key for field in spec.inputs if field.octets}
    return {key: value for key, value in values.items() if key not in long}
