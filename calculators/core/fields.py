"""The inputs and outputs of a calculator as its declaration has them."""

from collections.abc import Callable
from enum import StrEnum
from typing import Any, NamedTuple

from calculators.core.in_words import InWords
from calculators.core.quantity import (
    AnswersTo,
    AsRows,
    Download,
    FromFile,
    Octets,
    OnlyWith,
    PossibleBy,
    Quantity,
    TextForm,
    Valid,
)


class Kind(StrEnum):
    """What a value is; the words stand in the JSON description."""

    NUMBER = "number"
    INTEGER = "integer"
    CHOICE = "choice"
    KEYS = "keys"  # a list of known keys
    TEXT = "text"
    OCTETS = "octets"  # a text that is base64
    FLAG = "flag"
    LIST = "list"  # of rows
    OBJECT = "object"
    DATA = "data"  # anything else; only an output


class Naming(NamedTuple):
    """What inputs and outputs share: how a value is named, and how a person reads it."""

    key: str
    kind: Kind
    label: str
    unit: str = ""
    help: str = ""
    quantity: Quantity | None = None
    choices: tuple[str, ...] = ()
    words: tuple[str, ...] = ()  # what the person reads for each choice
    nullable: bool = False
    when_none: str = ""  # the words for None


class NamingParts:
    """Reads the parts of a field's naming as if they were its own."""

    __slots__ = ()
    naming: Naming

    @property
    def key(self) -> str:
        """The name in JSON; it carries the unit."""
        return self.naming.key

    @property
    def kind(self) -> Kind:
        """What the value is."""
        return self.naming.kind

    @property
    def label(self) -> str:
        """The name for a person."""
        return self.naming.label

    @property
    def unit(self) -> str:
        """The metric unit; empty where there is none."""
        return self.naming.unit

    @property
    def help(self) -> str:
        """One sentence beside it; may be empty."""
        return self.naming.help

    @property
    def quantity(self) -> Quantity | None:
        """The measured thing; None for what is not measured."""
        return self.naming.quantity

    @property
    def choices(self) -> tuple[str, ...]:
        """The keys that the value may have, where it has any."""
        return self.naming.choices

    @property
    def words(self) -> tuple[str, ...]:
        """What the person reads for each choice."""
        return self.naming.words

    @property
    def nullable(self) -> bool:
        """Whether the value may be None."""
        return self.naming.nullable

    @property
    def when_none(self) -> str:
        """The words for None; empty for a dash."""
        return self.naming.when_none


class InputParts(NamedTuple):
    """The parts of an input: its naming, what it takes, and what stands in where it is left empty."""

    naming: Naming
    low: float | None = None  # possible range, inclusive
    high: float | None = None
    possible_by: PossibleBy | None = None
    valid: Valid | None = None
    default: Any = None
    row: tuple[
        "InputField", ...
    ] = ()  # for a list: the fields of one row; for an object: its parts
    row_type: Callable[..., Any] | None = None  # what the formula gets a row or object as
    is_date: bool = False
    text_form: TextForm | None = None
    from_file: FromFile | None = None
    octets: Octets | None = None
    private: bool = False  # never in an address
    assumed: bool = False  # its default stands in where it is left empty
    asked_for: bool = False  # a keeper is asked for it, though it is nullable
    may_be_empty: bool = False  # for a list: no row is an answer too
    required: bool = False  # inside a row: no default stands in for it
    hints: tuple[Any, ...] = ()  # how it stands in a form; see form_hints.py


class InputField(InputParts, NamingParts):
    """One input, or one part of a row or an object that is put in."""

    __slots__ = ()

    def renamed(self, key: str) -> "InputField":
        """The same under another key."""
        return self._replace(naming=self.naming._replace(key=key))


class OutputParts(NamedTuple):
    """The parts of an output: its naming, and how a page shows it."""

    naming: Naming
    row: tuple[
        "OutputField", ...
    ] = ()  # for a list: the fields of one row; for an object: its parts
    levels: tuple[str, ...] = ()  # for a rating: how much each choice matters
    download: Download | None = None  # for a file's text
    as_rows: AsRows | None = None  # for what the page shows as cards or a table
    in_words: InWords | None = None  # for what the page shows in words in place of the value
    unpainted: bool = False  # no row of the table
    answers_to: AnswersTo | None = None  # the inputs that ask for it
    only_with: OnlyWith | None = None  # the output that it hangs on


class OutputField(OutputParts, NamingParts):
    """One output, or one part of a row or an object that comes out."""

    __slots__ = ()


Field = InputField | OutputField
