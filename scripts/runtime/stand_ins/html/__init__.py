"""Stands in for the module that reads and writes HTML: the book only writes it.

The whole module begins with a table of two thousand names of signs.
"""

from typing import NoReturn

WRITTEN = {ord(sign): text for sign, text in zip("&<>", ("&amp;", "&lt;", "&gt;"), strict=True)}
QUOTES = {ord('"'): "&quot;", ord("'"): "&#x27;"}


def escape(s: str, quote: bool = True) -> str:
    """A text as it stands in HTML; with ``quote`` also within quotation marks."""
    return s.translate(WRITTEN | QUOTES if quote else WRITTEN)


def __getattr__(name: str) -> NoReturn:
    """Raise ``AttributeError`` for all that the whole module has."""
    raise AttributeError(f"the book's Python goes without html.{name}")
