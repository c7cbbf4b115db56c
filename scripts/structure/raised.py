"""The errors that a function raises itself."""

import ast
from collections.abc import Iterable, Iterator


def errors_that_leave(function: ast.FunctionDef) -> set[str]:
    """Names of the errors that the body raises and does not catch by their own name."""
    return set(raised(function.body))


def raised(body: Iterable[ast.stmt]) -> Iterator[str]:
    """The errors of these statements, without those of functions and classes that are defined in them."""
    for node in body:
        if isinstance(node, ast.Raise):
            yield from error_names(node.exc)
        elif isinstance(node, ast.Try):
            caught = {name for handler in node.handlers for name in error_names(handler.type)}
            yield from (name for name in raised(node.body) if name not in caught)
            for part in (node.orelse, node.finalbody, *(one.body for one in node.handlers)):
                yield from raised(part)
        elif not isinstance(node, ast.FunctionDef | ast.ClassDef):
            for part in ("body", "orelse"):
                yield from raised(getattr(node, part, []))
            for case in getattr(node, "cases", []):
                yield from raised(case.body)


def error_names(expression: ast.expr | None) -> Iterator[str]:
    """The names of errors in a ``raise`` or an ``except``; those of a variable are not known."""
    if isinstance(expression, ast.Tuple):
        for item in expression.elts:
            yield from error_names(item)
    called = expression.func if isinstance(expression, ast.Call) else expression
    while isinstance(called, ast.Attribute) and not called.attr[:1].isupper():
        called = called.value  # a maker of the class, such as ``ValueError.of``
    if isinstance(called, ast.Attribute):
        yield called.attr
    elif isinstance(called, ast.Name) and called.id[:1].isupper():
        yield called.id
