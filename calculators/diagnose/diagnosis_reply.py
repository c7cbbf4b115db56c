"""The bridge's reply to the page at the tank: nothing in an address keeps the answer away."""

from collections.abc import Mapping
from typing import Any

from calculators.core.declare import Spec
from calculators.core.messages import Reply
from calculators.core.paint.partial_answer import partial_answer
from calculators.core.readable_words import labels_of, left_out
from calculators.core.shown_units import System
from calculators.diagnose.diagnosis_at_tank import answers_tapped, diagnosis_and_question
from calculators.diagnose.readable_findings import readable_case


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
    readable, dropped = readable_case(spec.inputs, given)
    taps = answers_tapped(asked)
    lost = [key for key in asked.get("asked", ()) if key not in taps]
    dropped = [*map(str, asked.get("unknown", ())), *dropped, *map(str, lost)]
    reply, result = partial_answer(spec, given, readable, system)
    reply["questioning"] = diagnosis_and_question(
        spec, result.answer, {**asked, "asked": taps}, system
    )
    reply["dropped"] = list(dict.fromkeys(dropped))
    reply["left_out"] = left_out(dropped, labels_of(spec.inputs, reply.get("problems", ())))
    return reply
