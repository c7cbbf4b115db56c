"""The one runner: look up, read, compute, note, and check that nothing infinite gets out."""

import difflib
from collections.abc import Mapping
from typing import Any, NamedTuple

from calculators.core.answer_data import answer_data, finite_outputs, outside_source
from calculators.core.declare import CATALOGUE, Spec
from calculators.core.fields import InputField, Kind
from calculators.core.lead_checks import check_notes
from calculators.core.leads import leads
from calculators.core.left_empty import StandIns, paths_of, stand_ins
from calculators.core.listing import import_calculator, load_all
from calculators.core.messages import Answer
from calculators.core.read import read_inputs
from calculators.core.refusals import contradictory, worded
from calculators.core.result import BadInput, Note, Refused, Series, StillNeeded
from calculators.core.shown_units import System


class Computed(NamedTuple):
    """What a run came to: the contract's answer, and the notes and series as a page paints them."""

    answer: Answer
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
) -> Answer:
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
) -> Computed:
    """The same with all that a page needs beside it.

    Raises ``BadInput`` with all bad fields, ``StillNeeded`` where the keeper's own are missing.
    """
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
    outputs, unsaid = finite_outputs(spec.outputs, result)
    notes = (*outside_source(spec, values), *result.get("notes", ()), *unsaid)
    check_notes(spec, notes)
    series = result.get("series", {})
    stood_in = stand_ins(spec.inputs, given, own)
    answer = answer_data(spec, values, outputs, notes, series)
    return Computed(
        with_origin(answer, spec, stood_in) if given else answer, notes, series, stood_in
    )


def with_origin(answer: Answer, spec: Spec, stood_in: StandIns) -> Answer:
    """The answer with the inputs that nobody gave, and with the ways on that the others fill in."""
    made: Answer = {**answer, **paths_of(stood_in)}
    nobodys = {*stood_in.assumed, *stood_in.example}
    if ways := leads(spec.leads_to, answer["inputs"], answer["outputs"], nobodys):
        made["leads"] = ways
    return made


def as_rows(field: InputField, value: Any) -> Any:
    """Give a formula rows and objects as its own types, nested ones too; anything else as it is."""
    if field.row_type is None or value is None:
        return value
    rows = [
        field.row_type(*(as_rows(part, row[part.key]) for part in field.row))
        for row in ([value] if field.kind == Kind.OBJECT else value)
    ]
    return rows[0] if field.kind == Kind.OBJECT else rows
