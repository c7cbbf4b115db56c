"""A claim: a figure or a sentence, where it comes from, and how sure we are of it.

Nothing in a record stands without its source key (or ``common-practice``) and a degree of sureness.
"""

from typing import Annotated, Any, Literal, Self

from pydantic import (
    BaseModel,
    ConfigDict,
    Field,
    GetCoreSchemaHandler,
    GetJsonSchemaHandler,
    model_validator,
)
from pydantic_core import PydanticCustomError, core_schema

from calculators.core.quantity import Quantity

COMMON_PRACTICE = "common-practice"

Slug = Annotated[str, Field(pattern=r"^[a-z0-9]+(-[a-z0-9]+)*$", max_length=80)]
Sure = Literal["well-documented", "reported", "uncertain"]
Text = Annotated[str, Field(min_length=1, max_length=1200)]
Name = Annotated[str, Field(min_length=1, max_length=120)]
Sources = Annotated[list[Slug], Field(min_length=1)]


class Record(BaseModel):
    """Strict and frozen: an unknown key or a wrong type is an error, never a guess."""

    model_config = ConfigDict(extra="forbid", strict=True, frozen=True)


class Claim(Record):
    """What every claim carries: ``source`` is a key, or a list of keys, of species/sources.yml."""

    source: Slug | Sources
    sure: Sure

    @property
    def sources(self) -> list[str]:
        """The source keys as a list, however the record wrote them."""
        return [self.source] if isinstance(self.source, str) else self.source


class Range(Claim):
    """A figure from ``low`` to ``high``, in the unit that the key's ending names."""

    low: float = Field(allow_inf_nan=False)
    high: float = Field(allow_inf_nan=False)
    note: Text | None = None

    @model_validator(mode="after")
    def ordered(self) -> Self:
        """Refuse a range that is upside down."""
        if self.low > self.high:
            raise PydanticCustomError(
                "range_order",
                "low end {low} is above high end {high}; low must not be above high",
                {"low": f"{self.low:g}", "high": f"{self.high:g}"},
            )
        return self


class Statement(Claim):
    """One or two plain sentences."""

    text: Text


class Within:
    """Holds a ``Range`` to what the vocabulary says is possible for a quantity."""

    def __init__(self, quantity: Any) -> None:
        # A vocabulary entry is Annotated[float, Quantity(...)].
        self.quantity: Quantity = quantity.__metadata__[0]

    def __get_pydantic_core_schema__(
        self, source: Any, handler: GetCoreSchemaHandler
    ) -> core_schema.CoreSchema:
        return core_schema.no_info_after_validator_function(self.check, handler(source))

    def __get_pydantic_json_schema__(
        self, schema: core_schema.CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        low, high = self.quantity.possible
        end = {"minimum": low, "maximum": high}
        return {
            "allOf": [handler(schema)],
            "properties": {"low": end, "high": end},
            "description": f"{self.quantity.label}, {self.quantity.unit or 'no unit'}",
        }

    def check(self, value: Range) -> Range:
        """Refuse an end that cannot exist, naming the unit, since a wrong unit is the usual cause."""
        low, high = self.quantity.possible
        unit = f" {self.quantity.unit}".rstrip()
        for end, figure in (("low", value.low), ("high", value.high)):
            if not low <= figure <= high:
                raise PydanticCustomError(
                    "impossible",
                    "{end} {figure}{unit} cannot be; {label} must be {least} to {most}{unit}",
                    {
                        "end": end,
                        "figure": f"{figure:g}",
                        "unit": unit,
                        "label": self.quantity.label,
                        "least": f"{low:g}",
                        "most": f"{high:g}",
                    },
                )
        return value
