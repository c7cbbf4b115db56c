"""The findings: species/findings.yml, one entry a key."""

from collections.abc import Iterator, Mapping
from typing import Annotated, Any, Literal

from pydantic import Field
from pydantic_core import PydanticCustomError

from scripts.records.claim import Claim, Slug
from scripts.records.record import Ruled, number

Looks = Literal[
    "old-leaves", "new-leaves", "whole-plant", "stem", "roots", "surface", "water", "coating",
    "animals", "recently", "readings",
]  # fmt: skip
Usual = Literal["mostly", "often", "sometimes", "seldom", "rare", "hardly-ever"]
INPUTS = (
    "readings.nitrate_mg_l", "readings.phosphate_mg_l", "readings.ammonia_mg_n_l",
    "readings.nitrite_mg_n_l", "readings.ph", "readings.temperature_c", "readings.gh_dh",
    "readings.kh_dh", "readings.oxygen_mg_l", "light_hours", "feed_g_week_100_l", "cover_percent",
    "days_since_planting", "tank_age_days",
    "plant.habit", "plant.genus", "plant.nitrogen_role", "plant.bought_as",
)  # fmt: skip


class DerivedFrom(Ruled):
    """The input that settles a finding: ``above`` (not including) ``up_to`` (including), or ``equals``."""

    input: Literal[INPUTS]  # type: ignore[valid-type]
    above: float | None = None
    up_to: float | None = None
    equals: str | None = None

    @classmethod
    def broken_rules(cls, raw: Mapping[str, Any]) -> Iterator[PydanticCustomError]:
        """Refuse one without a figure, or an upside-down band."""
        if all(raw.get(key) is None for key in ("above", "up_to", "equals")):
            yield PydanticCustomError("empty", "needs above, up_to or equals")
        low, high = number(raw, "above"), number(raw, "up_to")
        if low is not None and high is not None and low >= high:
            yield PydanticCustomError("upside_down", "above must be less than up_to")


class Finding(Claim):
    """Something a keeper can see, remember or measure.

    ``usual`` is how often it shows when the trouble is something else. ``danger`` marks findings
    that mean that animals may be in danger, whatever the cause.
    """

    where: Looks
    label: Annotated[str, Field(min_length=3, max_length=100)]
    question: Annotated[str, Field(min_length=10, max_length=200, pattern=r"\?$")]
    usual: Usual
    danger: bool = False
    derived_from: DerivedFrom | None = None
    implies: list[Slug] = []
    excludes: list[Slug] = []
