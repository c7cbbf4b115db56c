"""An entry of a tank's log that an answer gives, for a keeper to write with a tap."""

from typing import NamedTuple


class Loggable(NamedTuple):
    """What a calculator measures and a log can take: data of its declaration.

    ``kind`` and ``what`` are those of the log's entries. ``output`` is the key of an output that holds
    ``value``, ``step`` (between what the measure can tell apart), ``words`` for the tap, and ``range`` in
    words, or None where what was measured is not worth a place in the log.
    """

    kind: str
    what: str
    output: str
