"""Where an answer leads on: other calculators, filled in with what was given and found.

A way is declared as data beside the calculator. An input of the target takes an input or an output of
this one, or a constant. What was not given, and what only an example or an assumption stands for, is
left out, so that it cannot pass for the keeper's in the next form.
"""

from collections.abc import Collection, Mapping
from typing import Any, NamedTuple

from calculators.core.messages import LeadData


class Value(NamedTuple):
    """A constant for an input of the target, such as a choice."""

    value: str | float


class Scaled(NamedTuple):
    """A figure in another unit for the target: what stands under ``key`` times ``factor``."""

    key: str
    factor: float


Source = str | Value | Scaled


class Lead(NamedTuple):
    """A way on to another calculator.

    ``takes`` gives for an input of the target the key of an input or output here; a dotted key reaches
    into an object or, by its number, into a list, as in ``together.0.plant``. The way is offered where
    all ``needs`` (keys too) hold something but nothing, zero and no.
    """

    calculator: str
    label: str
    takes: Mapping[str, Source] = {}
    needs: tuple[str, ...] = ()


def leads(
    ways: tuple[Lead, ...],
    inputs: Mapping[str, Any],
    outputs: Mapping[str, Any],
    stood_in: Collection[str] = (),
) -> list[LeadData]:
    """Each way that holds for an answer: calculator, label, and the target's inputs that are known.

    ``stood_in`` are the inputs that nobody gave.
    """
    given = {key: value for key, value in inputs.items() if key not in stood_in}
    known = {**given, **outputs}
    return [
        {
            "calculator": way.calculator,
            "label": way.label,
            "inputs": {
                key: value
                for key, source in way.takes.items()
                if (value := value_of(source, known)) is not None
            },
        }
        for way in ways
        if all(reach(key, {**inputs, **outputs}) for key in way.needs)
    ]


def value_of(source: Source, known: Mapping[str, Any]) -> Any:
    """What a source holds in an answer; None where it is not known."""
    if isinstance(source, Value):
        return source.value
    if isinstance(source, Scaled):
        figure = reach(source.key, known)
        return None if figure is None else figure * source.factor
    return reach(source, known)


def reach(path: str, known: Any) -> Any:
    """What stands at a dotted path; None where something on the way is missing."""
    for part in path.split("."):
        if isinstance(known, list):
            known = known[int(part)] if int(part) < len(known) else None
        else:
            known = known.get(part) if isinstance(known, Mapping) else None
    return known
