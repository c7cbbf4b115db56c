"""Published figures that a calculator must reproduce: tests/published/<calculator>.yml.

The tests hold the calculators to them, and the calculator's page shows them as "Checked against".
"""

from pathlib import Path
from typing import Annotated, Any

import yaml
from pydantic import Field, TypeAdapter

from scripts.records.claim import Slug, Text
from scripts.records.parse import LOADER
from scripts.records.record import Record
from scripts.setup.paths import ROOT

FOLDER = ROOT / "tests" / "published"


class PublishedCase(Record):
    """One figure that our code did not produce.

    ``name`` is a sentence that says whose it is; ``within`` is the largest difference allowed, in
    the output's own unit, one for all outputs or one for each.
    """

    name: Text
    source: Slug
    given: dict[str, Any]
    expect: Annotated[dict[str, float | str | bool | None], Field(min_length=1)]
    within: float | dict[str, float] = 0.0

    def tolerance(self, output: str) -> float:
        """The largest difference allowed for an output."""
        return self.within.get(output, 0.0) if isinstance(self.within, dict) else self.within


CASES = TypeAdapter(list[PublishedCase])


def cases(calculator: str) -> list[PublishedCase]:
    """The published cases of a calculator; none where it has no file."""
    path: Path = FOLDER / f"{calculator}.yml"
    if not path.exists():
        return []
    return CASES.validate_python(yaml.load(path.read_text(encoding="utf-8"), LOADER))
