"""An answer from all that can be read, where a page must not stop at what cannot."""

from collections.abc import Mapping
from typing import Any

from calculators.core.declare import Spec
from calculators.core.messages import Reply
from calculators.core.paint.answer_for_page import answered, problems_shown
from calculators.core.readable_words import without
from calculators.core.result import BadInput
from calculators.core.run import Computed, compute
from calculators.core.shown_units import System


def partial_answer(
    spec: Spec,
    given: Mapping[str, Any],
    readable: Mapping[str, Any],
    system: System,
    *,
    own: bool = False,
) -> tuple[Reply, Computed]:
    """The reply and the run behind it; figures that cannot be read come as ``problems`` beside the answer.

    Raises ``BadInput`` where even that does not hold.
    """
    reply: Reply = {"given": dict(given)}
    try:
        result = compute(spec.name, readable, typed=True, system=system, own=own)
    except BadInput as bad:
        reply["problems"] = problems_shown(bad)
        good = without(readable, reply["problems"])
        result = compute(spec.name, good, typed=True, system=system, own=own)
    made = answered(spec, result, system)
    reply["answer"], reply["painted"] = made["answer"], made["painted"]
    reply["address"] = made["address"]
    return reply, result
