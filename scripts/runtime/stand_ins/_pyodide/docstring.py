"""Stands in for what gives the runtime's own functions their docstrings, which nobody reads in a book."""

from collections.abc import Callable
from typing import Any


def get_cmeth_docstring(function: Callable[..., Any]) -> str:
    """The head that such a docstring must have."""
    return f"{function.__name__}()\n--\n\n"
