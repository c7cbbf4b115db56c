"""The bridge's reply to the page at the tank: nothing in an address keeps the answer away."""

from collections.abc import Mapping
from typing import Any

from calculators.core.declare import Spec
from calculators.core.messages import Reply
from calculators.core.paint.page import answered, problems_shown
from calculators.core.result import BadInput
from calculators.core.run import compute
from calculators.core.units import System
from calculators.diagnose.questioning import answers_tapped, diagnosis_and_question, fields_of
from calculators.diagnose.readable_words import left_out, readable_only, without


def questioning_reply(
    spec: Spec,
    given: Mapping[str, Any],
    asked: Mapping[str, Any],
    system: System,
) -> Reply:
    """The diagnosis from all that can be read; ``dropped`` names the rest, ``left_out`` says it.

    ``asked`` is as ``diagnosis_and_question`` takes it; its ``unknown`` are words of the address
    that the page has no field for. Figures that cannot be read come as ``problems`` too, beside the answer.
    """
    readable, dropped = readable_only(spec.inputs, given)
    taps = answers_tapped(asked)
    lost = [key for key in asked.get("asked", ()) if key not in taps]
    dropped = [*map(str, asked.get("unknown", ())), *dropped, *map(str, lost)]
    reply: Reply = {"given": dict(given)}
    try:
        result = compute(spec.name, readable, typed=True, system=system)
    except BadInput as bad:
        reply["problems"] = problems_shown(bad)
        result = compute(spec.name, without(readable, reply["problems"]), typed=True, system=system)
    made = answered(spec, result, system)
    reply["answer"], reply["painted"] = made["answer"], made["painted"]
    reply["address"] = made["address"]
    reply["questioning"] = diagnosis_and_question(
        spec, result.answer, {**asked, "asked": taps}, system
    )
    wrong = [fields_of(spec)[key].label for key in reply.get("problems", ())]
    reply["dropped"] = list(dict.fromkeys(dropped))
    reply["left_out"] = left_out(dropped, wrong)
    return reply
