"""The animal record: one file in species/animals/, its name the page's address."""

from collections.abc import Iterator, Mapping
from typing import Annotated, Any, Literal

from pydantic import Field
from pydantic_core import PydanticCustomError

from calculators.core import quantities as q
from calculators.science.animals.feeding import living_mass_g
from calculators.science.conversions import MM_PER_CM
from scripts.records.claim import Claim, Range, Slug, Statement, Text, Within
from scripts.records.names import NamedSpecies
from scripts.records.never_offered import NeverOffered
from scripts.records.record import Record, Ruled, number
from scripts.records.rule import Basis, Jurisdiction

Slugs = Annotated[list[Slug], Field(min_length=1)]


class LengthWeight(Claim):
    """Living mass from length: W = a L^b, W in g (snails without the shell), L in cm."""

    a: Annotated[float, Field(gt=0, le=1)]
    b: Annotated[float, Field(ge=2, le=4)]
    note: Text | None = None

    def mass_g(self, length_mm: float) -> float:
        """Living mass at a length in mm, g."""
        return living_mass_g(length_mm / MM_PER_CM, self.a, self.b)


class BodyShape(Claim):
    """What its outline is drawn from.

    ``depth_percent`` is the greatest depth of the body without its fins as it is seen from the side, in
    hundredths of the recorded length: of a snail what lies across that length.
    """

    form: Literal[
        "spindle", "round-tailed", "gourami", "tall", "cichlid", "armoured", "sucker", "eel", "globe",
        "shrimp", "crayfish",
        "turret", "cone", "round-shell", "cap", "coil", "clam",
    ]  # fmt: skip
    depth_percent: Annotated[float, Field(ge=5, le=130)]
    marks: Literal["plain", "stripe", "bars", "spots", "blotch"] = "plain"


class Body(Record):
    """How long it gets, how that is measured, what it weighs, and what shape it has."""

    measured: Literal["nose-to-tail", "shell-height", "shell-width", "shell-length"]
    length_mm: Annotated[Range, Within(q.BodyLength)]
    length_weight: LengthWeight
    shape: BodyShape

    @property
    def typical_mm(self) -> int:
        """The middle of the recorded lengths, whole mm."""
        return round(self.length_mm.middle)


class Feeding(Record):
    """What it eats, and dry feed a day as a share of its living mass."""

    eats: Statement
    feed_percent_day: Annotated[Range, Within(q.FeedRate)]


class AnimalNeeds(Record):
    """What the animal asks of the water. A missing key means that nobody we found knows."""

    temperature_c: Annotated[Range, Within(q.Temperature)]
    ph: Annotated[Range, Within(q.PH)] | None = None
    gh_dh: Annotated[Range, Within(q.GeneralHardness)] | None = None


class GroupSize(Claim, Ruled):
    """How many to keep together; ``most`` only where more is a mistake."""

    least: Annotated[int, Field(ge=1, le=50)]
    most: Annotated[int, Field(ge=1, le=50)] | None = None

    @classmethod
    def broken_rules(cls, raw: Mapping[str, Any]) -> Iterator[PydanticCustomError]:
        """Refuse a group whose greatest size is below its least."""
        least, most = number(raw, "least"), number(raw, "most")
        if least is not None and most is not None and most < least:
            yield PydanticCustomError("group_order", "most must not be below least")


class Harm(Statement):
    """What it does to plants of the book; ``plants`` are keys of their records."""

    does: Literal["eats", "nibbles", "uproots"]
    plants: Slugs


class Suits(Statement):
    """Plants of the book that go well with it, and why."""

    plants: Slugs


class Sensitivity(Record):
    """What harms it before it harms others."""

    copper: Statement
    ammonia: Statement
    oxygen: Statement | None = None


class LegalMark(Statement):
    """What a law says about keeping, selling or moving it; the authority's word is final."""

    place: Jurisdiction
    basis: Basis


class Animal(NamedSpecies):
    """An animal, as a keeper of planted tanks needs to know it.

    ``never_offered`` says why nobody shall take one in, and what to do with one that is there. Its load
    can still be worked out, since a tank may hold one.
    """

    group: Literal["fish", "shrimp", "crayfish", "snail", "clam"]
    verdict: Annotated[str, Field(min_length=20, max_length=240)]
    body: Body
    feeding: Feeding
    needs: AnimalNeeds
    group_of: GroupSize
    company: Statement
    breeding: Statement
    with_plants: Statement
    harms: list[Harm] = []
    suits: Suits
    sensitivity: Sensitivity
    law: list[LegalMark] = []
    release: Statement
    never_offered: NeverOffered | None = None

    @property
    def offered(self) -> bool:
        """Whether the book speaks of it as an animal to keep."""
        return self.never_offered is None
