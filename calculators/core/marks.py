"""The marks beside a type in an annotation: what the vocabulary says of one value."""

import typing
from types import NoneType, UnionType
from typing import Annotated, Any, Literal, NamedTuple, TypeVar

from calculators.core.fields import Kind, Naming
from calculators.core.quantity import (
    Choices,
    Digits,
    Help,
    Keys,
    Label,
    Octets,
    Quantity,
    WhenNone,
)

Mark = TypeVar("Mark")


class Marked(NamedTuple):
    """A type with its marks by their class, and whether it may be None."""

    base: Any
    marks: dict[type, Any]
    nullable: bool

    def get(self, kind: type[Mark]) -> Mark | None:
        """The mark of one class; None where there is none."""
        return self.marks.get(kind)


def read_marks(hint: Any) -> Marked:
    """Split an annotation; a later mark overrides an earlier one of its class."""
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
    return Marked(base, {type(extra): extra for extra in extras}, nullable)


def without_none(hint: Any) -> tuple[Any, bool]:
    """Split ``X | None`` into X and whether None was there."""
    if typing.get_origin(hint) not in (typing.Union, UnionType):
        return hint, False
    rest = [part for part in typing.get_args(hint) if part is not NoneType]
    return (rest[0], True) if len(rest) == 1 else (hint, False)


def naming_of(key: str, marked: Marked) -> Naming:
    """The naming of a value. A trailing underscore, as in ``from_``, is no part of the key.

    Raises ``TypeError`` for one without a label, or without words for each choice.
    """
    quantity, digits = marked.get(Quantity), marked.get(Digits)
    if quantity and digits:
        quantity = quantity._replace(digits=digits.number)
    label = marked.get(Label) or Label(quantity.label if quantity else "")
    if not label.text:
        raise TypeError(f"{key}: give it a quantity of the vocabulary or a Label.")
    choices, words = choices_of(marked)
    if len(words) != len(choices):
        raise TypeError(f"{key}: {len(choices)} choices but words for {len(words)}.")
    return Naming(
        key=key.rstrip("_"),
        kind=kind_of(marked),
        label=label.text,
        unit=quantity.unit if quantity else "",
        help=(marked.get(Help) or Help("")).text,
        quantity=quantity,
        choices=choices,
        words=words,
        nullable=marked.nullable,
        when_none=(marked.get(WhenNone) or WhenNone("")).text,
    )


def choices_of(marked: Marked) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The keys that a value may have, and the words for each."""
    if keys := marked.get(Keys):
        return keys.keys, keys.words
    if marked.base is bool:
        return ("true", "false"), ("yes", "no")
    is_choice = typing.get_origin(marked.base) is Literal
    choices = tuple(typing.get_args(marked.base)) if is_choice else ()
    return choices, (marked.get(Choices) or Choices(choices)).words


def kind_of(marked: Marked) -> Kind:
    """The kind of a type with its marks."""
    if marked.base is str and Keys in marked.marks:
        return Kind.CHOICE
    return Kind.OCTETS if Octets in marked.marks else kind_of_type(marked.base)


def kind_of_type(base: Any) -> Kind:
    """The kind of a bare type."""
    if typing.get_origin(base) is Literal:
        return Kind.CHOICE
    if typing.get_origin(base) is list:
        inner = typing.get_args(base)[0]
        if hasattr(inner, "_fields"):
            return Kind.LIST
        return Kind.KEYS if inner is str else Kind.DATA
    if hasattr(base, "_fields"):
        return Kind.OBJECT
    simple = {float: Kind.NUMBER, int: Kind.INTEGER, str: Kind.TEXT, bool: Kind.FLAG}
    return simple.get(base, Kind.DATA)


def row_type_of(base: Any) -> Any:
    """The NamedTuple that an object or each row of a list becomes; None for any other kind."""
    kind = kind_of_type(base)
    if kind == Kind.OBJECT:
        return base
    return typing.get_args(base)[0] if kind == Kind.LIST else None
