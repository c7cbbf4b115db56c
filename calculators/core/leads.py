"""Where an answer leads on: other calculators, filled in with what was given and computed.

A lead is declared as data beside the calculator. An input of the target takes an input or an output of
this one, or a constant. What was not given, and what only an example or an assumption stands for, is
left out, so that it cannot pass for the keeper's in the next form.
"""

from collections.abc import Collection, Mapping
from typing import Any, NamedTuple

from calculators.core.messages import LeadData


class Value(NamedTuple):
    """A constant for an input of the target, such as a choice."""

    value: str | float | bool


class Scaled(NamedTuple):
    """A figure in another unit for the target: what stands under ``key`` times ``factor``."""

    key: str
    factor: float


class OnlyBeside(NamedTuple):
    """What stands under ``key``, where ``needs`` (a key too) holds something but nothing, zero and no."""

    needs: str
    key: str


class Rows(NamedTuple):
    """A list for the target: each row's keys take what ``columns`` name.

    With ``each`` there is a row for every row of that list here, and ``columns`` name its keys;
    without it there is one row. Nothing is filled in where only constants would stand in a row.
    """

    columns: "Mapping[str, Source]"
    each: str = ""


Source = str | Value | Scaled | OnlyBeside | Rows


class Lead(NamedTuple):
    """A way on to another calculator.

    ``takes`` gives for an input of the target the key of an input or output here. A dotted key reaches
    into an object, or into a list, by a row's number or by what stands in its first column, as in
    ``together.0.plant`` or ``calculators.dosing.inputs``. The lead is offered where all ``needs``
    (keys too) hold something but nothing, zero and no.
    """

    calculator: str
    label: str
    takes: Mapping[str, Source] = {}
    needs: tuple[str, ...] = ()


def leads(
    declared: tuple[Lead, ...],
    inputs: Mapping[str, Any],
    outputs: Mapping[str, Any],
    stood_in: Collection[str] = (),
) -> list[LeadData]:
    """Each lead that holds for an answer: calculator, label, and the target's inputs that are known.

    ``stood_in`` are the inputs that nobody gave.
    """
    given = {key: value for key, value in inputs.items() if key not in stood_in}
    everything = {**inputs, **outputs}
    return [
        {
            "calculator": lead.calculator,
            "label": lead.label,
            "inputs": taken(lead.takes, {**given, **outputs}),
        }
        for lead in declared
        if all(reach(key, everything) for key in lead.needs)
    ]


def taken(takes: Mapping[str, Source], answer: Mapping[str, Any]) -> dict[str, Any]:
    """The target's keys with what is known for them."""
    values = {key: value_of(source, answer) for key, source in takes.items()}
    return {key: value for key, value in values.items() if value is not None}


def value_of(source: Source, answer: Mapping[str, Any]) -> Any:
    """What a source holds in an answer; None where it is not known."""
    match source:
        case Value():
            return source.value
        case Scaled():
            figure = reach(source.key, answer)
            return None if figure is None else figure * source.factor
        case OnlyBeside():
            return reach(source.key, answer) if reach(source.needs, answer) else None
        case Rows():
            return rows_of(source, answer)
    return reach(source, answer)


def rows_of(source: Rows, answer: Mapping[str, Any]) -> list[dict[str, Any]] | None:
    """The rows of a list; None where nothing is known for any of them."""
    from_rows = reach(source.each, answer) if source.each else [answer]
    constants = {key for key, column in source.columns.items() if isinstance(column, Value)}
    made = [taken(source.columns, row) for row in from_rows or ()]
    return [row for row in made if row.keys() - constants] or None


def reach(path: str, data: Any) -> Any:
    """What stands at a dotted path; None where something on the way is missing."""
    for part in path.split("."):
        if isinstance(data, list):
            data = row_at(part, data)
        else:
            data = data.get(part) if isinstance(data, Mapping) else None
    return data


def row_at(part: str, rows: list[Any]) -> Any:
    """A row by its number, or by what stands in its first column; None where there is none."""
    if part.isdecimal():
        return rows[int(part)] if int(part) < len(rows) else None
    return next((row for row in rows if part == next(iter(row.values()), None)), None)
