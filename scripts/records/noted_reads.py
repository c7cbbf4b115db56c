"""A library that notes what is read of it, so that what was made of it is made again only where that changed.

The smallest thing that is noted is one field of one record, at its top level; whether there is a record, and
which there are in what order, are things to read too. Kinds that are not followed are handed on as they are.
"""

from collections import defaultdict
from collections.abc import Iterator, Mapping
from functools import cache, partial
from typing import Any, cast

from scripts.records.followed import FOLLOWED
from scripts.records.load import Library
from scripts.records.record import Record
from scripts.records.when_asked import WhenAsked

WHOLE = "*"  # in place of a field: every field
THERE = "?"  # in place of a field: whether there is such a record
LIST = ""  # in place of a record's key: which records there are
# What a record of pydantic's is made of; its own code in C reads it too.
INSIDE = ("__dict__", "__pydantic_fields_set__", "__pydantic_extra__", "__pydantic_private__")


class Noted(defaultdict[tuple[str, str], set[str]]):
    """The fields that were read, by the kind and the key of their record."""

    def __init__(self) -> None:
        super().__init__(set)


class NotedRecords(Mapping[str, Record]):
    """Records of one kind, which note what is asked of them.

    No ``dict``, whose insides could be read by code in C with nothing noted.
    """

    def __init__(self, kind: str, records: Mapping[str, Record], noted: Noted) -> None:
        self.kind, self.noted = kind, noted
        self.records = records
        self.followed: dict[str, Record] = {}

    def __getitem__(self, key: str) -> Record:
        self.noted[self.kind, key].add(THERE)
        if key not in self.followed:
            self.followed[key] = followed(self.records, self.kind, key, self.noted)
        return self.followed[key]

    def __contains__(self, key: object) -> bool:
        self.noted[self.kind, str(key)].add(THERE)
        return key in self.records

    def __iter__(self) -> Iterator[str]:
        self.noted[self.kind, LIST].add(THERE)
        return iter(self.records)

    def __len__(self) -> int:
        self.noted[self.kind, LIST].add(THERE)
        return len(self.records)


def noted_library(library: Library, noted: Noted) -> Library:
    """The library, such that all that is read of it is added to ``noted``."""
    records = {kind: NotedRecords(kind, getattr(library, kind), noted) for kind in FOLLOWED}
    return library._replace(**cast(Any, records))


def followed(records: Mapping[str, Record], kind: str, key: str, noted: Noted) -> Record:
    """The same record, which notes what is read of it. Raises ``KeyError``."""
    part = records.plain_part(key) if isinstance(records, WhenAsked) else None
    model: type[Record] = records.model if isinstance(records, WhenAsked) else type(records[key])
    made = object.__new__(noted_model(model))
    object.__setattr__(made, "noted_as", ((kind, key), noted))
    if part is None:
        become(made, records[key])
    else:
        object.__setattr__(made, "__dict__", part)
        object.__setattr__(made, "whole", partial(records.__getitem__, key))
    return made


def become(made: Record, record: Record) -> None:
    """Have a record that notes what is read hold all that the other holds."""
    for name in INSIDE:
        object.__setattr__(made, name, getattr(record, name))
    object.__setattr__(made, "whole", None)


@cache
def noted_model(model: type[Record]) -> type[Record]:
    """A subclass of a model whose instances note every field that is read; all else is read through fields,
    or through ``__dict__``, as pydantic's own methods and serializers do.
    """
    fields = frozenset(model.model_fields)
    read = object.__getattribute__

    def noting(self: Record, name: str) -> Any:
        if name in fields:
            place, noted = read(self, "noted_as")
            noted[place].add(name)
            try:
                return read(self, name)
            except AttributeError:  # of a record that has yet to be put together
                become(self, read(self, "whole")())
        elif name in INSIDE:
            if name == "__dict__":
                place, noted = read(self, "noted_as")
                noted[place].add(WHOLE)
            if whole := read(self, "whole"):
                become(self, whole())
        elif name == "model_fields_set":
            raise TypeError("what was written of a record and what is its default reads alike")
        return read(self, name)

    inside = {
        "__module__": __name__,
        "__slots__": ("noted_as", "whole"),
        "__getattribute__": noting,
        "model_config": {"defer_build": True},
    }
    metaclass: Any = type(model)
    made: type[Record] = metaclass(f"Noted{model.__name__}", (model,), inside)
    for name in ("__pydantic_core_schema__", "__pydantic_serializer__", "__pydantic_validator__"):
        setattr(made, name, getattr(model, name))
    made.__pydantic_complete__ = True
    return made
