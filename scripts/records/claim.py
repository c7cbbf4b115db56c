"""A claim: a figure or a sentence, where it comes from, and how sure we are of it.

Nothing in a record stands without its source key (or ``common-practice``) and a degree of sureness.
"""

import re
from collections.abc import Iterator, Mapping
from math import sqrt
from typing import Annotated, Any, Literal

from pydantic import Field, GetCoreSchemaHandler, GetJsonSchemaHandler, ValidationError
from pydantic_core import PydanticCustomError, core_schema

from calculators.core.quantity import Quantity
from scripts.records.record import Record, Ruled, number, validated

COMMON_PRACTICE = "common-practice"

LONGEST_SLUG = 80
SLUG = re.compile("[a-z0-9]+(-[a-z0-9]+)*")

Slug = Annotated[str, Field(pattern=f"^{SLUG.pattern}$", max_length=LONGEST_SLUG)]
Sure = Literal["well-documented", "reported", "uncertain"]
# What a reader sees: what rests on common practice alone has a grade of its own.
KEEPERS_SAY: Literal["keepers-say"] = "keepers-say"
Grade = Literal["well-documented", "reported", "keepers-say", "uncertain"]
Text = Annotated[str, Field(min_length=1, max_length=1200)]
Name = Annotated[str, Field(min_length=1, max_length=120)]
Sources = Annotated[list[Slug], Field(min_length=1)]


class Claim(Record):
    """What every claim carries: ``source`` is a key, or a list of keys, of species/sources.yml."""

    source: Slug | Sources
    sure: Sure

    @property
    def sources(self) -> list[str]:
        """The source keys as a list, however the record wrote them."""
        return [self.source] if isinstance(self.source, str) else self.source

    @property
    def grade(self) -> Grade:
        """How sure, as a reader sees it: a guess stays one, but what keepers say is no report of a source."""
        practice_alone = set(self.sources) == {COMMON_PRACTICE}
        return KEEPERS_SAY if practice_alone and self.sure == "reported" else self.sure


class Range(Claim, Ruled):
    """A figure from ``low`` to ``high``, in the unit that the key's ending names."""

    low: float = Field(allow_inf_nan=False)
    high: float = Field(allow_inf_nan=False)
    note: Text | None = None

    @property
    def middle(self) -> float:
        """Half-way between its ends."""
        return (self.low + self.high) / 2

    @property
    def middle_by_factors(self) -> float:
        """As many times its low end as its high end is times it; the low end is above nothing."""
        return sqrt(self.low * self.high)

    @classmethod
    def broken_rules(cls, raw: Mapping[str, Any]) -> Iterator[PydanticCustomError]:
        """Refuse a range that is upside down."""
        low, high = number(raw, "low"), number(raw, "high")
        if low is not None and high is not None and low > high:
            yield PydanticCustomError(
                "range_order",
                "low end {low} is above high end {high}; low must not be above high",
                {"low": f"{low:g}", "high": f"{high:g}"},
            )


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
        return core_schema.no_info_wrap_validator_function(self.check, handler(source))

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

    def check(self, value: Any, handler: core_schema.ValidatorFunctionWrapHandler) -> Range:
        """Validate a range, and refuse an end that cannot exist beside its other faults."""
        least, most = self.quantity.possible
        made: Range
        try:
            made = handler(value)
        except ValidationError:
            pass  # it is told below, with the ends
        else:
            if least <= made.low and made.high <= most:
                return made
        broken = list(self.impossible_ends(value)) if isinstance(value, dict) else []
        made = validated(value, handler, broken)
        return made

    def impossible_ends(self, raw: Mapping[str, Any]) -> Iterator[PydanticCustomError]:
        """Each end that cannot exist, naming the unit, since a wrong unit is the usual cause."""
        least, most = self.quantity.possible
        unit = f" {self.quantity.unit}".rstrip()
        for end in ("low", "high"):
            figure = number(raw, end)
            if figure is not None and not least <= figure <= most:
                yield PydanticCustomError(
                    "impossible",
                    "{end} {figure}{unit} cannot be; {label} must be {least} to {most}{unit}",
                    {
                        "end": end,
                        "figure": f"{figure:g}",
                        "unit": unit,
                        "label": self.quantity.label,
                        "least": f"{least:g}",
                        "most": f"{most:g}",
                    },
                )
