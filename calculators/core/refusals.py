"""Words for inputs that a formula refuses together, with their limits in the unit that the person sees."""

from collections.abc import Mapping
from typing import Any

from calculators.core.declare import Spec
from calculators.core.fields import InputField
from calculators.core.limits import allowed
from calculators.core.result import Refusal, Refused
from calculators.core.shown_units import System


def contradictory(
    spec: Spec, given: Mapping[str, Any], system: System = "metric"
) -> list[tuple[str, str]]:
    """What does not go together among inputs of which some could not be read."""
    refusals = spec.contradictions(given) if spec.contradictions else ()
    return worded(spec, Refused(*refusals), system)


def worded(spec: Spec, refused: Refused, system: System) -> list[tuple[str, str]]:
    """Word each refusal with its limits in the unit that the person sees."""
    return [
        (
            refusal.key,
            f"{refusal.why}; {allowed(narrowed_by(field_at(spec, refusal.key), refusal), system)}",
        )
        for refusal in refused.refusals
    ]


def narrowed_by(field: InputField, refusal: Refusal) -> InputField:
    """The field with the limits and choices that a refusal leaves it."""
    naming = field.naming._replace(choices=tuple(refusal.choices))
    return field._replace(naming=naming, low=refusal.low, high=refusal.high)


def field_at(spec: Spec, key: str) -> InputField:
    """The field of a key, also of one inside a row, such as ``readings[3].day``."""
    name, _, part = key.partition(".")
    field = next(asked for asked in spec.inputs if asked.key == name.partition("[")[0])
    return next(inner for inner in field.row if inner.key == part) if part else field
