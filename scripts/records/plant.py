"""The plant record: one file in species/plants/, its name the page's address."""

from collections.abc import Iterator, Mapping
from typing import Annotated, Any, Literal

from pydantic import Field
from pydantic_core import PydanticCustomError

from calculators.core import quantities as q
from scripts.records.claim import Claim, Name, Range, Slug, Statement, Within
from scripts.records.names import NamedSpecies
from scripts.records.never_offered import NeverOffered
from scripts.records.record import Record, Ruled
from scripts.records.traits import Traits


class LookAlike(Claim):
    """A plant that this one is taken for, and how to tell them apart."""

    name: Name
    plant: Slug | None = None  # its record, where there is one
    tell_apart: Annotated[str, Field(min_length=10, max_length=600)]


class Uptake(Claim):
    """Where it takes its nutrients."""

    value: Literal["leaves", "roots", "both", "hanging-roots"]


class BoughtAs(Claim):
    """The form in which shops sell it, and what follows from that."""

    value: Literal["emersed", "submersed", "floating", "either"]
    text: Annotated[str, Field(min_length=10, max_length=600)]


class NitrogenRole(Claim):
    """What the plant does for the tank's nitrogen."""

    value: Literal["fast", "steady", "slow"]
    text: Annotated[str, Field(min_length=10, max_length=600)]


class Trouble(Statement):
    """What goes wrong with it; ``problem`` is the record that says what to do."""

    problem: Slug | None = None


class EatenBy(Statement):
    """Which animals harm it, in words and as keys of the vocabulary's ``grazer``."""

    eaters: list[Slug] = []  # strip, shred or dig it out: keep them apart
    nibblers: list[Slug] = []  # nip or pull at it: it may live on


class Needs(Record):
    """What the plant asks of a tank. A missing key means that nobody we found knows."""

    dli_mol: Annotated[Range, Within(q.DailyLight)] | None = None
    temperature_c: Annotated[Range, Within(q.Temperature)] | None = None
    ph: Annotated[Range, Within(q.PH)] | None = None
    gh_dh: Annotated[Range, Within(q.GeneralHardness)] | None = None


class Size(Record):
    """Height from the soil (or the thickness of a mat below the surface), and width."""

    height_cm: Annotated[Range, Within(q.Height)] | None = None
    spread_cm: Annotated[Range, Within(q.Length)] | None = None


class Growth(Record):
    """How fast it grows in a tank without added carbon dioxide, and the work it makes."""

    doubling_days: Annotated[Range, Within(q.DoublingTime)] | None = None
    trim_every_days: Annotated[Range, Within(q.Interval)] | None = None
    trim_minutes: Annotated[Range, Within(q.Minutes)] | None = None
    mat_dry_g_m2: Annotated[Range, Within(q.DryMassPerArea)] | None = None  # floaters alone
    layer_dry_g_m2: Annotated[Range, Within(q.DryMassPerArea)] | None = (
        None  # closed, one frond deep
    )
    in_weak_light: Statement | None = None


class Nitrogen(Record):
    """The plant's part in the nitrogen balance."""

    role: NitrogenRole
    uptake: Uptake
    tissue_n_percent: Annotated[Range, Within(q.TissueNitrogen)] | None = None
    dry_matter_percent: Annotated[Range, Within(q.DryMatter)] | None = None


class Care(Record):
    """From the shop's bag to the third month."""

    bought_as: BoughtAs
    planting: Statement
    trimming: Statement
    propagation: Statement
    moving: Statement | None = None


GROWING_PARTS = ("nitrogen", "care")  # of a record; of no use where nobody shall grow the plant


class Plant(NamedSpecies, Ruled):
    """A plant, as a keeper of capped-soil tanks needs to know it.

    ``never_offered`` is the one declaration that takes a plant out of all that suggests plants. Such a
    record is there to know the plant by, and may leave out how it is grown.
    """

    habit: Literal["stem", "rosette", "epiphyte", "carpet", "floater", "moss", "marginal"]
    roots: Literal["in-soil", "in-water", "on-hardscape", "none"]
    verdict: Annotated[str, Field(min_length=20, max_length=240)]
    looks: Statement
    traits: Traits | None = None  # what the drawing is made from
    needs: Needs
    size: Size
    growth: Growth
    nitrogen: Nitrogen | None = None
    care: Care | None = None
    never_offered: NeverOffered | None = None
    troubles: list[Trouble] = []
    look_alikes: list[LookAlike] = []
    eaten_by: list[EatenBy] = []
    disposal: Statement

    @classmethod
    def broken_rules(cls, raw: Mapping[str, Any]) -> Iterator[PydanticCustomError]:
        """Refuse a plant that may be offered and does not say how it is grown."""
        missing = [key for key in GROWING_PARTS if key not in raw]
        if missing and "never_offered" not in raw:
            yield PydanticCustomError(
                "how_it_is_grown",
                "{keys} must be there, unless never_offered says why nobody shall plant it",
                {"keys": " and ".join(missing)},
            )

    @property
    def offered(self) -> bool:
        """Whether lists and calculators may suggest it."""
        return self.never_offered is None
