"""The animal record: one file in species/animals/, its name the page's address."""

from typing import Annotated, Literal

from pydantic import Field

from calculators.core import quantities as q
from scripts.records.claim import Claim, Range, Record, Statement, Text, Within
from scripts.records.names import Named


class LengthWeight(Claim):
    """Living mass from length: W = a L^b, W in g (snails without the shell), L in cm."""

    a: Annotated[float, Field(gt=0, le=1)]
    b: Annotated[float, Field(ge=2, le=4)]
    note: Text | None = None


class Body(Record):
    """How long it gets, how that is measured, and what it weighs."""

    measured: Literal["nose-to-tail", "shell-height", "shell-width"]
    length_mm: Annotated[Range, Within(q.BodyLength)]
    length_weight: LengthWeight


class Feeding(Record):
    """What it eats, and dry feed a day as a share of its living mass."""

    eats: Statement
    feed_percent_day: Annotated[Range, Within(q.FeedRate)]


class AnimalNeeds(Record):
    """What the animal asks of the water. A missing key means that nobody we found knows."""

    temperature_c: Annotated[Range, Within(q.Temperature)]
    ph: Annotated[Range, Within(q.PH)] | None = None
    gh_dh: Annotated[Range, Within(q.GeneralHardness)] | None = None


class Sensitivity(Record):
    """What harms it before it harms others."""

    copper: Statement
    ammonia: Statement
    oxygen: Statement | None = None


class Animal(Named):
    """An animal, as a keeper of planted tanks needs to know it."""

    group: Literal["fish", "shrimp", "snail"]
    verdict: Annotated[str, Field(min_length=20, max_length=240)]
    body: Body
    feeding: Feeding
    needs: AnimalNeeds
    company: Statement
    with_plants: Statement
    sensitivity: Sensitivity
    release: Statement
