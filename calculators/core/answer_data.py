"""What a formula gave, as the contract's answer: nothing infinite in it, and doubts said in notes."""

import math
from collections.abc import Mapping, Sequence
from typing import Any

from calculators.core.declare import Spec
from calculators.core.fields import InputField, OutputField
from calculators.core.messages import Answer, NoteData, SeriesData
from calculators.core.numbers import show_number
from calculators.core.result import Note, Series, plain


def answer_data(
    spec: Spec,
    values: dict[str, Any],
    outputs: dict[str, Any],
    notes: Sequence[Note],
    series: Mapping[str, Series],
) -> Answer:
    """The answer without what depends on who gave the figures."""
    answer: Answer = {
        "calculator": spec.name,
        "inputs": values,
        "outputs": outputs,
        "notes": [note_data(note) for note in notes],
    }
    if series:
        answer["series"] = {key: series_data(values) for key, values in series.items()}
    return answer


def note_data(note: Note) -> NoteData:
    """A note as plain data."""
    return {"level": note.level, "text": note.text}


def series_data(series: Series) -> SeriesData:
    """A series as plain data, without what only a picture needs."""
    return {
        "label": series.label,
        "unit": series.unit,
        "x_label": series.x_label,
        "x_unit": series.x_unit,
        "x": finite_points(series.x),
        "y": finite_points(series.y),
    }


def finite_points(points: Sequence[float]) -> list[float | None]:
    """The points, each in its place and unit; one that is not finite becomes None."""
    return [point if math.isfinite(point) else None for point in points]


def finite_outputs(
    fields: tuple[OutputField, ...], result: Mapping[str, Any]
) -> tuple[dict[str, Any], list[Note]]:
    """The outputs as plain data; one that is not finite is None, with a note that says so."""
    outputs: dict[str, Any] = {}
    notes = []
    for field in fields:
        finite = is_finite(result[field.key])
        outputs[field.key] = plain(result[field.key]) if finite else None
        if not finite:
            notes.append(Note("caution", f"{field.label} cannot be computed from these figures."))
    return outputs, notes


def outside_source(spec: Spec, values: Mapping[str, Any]) -> list[Note]:
    """Notes for values that are possible, but outside what the formula's source supports."""
    return [
        Note("caution", outside_text(field, values[field.key]))
        for field in spec.inputs
        if field.valid and values[field.key] is not None
        if not field.valid.low <= values[field.key] <= field.valid.high
    ]


def outside_text(field: InputField, value: float) -> str:
    """Say how far the source reaches; ``value`` is in the field's metric unit."""
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
