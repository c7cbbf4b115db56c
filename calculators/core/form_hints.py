"""How an input stands in a form: said beside the input, needed by no formula.

Put them into an ``Annotated`` like a label. The form's maker reads them; nothing else does.
"""

from typing import Any, NamedTuple


class Part(NamedTuple):
    """The part of a long form in which an input stands; inputs of one part stand together.

    A ``closed`` part opens by a tap, and by itself when something in it needs another value.
    """

    heading: str
    closed: bool = False


class InRow(NamedTuple):
    """Fields that are one idea: those of one legend stand in one row, where the first of them stands."""

    legend: str
    label: str = ""  # what the row shows; the legend says the rest, and a reader aloud gets it all


class Step(NamedTuple):
    """A number that buttons move down and up, by so much, in the metric unit."""

    by: float


class ByChoice(NamedTuple):
    """A number whose unit and step go with what is chosen in another field of its row."""

    key: str
    choices: tuple[str, ...]
    units: tuple[str, ...]
    steps: tuple[float, ...]


class Preset(NamedTuple):
    """A button that adds a row with these values in it."""

    label: str
    values: dict[str, Any]


class Presets(NamedTuple):
    """The buttons below a list, in place of one that adds an empty row."""

    buttons: tuple[Preset, ...]


class InOrder(NamedTuple):
    """A list that is kept in order of one number; a new row comes so much after the last."""

    key: str
    step: float


class Suggest(NamedTuple):
    """A text for which the page offers names from a list that the build writes.

    A name that is chosen fills in the other fields of its row, as the list says.
    """

    names: str


FINER = Part("Finer points", closed=True)
HINTS = (Part, InRow, Step, ByChoice, Presets, InOrder, Suggest)
