"""What every record is, and rules over several keys, told in the same run as each key's own faults.

A rule that waits until every key is right hides itself behind a slip in another key.
"""

import math
from collections.abc import Callable, Iterable, Iterator, Mapping
from datetime import date
from functools import cache
from types import NoneType
from typing import Any, Self, TypeVar, get_args

from pydantic import (
    BaseModel,
    ConfigDict,
    ModelWrapValidatorHandler,
    ValidationError,
    model_validator,
)
from pydantic_core import ErrorDetails, InitErrorDetails, PydanticCustomError
from pydantic_core.core_schema import ErrorType

KNOWN_TO_PYDANTIC = frozenset(get_args(ErrorType))


class Record(BaseModel):
    """Strict and frozen: an unknown key or a wrong type is an error, never a guess."""

    model_config = ConfigDict(extra="forbid", strict=True, frozen=True)


# Types of what stands in a record and is none itself.
PLAIN = frozenset((str, int, float, bool, NoneType, date, dict))
FIELD_SETS: dict[frozenset[str], set[str]] = {}
Model = TypeVar("Model", bound=BaseModel)


def with_shared_sets(record: Model) -> Model:
    """The record; those in it of which the same fields were written share the one set that says which.

    A set for each is half of what the records of a large book take.
    """
    written = record.__pydantic_fields_set__
    shared = FIELD_SETS.setdefault(frozenset(written), written)
    object.__setattr__(record, "__pydantic_fields_set__", shared)
    values = vars(record)
    for name in fields_with_records(type(record)):
        value = values[name]
        for one in value if type(value) is list else (value,):
            if type(one) not in PLAIN:  # thousands of values: ``isinstance`` takes longer
                with_shared_sets(one)
    return record


@cache
def fields_with_records(model: type[BaseModel]) -> list[str]:
    """The fields of a model that may hold a record, or a list of some."""
    return [name for name, field in model.model_fields.items() if may_be_record(field.annotation)]


def may_be_record(annotation: Any) -> bool:
    """Whether what is annotated so may be a record, or hold one."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return True
    return any(map(may_be_record, get_args(annotation)))


class Ruled(Record):
    """A record with rules over several keys."""

    @classmethod
    def broken_rules(cls, raw: Mapping[str, Any]) -> Iterator[PydanticCustomError]:
        """The rules that the values break, as they were written; keys may lack or be wrong.

        The class at the top raises ``NotImplementedError``.
        """
        raise NotImplementedError

    @model_validator(mode="wrap")
    @classmethod
    def all_rules(cls, value: Any, handler: ModelWrapValidatorHandler[Self]) -> Self:
        """Validate the keys, and the rules beside them."""
        broken = list(cls.broken_rules(value)) if isinstance(value, dict) else []
        made: Self = validated(value, handler, broken)
        return made


def validated(
    value: Any, handler: Callable[[Any], Any], broken: Iterable[PydanticCustomError]
) -> Any:
    """What the handler makes of a value.

    Raises ``ValidationError`` with its errors and the broken rules together.
    """
    own = [InitErrorDetails(type=error, loc=(), input=value) for error in broken]
    try:
        made = handler(value)
    except ValidationError as wrong:
        inner = [again(error) for error in wrong.errors(include_url=False)]
        raise ValidationError.from_exception_data(wrong.title, [*inner, *own]) from None
    if own:
        raise ValidationError.from_exception_data("rules", own)
    return made


def again(error: ErrorDetails) -> InitErrorDetails:
    """An error in the form in which it can be raised once more."""
    kind: str | PydanticCustomError = error["type"]
    if kind not in KNOWN_TO_PYDANTIC:
        kind = PydanticCustomError(error["type"], error["msg"].replace("{", "{{"))
    return InitErrorDetails(
        type=kind, loc=error["loc"], input=error["input"], ctx=error.get("ctx", {})
    )


def number(raw: Mapping[str, Any], key: str) -> float | None:
    """A figure as it was written, None where it is no number. In the unit of the key."""
    value = raw.get(key)
    if isinstance(value, bool) or not isinstance(value, int | float):
        return None
    try:
        return None if math.isnan(value) else float(value)
    except OverflowError:  # a whole number of hundreds of digits
        return math.inf if value > 0 else -math.inf
