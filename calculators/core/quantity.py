"""What a measured thing is: its name, unit, possible range and how it is shown."""

from collections.abc import Callable
from enum import StrEnum
from typing import NamedTuple


class UsUnit(NamedTuple):
    """A linear change of unit for the screen: shown = metric * factor + offset."""

    unit: str
    factor: float
    offset: float = 0.0


class Quantity(NamedTuple):
    """A measured thing.

    ``possible`` is what can exist at all: a value outside it is refused.
    ``digits`` is the number of significant figures that are worth showing.
    ``us`` is the customary unit where one is in use; keys and formulas stay metric.
    ``least`` is the smallest that is worth showing: what is less, but not nothing, is said so.
    ``written`` names units that this thing alone may be written in, with their size in ``unit``; what
    all things of a unit may be written in stands in ``written_units.py``.
    """

    label: str
    unit: str
    possible: tuple[float, float]
    digits: int = 3
    us: UsUnit | None = None
    least: float = 0.0
    written: tuple[tuple[str, float], ...] = ()


class Label(NamedTuple):
    """Names a general quantity for one place, such as "Inner length" for a length."""

    text: str


class Help(NamedTuple):
    """One sentence for the person at the form."""

    text: str


class Possible(NamedTuple):
    """Narrows the vocabulary's possible range for one place; outside it, refuse."""

    low: float
    high: float


class PossibleBy(NamedTuple):
    """A possible range that goes with what is chosen in another field of the same row.

    A choice without a range here keeps the field's own.
    """

    key: str
    ranges: dict[str, tuple[float, float]]


class Valid(NamedTuple):
    """The range that the source of a formula supports; outside it, compute and say so."""

    low: float
    high: float


class Digits(NamedTuple):
    """Narrows the vocabulary's significant figures for one place, where what goes in is rough."""

    number: int


class Choices(NamedTuple):
    """Words shown for the values of a ``Literal``, in the same order.

    ``levels``, where the choices are ratings, says of each how much it matters: ``info``, ``caution``
    or ``danger``. The box that carries the words takes its colour from it.
    """

    words: tuple[str, ...]
    levels: tuple[str, ...] = ()


class Download(NamedTuple):
    """Marks an output as the text of a file, which the page offers to save."""

    file_name: str
    media_type: str


class RowsStyle(StrEnum):
    """How a list of rows looks."""

    CARDS = "cards"
    TABLE = "table"
    CLOSED = "closed"  # a list that opens when tapped


class RowsPlace(StrEnum):
    """Where in an answer a list of rows stands."""

    FIRST = "first"  # before the pictures
    AFTER = "after"  # behind them
    FOLDED = "folded"  # in the first fold of pictures
    NEXT = "next"  # below the figures, which then come first
    LAST = "last"  # below those


class AsRows(NamedTuple):
    """How the page shows an output that is a list of rows.

    ``title`` and ``subtitle`` are keys of a row, ``page`` the address of what it is about, such as
    ``plants/{plant}/``, ``bar`` the key of a figure from 0 to 100 (which ``bar_words`` may put into words),
    ``lines`` that of its sentences,
    ``contrary`` that of sentences that speak against it, ``columns`` those of a table, ``picture`` the
    address of a small picture of what it is about.
    """

    style: RowsStyle
    title: str
    subtitle: str = ""
    page: str = ""
    bar: str = ""
    lines: str = ""
    contrary: str = ""
    columns: tuple[str, ...] = ()
    picture: str = ""
    place: RowsPlace = RowsPlace.AFTER
    bar_words: Callable[[float], str] | None = None


class IsDate(NamedTuple):
    """Marks a text as a date, written 2026-12-07; of these the page fills in ``today`` alone."""


class TextForm(NamedTuple):
    """Marks a text that has a form of its own: what is allowed in words, how long, and what fits.

    With ``lines`` it may have line breaks and tabs.
    """

    words: str
    most: int
    fits: Callable[[str], bool] = bool
    lines: bool = False


class FromFile(NamedTuple):
    """Marks rows or an object as they stand in a file: keys that are not known are let pass.

    A later version of the file may have more of them. ``most`` is how many rows are read.
    """

    most: int = 1_000


class Octets(NamedTuple):
    """Marks a text as base64 of at most ``most`` octets, such as the colours of a picture."""

    most: int


class Private(NamedTuple):
    """Marks an input that stays on the device: it never goes into a page's address."""


class Unpainted(NamedTuple):
    """Marks an output for a program or for the page's picture; it is no row of the table."""


class Assumed(NamedTuple):
    """Marks an input whose default may stand in where a keeper leaves it empty, and is then said.

    An input without this mark, which may not be empty either, is asked for: its default is the
    worked example's figure alone, and never goes into an answer for a keeper's own tank unsaid.
    """


class AskedFor(NamedTuple):
    """Marks an input that only the worked example may leave empty, such as a photo; a keeper may not."""


class MayBeEmpty(NamedTuple):
    """Marks a list that a keeper may leave without a row, though the worked example has some."""


class AnswersTo(NamedTuple):
    """Marks an output as the answer to what some inputs ask.

    Where one of them is empty, or holds ``nothing``, a blank output was not asked for: the page
    leaves its row out and names the input instead.
    """

    keys: tuple[str, ...]
    nothing: str | None = None


class OnlyWith(NamedTuple):
    """Marks an output that means something only where another one is there."""

    key: str


class WhenNone(NamedTuple):
    """What a person reads for an output that is None, in place of a dash."""

    text: str


class Keys(NamedTuple):
    """The keys that a text may hold, read from a list of records, and the words shown for them."""

    keys: tuple[str, ...]
    words: tuple[str, ...]
