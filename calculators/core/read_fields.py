"""Inputs and outputs read off the annotations of a calculator's function and of its result."""

import typing
from typing import Any

from calculators.core.fields import InputField, OutputField
from calculators.core.form_hints import HINTS
from calculators.core.in_words import InWords
from calculators.core.marks import Marked, naming_of, read_marks, row_type_of
from calculators.core.quantity import (
    AnswersTo,
    AskedFor,
    AsRows,
    Assumed,
    Choices,
    Download,
    FromFile,
    IsDate,
    MayBeEmpty,
    Octets,
    OnlyWith,
    Possible,
    PossibleBy,
    Private,
    Quantity,
    TextForm,
    Unpainted,
    Valid,
)
from calculators.core.result import Level, plain


def read_input(key: str, hint: Any, default: Any = None) -> InputField:
    """Read one input off its annotation. Raises ``TypeError`` for one that is half declared."""
    marked = read_marks(hint)
    low, high = possible(marked)
    return InputField(
        naming=naming_of(key, marked),
        low=low,
        high=high,
        possible_by=marked.get(PossibleBy),
        valid=marked.get(Valid),
        default=plain(default),
        row=read_input_row(marked.base),
        row_type=row_type_of(marked.base),
        is_date=IsDate in marked.marks,
        text_form=marked.get(TextForm),
        from_file=marked.get(FromFile),
        octets=marked.get(Octets),
        private=Private in marked.marks,
        assumed=Assumed in marked.marks,
        asked_for=AskedFor in marked.marks,
        may_be_empty=MayBeEmpty in marked.marks,
        hints=tuple(marked.marks[kind] for kind in HINTS if kind in marked.marks),
    )


def possible(marked: Marked) -> tuple[float | None, float | None]:
    """The possible range, its own or its quantity's."""
    own, quantity = marked.get(Possible), marked.get(Quantity)
    if own:
        return own.low, own.high
    return quantity.possible if quantity else (None, None)


def read_output(key: str, hint: Any) -> OutputField:
    """Read one output off its annotation. Raises ``TypeError`` for one that is half declared."""
    marked = read_marks(hint)
    naming = naming_of(key, marked)
    levels = (marked.get(Choices) or Choices(())).levels
    levels_allowed = set(typing.get_args(Level))
    if levels and (len(levels) != len(naming.choices) or not set(levels) <= levels_allowed):
        raise TypeError(
            f"{key}: give each of the {len(naming.choices)} choices info, caution or danger."
        )
    return OutputField(
        naming=naming,
        row=tuple(read_output(*part) for part in hints_of_row(marked.base)),
        levels=levels,
        download=marked.get(Download),
        as_rows=marked.get(AsRows),
        in_words=marked.get(InWords),
        unpainted=Unpainted in marked.marks,
        answers_to=marked.get(AnswersTo),
        only_with=marked.get(OnlyWith),
    )


def hints_of_row(base: Any) -> list[tuple[str, Any]]:
    """The annotations of one row of a ``list[SomeNamedTuple]``, or of the parts of a NamedTuple."""
    row = row_type_of(base)
    return [] if row is None else list(typing.get_type_hints(row, include_extras=True).items())


def read_input_row(base: Any) -> tuple[InputField, ...]:
    """The fields of one row that is put in, or the parts of an object."""
    defaults = {} if (row := row_type_of(base)) is None else row._field_defaults
    return tuple(
        field._replace(
            required=key not in defaults and not field.nullable,
            assumed=field.assumed or (key in defaults and not field.nullable),
        )
        for key, field in (
            (key, read_input(key, hint, defaults.get(key))) for key, hint in hints_of_row(base)
        )
    )
