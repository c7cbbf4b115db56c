"""The plant record: one file in species/plants/, its name the page's address."""

from typing import Annotated, Literal

from pydantic import Field

from calculators.core import quantities as q
from scripts.records.claim import Claim, Name, Range, Slug, Statement, Within
from scripts.records.names import NamedSpecies
from scripts.records.record import Record
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


class Plant(NamedSpecies):
    """A plant, as a keeper of capped-soil tanks needs to know it."""

    habit: Literal["stem", "rosette", "epiphyte", "carpet", "floater", "moss", "marginal"]
    roots: Literal["in-soil", "in-water", "on-hardscape", "none"]
    verdict: Annotated[str, Field(min_length=20, max_length=240)]
    looks: Statement
    traits: Traits | None = None  # what the drawing is made from
    needs: Needs
    size: Size
    growth: Growth
    nitrogen: Nitrogen
    care: Care
    troubles: list[Trouble] = []
    look_alikes: list[LookAlike] = []
    eaten_by: list[EatenBy] = []
    disposal: Statement
