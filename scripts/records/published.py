"""Figures that a calculator must reproduce: tests/published/<calculator>.yml.

The tests hold the calculators to them. The calculator's page shows what others computed or measured as
"Checked against", and our own sums, or a published figure that we only multiplied, as "Worked by hand".
"""

from pathlib import Path
from typing import Annotated, Any, Literal, TypeVar

import yaml
from pydantic import Field, TypeAdapter

from scripts.records.claim import Slug, Text
from scripts.records.parse import LOADER
from scripts.records.record import Record
from scripts.setup.paths import PUBLISHED


class PublishedCase(Record):
    """One figure that our code did not produce.

    ``name`` is a sentence that says whose it is; ``within`` is the largest difference allowed, in
    the output's own unit, one for all outputs or one for each. ``origin`` is ``by-hand`` where the
    figure is our own sum, or where a constant of the calculator, published or not, goes in and comes out.
    """

    name: Text
    source: Slug
    origin: Literal["published", "by-hand"] = "published"
    given: dict[str, Any]
    expect: Annotated[dict[str, float | str | bool | None], Field(min_length=1)]
    within: float | dict[str, float] = 0.0

    def tolerance(self, output: str) -> float:
        """The largest difference allowed for an output."""
        return self.within.get(output, 0.0) if isinstance(self.within, dict) else self.within


Row = TypeVar("Row")

CASES = TypeAdapter(list[PublishedCase])


def cases(calculator: str) -> list[PublishedCase]:
    """The published cases of a calculator; none where it has no file."""
    return listed(PUBLISHED / f"{calculator}.yml", CASES)


def listed(path: Path, rows: TypeAdapter[list[Row]]) -> list[Row]:
    """What a file lists, as records of one model; nothing where there is no such file."""
    if not path.exists():
        return []
    return rows.validate_python(yaml.load(path.read_text(encoding="utf-8"), LOADER))
