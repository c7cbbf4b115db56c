"""What a page shows for an output whose own values are keys and bare figures.

JSON and the command line keep the values; a keeper reads words, with a link where there is a page.
"""

from collections.abc import Callable, Mapping, Sequence
from typing import Any, NamedTuple

from calculators.core.quantity import RowsPlace
from calculators.core.result import Link


class RowInWords(NamedTuple):
    """One thing in words: its title, a sentence below it, and the page that it is about."""

    title: str
    text: str = ""
    link: Link | None = None


class InWords(NamedTuple):
    """Marks an output that a page shows in words in place of its values.

    ``rows`` takes the inputs and the outputs, by key. ``place`` is where the list of them stands; without
    one, their titles are the output's value in the table of figures.
    """

    rows: Callable[[Mapping[str, Any], Mapping[str, Any]], Sequence[RowInWords]]
    place: RowsPlace | None = None
