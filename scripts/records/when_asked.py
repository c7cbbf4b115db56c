"""Records of which it is known that they hold are put together when somebody asks for more than plain words.

An earlier build has held their texts to the same models. Most pages ask of most records a few names and
sentences; to put all records together takes longer than most steps of a build after one change.
"""

from collections.abc import Iterator, Mapping
from functools import cache
from types import NoneType, UnionType
from typing import (
    Annotated,
    Any,
    Generic,
    Literal,
    NamedTuple,
    TypeVar,
    Union,
    get_args,
    get_origin,
)

from pydantic import BaseModel

from scripts.records.record import with_shared_sets

Model = TypeVar("Model", bound=BaseModel)

PLAIN = (str, bool, NoneType)  # what stands in a record as it is written: models are strict


class AsWritten(NamedTuple):
    """The value of a record as it was written, which holds."""

    value: dict[str, Any]


class WhenAsked(Mapping[str, Model], Generic[Model]):
    """Records of one kind in the order of their files."""

    def __init__(self, model: type[Model]) -> None:
        self.model = model
        self.known: dict[str, Model | AsWritten] = {}

    def __getitem__(self, key: str) -> Model:
        found = self.known[key]
        if isinstance(found, AsWritten):
            found = self.known[key] = put_together(self.model, found.value)
        return found

    def __contains__(self, key: object) -> bool:
        return key in self.known

    def __iter__(self) -> Iterator[str]:
        return iter(self.known)

    def __len__(self) -> int:
        return len(self.known)

    def put(self, key: str, record: Model) -> None:
        """Add a record."""
        self.known[key] = record

    def put_written(self, key: str, value: dict[str, Any]) -> None:
        """Add a record by its value, of which it is known that it holds."""
        self.known[key] = AsWritten(value)

    def plain_part(self, key: str) -> dict[str, Any] | None:
        """By their names the fields of a record that can be read of its value; None where it is put together.

        Raises ``KeyError``.
        """
        found = self.known[key]
        if not isinstance(found, AsWritten):
            return None
        fields = plain_fields(self.model)
        part = {name: found.value.get(name, default) for name, default in fields.plain.items()}
        lacking = fields.other.keys() - found.value.keys()
        return part | {name: fields.other[name] for name in lacking}


def put_together(model: type[Model], value: Any) -> Model:
    """A value held to its model. Raises ``ValidationError``."""
    return with_shared_sets(model.model_validate(value))


class PlainFields(NamedTuple):
    """The fields of a model by their names, each with its default: those that are plain, and of the others
    those that may lack.
    """

    plain: dict[str, Any]
    other: dict[str, Any]


@cache
def plain_fields(model: type[BaseModel]) -> PlainFields:
    """The fields of a model that can be read of a value that holds."""
    found = PlainFields({}, {})
    for name, field in model.model_fields.items():
        default = field.get_default(call_default_factory=True, validated_data={})
        if is_plain(field.annotation):
            found.plain[name] = default
        elif not field.is_required():
            found.other[name] = default
    return found


def is_plain(annotation: Any) -> bool:
    """Whether what is annotated so stands in a record as it is written."""
    origin, inside = get_origin(annotation), get_args(annotation)
    if origin is Literal:
        return all(isinstance(word, PLAIN) for word in inside)
    if origin is Annotated:
        return is_plain(inside[0])
    if origin in (Union, UnionType, list):
        return all(map(is_plain, inside))
    return annotation in PLAIN
