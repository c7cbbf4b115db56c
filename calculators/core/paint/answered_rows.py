"""The rows of an answer that answer something: what was not asked is gathered in one last row.

On a phone a dash for every question that nobody put hides the figures. JSON keeps them as null.
"""

from collections.abc import Mapping
from typing import Any

from calculators.core.declare import Spec
from calculators.core.fields import OutputField
from calculators.core.messages import FigureRow
from calculators.core.paint.answer import rows
from calculators.core.paint.worded_lists import rows_in_words, titles
from calculators.core.shown_units import System

NOT_ASKED = "Not asked"


def answered_rows(
    spec: Spec, answer: Mapping[str, Any], system: System = "metric"
) -> list[FigureRow]:
    """The rows of ``value_rows`` as a page shows them: in words, where an output has words of its own.

    One whose words are a list of their own has no row.
    """
    worded = {field.key: field for field in spec.outputs if field.in_words}
    made = []
    for row in value_rows(spec, answer, system):
        field = worded.get(row["key"])
        if field is None:
            made.append(row)
        elif field.in_words and not field.in_words.place:
            words = titles(rows_in_words(field, answer))
            made.append({**row, "value": words, "unit": ""} if words else row)
    return made


def value_rows(spec: Spec, answer: Mapping[str, Any], system: System = "metric") -> list[FigureRow]:
    """The rows of ``paint.rows``, without blank ones whose question was not put.

    The questions come last, in one row, by the labels of their inputs. A blank that hangs on
    another blank, such as the end of a shortage that never was, is left out without a word.
    """
    inputs, outputs = answer["inputs"], answer["outputs"]
    blank = [field for field in spec.outputs if outputs[field.key] is None]
    quiet = {field.key for field in blank if hangs_on_blank(field, outputs)}
    questions: list[str] = []
    for field in blank:
        if unasked := unasked_of(field, inputs):
            quiet.add(field.key)
            questions += unasked
    shown = [row for row in rows(spec, outputs, system) if row["key"] not in quiet]
    labels = [field.label for field in spec.inputs if field.key in questions]
    if labels:
        shown.append(
            {"key": "", "label": NOT_ASKED, "value": "; ".join(labels), "unit": "", "help": ""}
        )
    return shown


def unasked_of(field: OutputField, inputs: Mapping[str, Any]) -> list[str]:
    """The keys of the inputs that an output answers to and that ask nothing."""
    asks = field.answers_to
    return [key for key in asks.keys if inputs[key] in (None, asks.nothing)] if asks else []


def hangs_on_blank(field: OutputField, outputs: Mapping[str, Any]) -> bool:
    """Whether an output has a meaning only where another one is there, and that is not."""
    return field.only_with is not None and outputs[field.only_with.key] is None
