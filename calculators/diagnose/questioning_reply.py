"""The bridge's reply to the page at the tank: nothing in an address keeps the answer away."""

from collections.abc import Callable, Mapping
from typing import Any

from calculators.core.declare import Spec
from calculators.core.result import BadInput
from calculators.core.run import Found, compute
from calculators.core.units import System
from calculators.diagnose.known_words import known_only, left_out, without
from calculators.diagnose.questioning import fields_of, known_taps, look

# The page's door makes of a result what the page paints; it hands that function in.
Answered = Callable[[Spec, Found, System], dict[str, Any]]


def look_reply(
    spec: Spec,
    given: Mapping[str, Any],
    asked: Mapping[str, Any],
    system: System,
    answered: Answered,
    problems_shown: Callable[[BadInput], dict[str, str]],
) -> dict[str, Any]:
    """The diagnosis from all that can be read; ``dropped`` names the rest, ``left_out`` says it.

    ``asked`` is as ``look`` takes it; its ``unknown`` are words of the address that the page has no
    field for. Figures that cannot be read come as ``problems`` too, beside the answer.
    """
    kept, dropped = known_only(spec.inputs, given)
    taps = known_taps(asked)
    lost = [key for key in asked.get("asked", ()) if key not in taps]
    dropped = [*map(str, asked.get("unknown", ())), *dropped, *map(str, lost)]
    reply: dict[str, Any] = {"given": dict(given)}
    try:
        found = compute(spec.name, kept, typed=True, system=system)
    except BadInput as bad:
        reply["problems"] = problems_shown(bad)
        found = compute(spec.name, without(kept, reply["problems"]), typed=True, system=system)
    reply |= answered(spec, found, system)
    reply["look"] = look(spec, found.answer, {**asked, "asked": taps}, system)
    wrong = [fields_of(spec)[key].label for key in reply.get("problems", ())]
    reply["dropped"] = list(dict.fromkeys(dropped))
    reply["left_out"] = left_out(dropped, wrong)
    return reply
