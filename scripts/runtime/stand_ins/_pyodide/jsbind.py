"""Stands in for declared signatures of JavaScript: a function that Python calls takes and gives what it will.

The whole module looks at signatures by ``inspect``, whose import takes as long as an answer.
"""

from typing import Any, NoReturn

from _pyodide_core import JsFuncSignature, js2py_default_call_result, py2js_default

no_default = object()


def _any(*args: Any, **keywords: Any) -> None:
    """Take everything."""


default_signature = JsFuncSignature(
    _any,
    False,  # it makes nothing new
    0,  # no place that must be filled
    (),  # converters of places, and their defaults
    (),
    py2js_default,  # of all other places
    (),  # keywords, their converters and defaults
    (),
    (),
    py2js_default,  # of all other keywords
    js2py_default_call_result,
)


def __getattr__(name: str) -> NoReturn:
    """Raise ``AttributeError`` for all that the whole module has."""
    raise AttributeError(f"the book's Python goes without declared signatures: {name}")
