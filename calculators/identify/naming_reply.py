"""The bridge's reply to the page that names a plant: nothing in an address keeps the answer away."""

from collections.abc import Mapping
from typing import Any

from calculators.core.declare import Spec
from calculators.core.messages import Reply
from calculators.core.paint.partial_answer import partial_answer
from calculators.core.readable_words import labels_of, left_out, readable_only
from calculators.core.shown_units import System
from calculators.identify.naming_at_tank import naming_pieces


def naming_reply(spec: Spec, given: Mapping[str, Any], system: System) -> Reply:
    """The pieces of the page from all that can be read; ``dropped`` names the rest, ``left_out`` says it."""
    readable, dropped = readable_only(spec.inputs, given)
    reply, result = partial_answer(spec, given, readable, system, own=True)
    reply["questioning"] = naming_pieces(result)
    reply["dropped"] = list(dict.fromkeys(dropped))
    reply["left_out"] = left_out(dropped, labels_of(spec.inputs, reply.get("problems", ())))
    return reply
