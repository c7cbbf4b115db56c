"""Stands in for the loops and tasks of Python: the page asks one question after another, and itself waits."""

from typing import NoReturn


def __getattr__(name: str) -> NoReturn:
    """Raise ``AttributeError`` for all that the whole module has."""
    raise AttributeError(f"the book's Python goes without asyncio.{name}")
