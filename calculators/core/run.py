"""The one runner: look up, read, compute, note, and check that nothing infinite gets out."""

import difflib
import math
from collections.abc import Mapping
from typing import Any, NamedTuple

from calculators.core.declare import CATALOGUE, Field, Spec
from calculators.core.leads import leads
from calculators.core.left_empty import StandIns, paths_of, stand_ins
from calculators.core.limits import allowed
from calculators.core.listing import import_calculator, load_all
from calculators.core.numbers import show_number
from calculators.core.read import read_inputs
from calculators.core.result import (
    BadInput,
    Note,
    Refused,
    Series,
    StillNeeded,
    plain,
    series_data,
)
from calculators.core.units import System


class Found(NamedTuple):
    """What a run came to: the contract's answer, and the notes and series as a page paints them."""

    answer: dict[str, Any]
    notes: tuple[Note, ...]
    series: dict[str, Series]
    stood_in: StandIns = StandIns({}, {})  # the inputs that were not given


class UnknownCalculator(LookupError):
    """No calculator has that name; the message offers the nearest."""


def find(name: str) -> Spec:
    """The calculator of that name, its module imported if need be. Raises ``UnknownCalculator``."""
    module = name.replace("-", "_")
    if name not in CATALOGUE and module.isidentifier() and not module.startswith("_"):
        import_calculator(module)
    if name not in CATALOGUE:
        close = difflib.get_close_matches(name, load_all(), 1)
        hint = f"did you mean {close[0]}?" if close else "run without a name to list all"
        raise UnknownCalculator(f"no calculator is called {name!r}; {hint}")
    return CATALOGUE[name]


def run(
    name: str,
    given: Mapping[str, Any],
    *,
    typed: bool = False,
    system: System = "metric",
    own: bool = False,
) -> dict[str, Any]:
    """Answer as the contract says: calculator, inputs, outputs, notes, and series where it has any.

    ``given`` holds metric values by key (``typed``: as text in the units of ``system``).
    Where some were given and others not, ``from_example`` and ``assumed`` name those whose default
    stood in. With ``own`` no example's figure does: ``StillNeeded`` is raised with what is missing.
    Raises ``BadInput`` with all bad fields, ``UnknownCalculator`` for a name that is none.
    """
    return compute(name, given, typed=typed, system=system, own=own).answer


def compute(
    name: str,
    given: Mapping[str, Any],
    *,
    typed: bool = False,
    system: System = "metric",
    own: bool = False,
) -> Found:
    """The same with all that a page needs beside it."""
    spec = find(name)
    try:
        values = read_inputs(spec.inputs, given, typed=typed, system=system, own=own)
    except StillNeeded:
        raise
    except BadInput as bad:
        raise BadInput(*bad.problems, *contradictory(spec, given, system)) from None
    # By position, as declared: a key may be a word of Python, as "from" is.
    arguments = (as_rows(field, values[field.key]) for field in spec.inputs)
    try:
        result = spec.function(*arguments)._asdict()
    except Refused as refused:
        raise BadInput(*worded(spec, refused, system)) from None
    notes = [*outside_source(spec, values), *result.pop("notes", ())]
    series = result.pop("series", {})
    outputs = {}
    for field in spec.outputs:
        outputs[field.key] = plain(result[field.key])
        if not is_finite(result[field.key]):
            outputs[field.key] = None
            notes.append(Note("caution", f"{field.label} cannot be computed from these figures."))
    stood_in = stand_ins(spec.inputs, given, own)
    answer: dict[str, Any] = {
        "calculator": name,
        "inputs": values,
        "outputs": outputs,
        "notes": [{"level": note.level, "text": note.text} for note in notes],
    }
    if given:
        answer |= paths_of(stood_in)
    if ways := leads(spec.leads_to, values, outputs, {*stood_in.assumed, *stood_in.example}):
        answer["leads"] = ways
    if series:
        answer["series"] = {key: series_data(one) for key, one in series.items()}
    return Found(answer, tuple(notes), series, stood_in)


def contradictory(
    spec: Spec, given: Mapping[str, Any], system: System = "metric"
) -> list[tuple[str, str]]:
    """What does not go together among inputs of which some could not be read."""
    found = spec.contradictions(given) if spec.contradictions else ()
    return worded(spec, Refused(*found), system)


def as_rows(field: Field, value: Any) -> Any:
    """Give a formula rows and objects as its own types, nested ones too; anything else as it is."""
    if field.row_type is None or value is None:
        return value
    rows = [
        field.row_type(*(as_rows(part, row[part.key]) for part in field.row))
        for row in ([value] if field.kind == "object" else value)
    ]
    return rows[0] if field.kind == "object" else rows


def worded(spec: Spec, refused: Refused, system: System) -> list[tuple[str, str]]:
    """Word each refusal with its limits in the unit that the person sees."""
    return [
        (
            one.key,
            f"{one.why}; "
            + allowed(
                field_at(spec, one.key)._replace(
                    low=one.low, high=one.high, choices=tuple(one.choices)
                ),
                system,
            ),
        )
        for one in refused.refusals
    ]


def field_at(spec: Spec, key: str) -> Field:
    """The field of a key, also of one inside a row, such as ``readings[3].day``."""
    name, _, part = key.partition(".")
    field = next(one for one in spec.inputs if one.key == name.partition("[")[0])
    return next(one for one in field.row if one.key == part) if part else field


def outside_source(spec: Spec, values: Mapping[str, Any]) -> list[Note]:
    """Notes for values that are possible, but outside what the formula's source supports."""
    return [
        Note("caution", outside_text(field, values[field.key]))
        for field in spec.inputs
        if field.valid and values[field.key] is not None
        if not field.valid.low <= values[field.key] <= field.valid.high
    ]


def outside_text(field: Field, value: float) -> str:
    """Say how far the source reaches."""
    assert field.valid
    span = (
        f"{show_number(field.valid.low)} to {show_number(field.valid.high)} {field.unit}".rstrip()
    )
    return (
        f"{field.label} {show_number(value)} is outside the range that the source of the formula "
        f"covers ({span}). The figures are computed all the same; trust them less."
    )


def is_finite(value: Any) -> bool:
    """Whether every number in a plain value is finite."""
    if isinstance(value, float):
        return math.isfinite(value)
    if isinstance(value, dict):
        return all(map(is_finite, value.values()))
    if isinstance(value, list | tuple):
        return all(map(is_finite, value))
    return True


__all__ = ["BadInput", "Found", "UnknownCalculator", "compute", "find", "run"]
