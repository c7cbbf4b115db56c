"""The entries of a tank's log: their kinds, what each is of, in which unit and between which limits."""

from typing import Annotated, Literal, NamedTuple, get_args

from calculators.core.dates import MOMENT
from calculators.core.quantities import FAHRENHEIT, GALLON, OUNCE, Concentration, Factor
from calculators.core.quantity import Choices, Help, Label, Possible, TextForm, UsUnit
from calculators.core.read_fields import read_input_row
from calculators.science.shelf.both_units import in_both
from calculators.science.shelf.text_forms import ID, NOTE

MOST_ENTRIES = 100_000
MOST = 1_000_000.0  # of any value

EntryKind = Literal[
    "reading", "feed", "trim", "thin", "change", "top-up", "dose", "plant", "animal", "death", "note",
]  # fmt: skip
KIND_WORDS = Choices((
    "reading", "fed", "trimmed", "floaters thinned", "water changed", "topped up", "dosed",
    "plants in or out", "animals in or out", "animals died", "note",
))  # fmt: skip
WHAT = TextForm("a text of 1 to 80 characters", 80)


class Entry(NamedTuple):
    """One line of the log. What is taken out, plants or animals, has a value below zero."""

    id: Annotated[str | None, Label("Name in the file"), ID, Help("One name counts once.")]
    tank: Annotated[str | None, Label("Tank"), ID, Help("Empty: this tank.")]
    at: Annotated[str, Label("When"), MOMENT]
    kind: Annotated[EntryKind, Label("Kind"), KIND_WORDS]
    what: Annotated[str | None, Label("Of what"), WHAT] = None
    value: Annotated[Factor | None, Label("Value"), Possible(-MOST, MOST)] = None
    text: Annotated[str | None, Label("Note"), NOTE] = None
    step: Annotated[
        Concentration | None, Label("Step of the kit"), Help("The gap between its colours.")
    ] = None


class Measured(NamedTuple):
    """Something that is read or entered: its name, unit, limits, and the steps worth offering."""

    label: str
    unit: str
    low: float
    high: float
    steps: tuple[float, ...]
    us: UsUnit | None = None

    @property
    def name(self) -> str:
        """The label without what it is counted as, for a sentence."""
        return self.label.partition(",")[0]

    @property
    def step(self) -> float:
        """The step of a common kit; common practice, no source."""
        return self.steps[0]

    def words(self, value: float) -> str:
        """A value with its unit, in both kinds of unit where there are two."""
        return in_both(value, self.unit, self.us)


READINGS: dict[str, Measured] = {
    "nitrate_mg_l": Measured("nitrate, NO₃", "mg/L", 0, 1_000, (5, 1, 10)),
    "nitrite_mg_n_l": Measured("nitrite, as nitrogen", "mg N/L", 0, 100, (0.02, 0.1, 0.5)),
    "ammonia_mg_n_l": Measured("ammonia, as nitrogen", "mg N/L", 0, 50, (0.1, 0.25, 0.5)),
    "phosphate_mg_l": Measured("phosphate, PO₄", "mg/L", 0, 100, (0.25, 0.1, 1)),
    "ph": Measured("pH", "", 3, 11, (0.2, 0.1, 0.5)),
    "gh_dh": Measured("GH", "°dH", 0, 60, (1, 0.5, 2)),
    "kh_dh": Measured("KH", "°dH", 0, 60, (1, 0.5, 2)),
    "temperature_c": Measured("temperature", "°C", 0, 45, (0.5, 0.1, 1), FAHRENHEIT),
    "oxygen_mg_l": Measured("oxygen", "mg/L", 0, 50, (1, 0.1, 2)),
    "cover_percent": Measured("floating cover", "%", 0, 100, (10, 5, 1)),
    "copper_ug_l": Measured("copper", "µg/L", 0, 10_000, (10, 1, 50)),
}
GRAMS = Measured("grams, wet", "g", 0, 10_000, (10, 1, 50), OUNCE)


class KindOf(NamedTuple):
    """What a kind of entry holds.

    ``of``: what its ``what`` names: readings, plants, animals, doses, or nothing. ``value`` is None
    where it has none; ``must`` names the parts that it may not lack.
    """

    of: Literal["", "readings", "plants", "animals", "doses"]
    value: Measured | None
    must: tuple[str, ...] = ()


KINDS: dict[str, KindOf] = {
    "reading": KindOf("readings", None, ("what", "value")),
    "feed": KindOf("", Measured("grams, dry", "g", 0, 5_000, (0.1, 0.05, 0.5))),
    "trim": KindOf("plants", GRAMS),
    "thin": KindOf("plants", GRAMS),
    "change": KindOf("", Measured("share of the water", "%", 0, 100, (5, 1, 10)), ("value",)),
    "top-up": KindOf("", Measured("litres", "L", 0, 10_000, (0.5, 0.1, 1), GALLON)),
    "dose": KindOf("doses", Measured("amount", "", 0, 10_000, (0.1, 0.01, 1)), ("what", "value")),
    "plant": KindOf("plants", GRAMS._replace(low=-10_000), ("what",)),
    "animal": KindOf("animals", Measured("number", "", -10_000, 10_000, (1, 5, 10)), ("what", "value")),
    "death": KindOf("animals", Measured("number", "", 0, 10_000, (1, 5, 10))),
    "note": KindOf("", None, ("text",)),
}  # fmt: skip
ENTRY_FIELDS = read_input_row(Entry)
ENTRY_MUST_HAVE = ("id", "tank", "at", "kind")
assert tuple(KINDS) == get_args(EntryKind)


def measured_of(kind: str, what: str | None) -> Measured | None:
    """What the value of an entry measures; None where it has none, or of an unknown reading."""
    return READINGS.get(what or "") if kind == "reading" else KINDS[kind].value
