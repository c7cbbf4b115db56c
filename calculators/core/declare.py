"""The one declaration of a calculator, from which form, command line and page derive.

A calculator is a plain function with ``Annotated`` parameters from the vocabulary, a default for
each, and a ``NamedTuple`` of outputs. ``@calculator`` registers it and returns it unchanged.
"""

import typing
from collections.abc import Callable, Sequence
from types import NoneType, UnionType
from typing import Annotated, Any, Literal, NamedTuple, TypeVar

from calculators.core.form_hints import HINTS
from calculators.core.leads import Lead
from calculators.core.quantity import (
    AnswersTo,
    AskedFor,
    AsRows,
    Assumed,
    Choices,
    Digits,
    Download,
    Help,
    IsDate,
    Keys,
    Label,
    MayBeEmpty,
    Octets,
    OnlyWith,
    Possible,
    PossibleBy,
    Private,
    Quantity,
    Unpainted,
    Valid,
    WhenNone,
)
from calculators.core.result import Level, Refusal, plain

BESIDE_OUTPUTS = ("notes", "series")  # what an answer carries apart from its outputs


class Field(NamedTuple):
    """One input or output.

    ``kind`` is number, integer, choice, keys, text, octets, flag, list, object or data.
    """

    key: str
    kind: str
    label: str
    unit: str = ""
    help: str = ""
    quantity: Quantity | None = None
    low: float | None = None  # possible range, inclusive
    high: float | None = None
    possible_by: PossibleBy | None = None
    valid: Valid | None = None
    choices: tuple[str, ...] = ()
    words: tuple[str, ...] = ()  # what the person reads for each choice
    levels: tuple[str, ...] = ()  # for a rating: how much each choice matters
    nullable: bool = False
    default: Any = None
    row: tuple["Field", ...] = ()  # for a list: the fields of one row; for an object: its parts
    row_type: Callable[..., Any] | None = None  # what the formula gets a row or object as
    download: Download | None = None  # for an output that is a file's text
    as_rows: AsRows | None = None  # for an output that the page shows as cards or a table
    is_date: bool = False
    octets: Octets | None = None  # for a text that is base64
    private: bool = False  # never in an address
    unpainted: bool = False  # for an output that is no row of the table
    answers_to: AnswersTo | None = None  # for an output: the inputs that ask for it
    only_with: OnlyWith | None = None  # for an output that hangs on another
    when_none: str = ""  # for an output: the words for None
    assumed: bool = False  # for an input: its default stands in where it is left empty
    asked_for: bool = False  # for an input: a keeper is asked for it, though it is nullable
    may_be_empty: bool = False  # for a list: no row is an answer too
    required: bool = False  # inside a row: no default stands in for it
    hints: tuple[Any, ...] = ()  # how it stands in a form; see form_hints.py


class Spec(NamedTuple):
    """A calculator as declared. ``sources`` are keys of the bibliography."""

    name: str
    title: str
    purpose: str
    description: str
    sources: tuple[str, ...]
    inputs: tuple[Field, ...]
    outputs: tuple[Field, ...]
    function: Callable[..., Any]
    describe_more: Callable[[], dict[str, Any]] | None = None  # further parts of --describe
    contradictions: Callable[..., Sequence[Refusal]] | None = None  # told beside unreadable inputs
    tables: tuple[str, ...] = ()  # tables of calculators/data that the page loads for it alone
    leads_to: tuple[Lead, ...] = ()  # calculators that go on from its answer


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
) -> Callable[[Function], Function]:
    """Register a function as a calculator; a half-declared one raises ``TypeError`` at import.

    ``describe_more`` gives further parts of its description, asked for only when it is described.
    ``contradictions`` takes the inputs as given, not yet read, and finds those that do not go
    together, so that they are told together with inputs that cannot be read.
    ``tables`` are large tables that it alone needs; in the browser they are fetched when it is asked.
    ``leads_to`` are the calculators that go on from its answer.
    """

    def register(function: Function) -> Function:
        spec = read_spec(function, title, sources)._replace(
            describe_more=describe_more,
            contradictions=contradictions,
            tables=tables,
            leads_to=leads_to,
        )
        CATALOGUE[spec.name] = spec
        return function

    return register


def read_spec(function: Callable[..., Any], title: str, sources: tuple[str, ...]) -> Spec:
    """Read the declaration off a function's signature and docstring."""
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
        inputs=tuple(read_field(key, hint, defaults[key]) for key, hint in hints.items()),
        outputs=tuple(
            read_field(key, hint) for key, hint in outputs.items() if key not in BESIDE_OUTPUTS
        ),
        function=function,
    )


def read_field(key: str, hint: Any, default: Any = None) -> Field:
    """Read one field off its annotation. A trailing underscore, as in ``from_``, is no part of the key."""
    hint, nullable = without_none(hint)
    base, extras = hint, []
    if typing.get_origin(hint) is Annotated:
        base, *extras = typing.get_args(hint)
        # Annotated[X | None, ...]: the None stands inside
        base, inner_none = without_none(base)
        nullable = nullable or inner_none
        if typing.get_origin(base) is Annotated:
            base, *inner = typing.get_args(base)
            extras = inner + extras
    found = {type(extra): extra for extra in extras}  # a later one overrides an earlier
    quantity = found.get(Quantity)
    if quantity and Digits in found:
        quantity = quantity._replace(digits=found[Digits].number)
    low, high = found.get(Possible, quantity.possible if quantity else (None, None))
    label = found.get(Label, Label(quantity.label if quantity else ""))
    if not label.text:
        raise TypeError(f"{key}: give it a quantity of the vocabulary or a Label.")
    known = found.get(Keys)
    choices = tuple(typing.get_args(base)) if typing.get_origin(base) is Literal else ()
    words, levels = found.get(Choices, Choices(choices))
    if known:
        choices, words = known.keys, known.words
    if base is bool:
        choices, words = ("true", "false"), ("yes", "no")
    if len(words) != len(choices):
        raise TypeError(f"{key}: {len(choices)} choices but words for {len(words)}.")
    if levels and (len(levels) != len(choices) or not set(levels) <= set(typing.get_args(Level))):
        raise TypeError(f"{key}: give each of the {len(choices)} choices info, caution or danger.")
    return Field(
        key=key.rstrip("_"),
        kind=marked_kind(base, found),
        label=label.text,
        unit=quantity.unit if quantity else "",
        help=found.get(Help, Help("")).text,
        quantity=quantity,
        low=low,
        high=high,
        possible_by=found.get(PossibleBy),
        valid=found.get(Valid),
        choices=choices,
        words=words,
        levels=levels,
        nullable=nullable,
        default=plain(default),
        download=found.get(Download),
        as_rows=found.get(AsRows),
        is_date=IsDate in found,
        octets=found.get(Octets),
        private=Private in found,
        assumed=Assumed in found,
        asked_for=AskedFor in found,
        may_be_empty=MayBeEmpty in found,
        unpainted=Unpainted in found,
        answers_to=found.get(AnswersTo),
        only_with=found.get(OnlyWith),
        when_none=found.get(WhenNone, WhenNone("")).text,
        row=read_row(base),
        row_type=row_type_of(base),
        hints=tuple(found[kind] for kind in HINTS if kind in found),
    )


def without_none(hint: Any) -> tuple[Any, bool]:
    """Split ``X | None`` into X and whether None was there."""
    if typing.get_origin(hint) not in (typing.Union, UnionType):
        return hint, False
    rest = [part for part in typing.get_args(hint) if part is not NoneType]
    return (rest[0], True) if len(rest) == 1 else (hint, False)


def marked_kind(base: Any, found: dict[type, Any]) -> str:
    """Name the kind of a type, given the marks beside it."""
    if base is str and Keys in found:
        return "choice"
    return "octets" if Octets in found else kind_of(base)


def kind_of(base: Any) -> str:
    """Name the kind of a bare type."""
    if typing.get_origin(base) is Literal:
        return "choice"
    if typing.get_origin(base) is list:
        inner = typing.get_args(base)[0]
        return "list" if hasattr(inner, "_fields") else "keys" if inner is str else "data"
    if hasattr(base, "_fields"):
        return "object"
    return {float: "number", int: "integer", str: "text", bool: "flag"}.get(base, "data")


def row_type_of(base: Any) -> Any:
    """The NamedTuple that an object or each row of a list becomes; None for any other kind."""
    kind = kind_of(base)
    return base if kind == "object" else typing.get_args(base)[0] if kind == "list" else None


def read_row(base: Any) -> tuple[Field, ...]:
    """Read the fields of one row of a ``list[SomeNamedTuple]``, or the parts of a NamedTuple."""
    row = row_type_of(base)
    if row is None:
        return ()
    hints = typing.get_type_hints(row, include_extras=True)
    known = row._field_defaults
    return tuple(
        field._replace(
            required=key not in known and not field.nullable,
            assumed=field.assumed or (key in known and not field.nullable),
        )
        for key, field in (
            (key, read_field(key, hint, known.get(key))) for key, hint in hints.items()
        )
    )
