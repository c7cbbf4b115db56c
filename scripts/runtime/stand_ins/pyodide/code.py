"""Stands in for the runtime's ways to run Python: the one that the page takes."""

from typing import NoReturn

from _pyodide._base import eval_code

__all__ = ["eval_code"]


def __getattr__(name: str) -> NoReturn:
    """Raise ``AttributeError`` for all that the whole module has."""
    raise AttributeError(f"the book's Python goes without pyodide.code.{name}")
