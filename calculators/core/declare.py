"""The one declaration of a calculator, from which form, command line and page derive.

A calculator is a plain function with ``Annotated`` parameters from the vocabulary, a default for
each, and a ``NamedTuple`` of outputs. ``@calculator`` registers it and returns it unchanged.
"""

import typing
from collections.abc import Callable, Sequence
from typing import Any, NamedTuple, TypeVar

from calculators.core.fields import InputField, OutputField
from calculators.core.leads import Lead
from calculators.core.loggable import Loggable
from calculators.core.read_fields import read_input, read_output
from calculators.core.result import Refusal

BESIDE_OUTPUTS = ("notes", "series")  # what an answer carries apart from its outputs


class Spec(NamedTuple):
    """A calculator as declared. ``sources`` are keys of the bibliography."""

    name: str
    title: str
    purpose: str
    description: str
    sources: tuple[str, ...]
    inputs: tuple[InputField, ...]
    outputs: tuple[OutputField, ...]
    function: Callable[..., Any]
    describe_more: Callable[[], dict[str, Any]] | None = None  # further parts of --describe
    contradictions: Callable[..., Sequence[Refusal]] | None = None  # told beside unreadable inputs
    tables: tuple[str, ...] = ()  # tables of calculators/data that the page loads for it alone
    leads_to: tuple[Lead, ...] = ()  # calculators that go on from its answer
    logs: Loggable | None = None  # what of its answer a keeper may log with a tap


CATALOGUE: dict[str, Spec] = {}

Function = TypeVar("Function", bound=Callable[..., Any])


def calculator(
    title: str,
    *,
    sources: tuple[str, ...],
    describe_more: Callable[[], dict[str, Any]] | None = None,
    contradictions: Callable[..., Sequence[Refusal]] | None = None,
    tables: tuple[str, ...] = (),
    leads_to: tuple[Lead, ...] = (),
    logs: Loggable | None = None,
) -> Callable[[Function], Function]:
    """Register a function as a calculator; a half-declared one raises ``TypeError`` at import.

    ``describe_more`` gives further parts of its description, asked for only when it is described.
    ``contradictions`` takes the inputs as given, not yet read, and finds those that do not go
    together, so that they are told together with inputs that cannot be read.
    ``tables`` are large tables that it alone needs; in the browser they are fetched when it is asked.
    ``leads_to`` are the calculators that go on from its answer; ``logs`` is what of it can be logged.
    """

    def register(function: Function) -> Function:
        spec = read_spec(function, title, sources)._replace(
            describe_more=describe_more,
            contradictions=contradictions,
            tables=tables,
            leads_to=leads_to,
            logs=logs,
        )
        if logs and logs.output not in {field.key for field in spec.outputs}:
            raise TypeError(f"{spec.name}: it logs {logs.output}, which is no output.")
        CATALOGUE[spec.name] = spec
        return function

    return register


def read_spec(function: Callable[..., Any], title: str, sources: tuple[str, ...]) -> Spec:
    """Read the declaration off a function's signature and docstring.

    Raises ``TypeError`` for one that is half declared.
    """
    name = function.__name__.replace("_", "-")
    purpose, _, description = (function.__doc__ or "").strip().partition("\n")
    if not purpose:
        raise TypeError(f"{name}: a calculator needs a docstring; its first line is the purpose.")
    hints = typing.get_type_hints(function, include_extras=True)
    result = hints.pop("return", None)
    if not hasattr(result, "_fields"):
        raise TypeError(f"{name}: a calculator returns a NamedTuple of outputs.")
    defaults = dict(zip(hints, function.__defaults__ or (), strict=False))
    if len(function.__defaults__ or ()) != len(hints):
        raise TypeError(f"{name}: every input needs a default, so that it runs as an example.")
    outputs = typing.get_type_hints(result, include_extras=True)
    return Spec(
        name=name,
        title=title,
        purpose=purpose.rstrip("."),
        description="\n".join(line.strip() for line in description.strip().splitlines()),
        sources=sources,
        inputs=tuple(read_input(key, hint, defaults[key]) for key, hint in hints.items()),
        outputs=tuple(
            read_output(key, hint) for key, hint in outputs.items() if key not in BESIDE_OUTPUTS
        ),
        function=function,
    )
