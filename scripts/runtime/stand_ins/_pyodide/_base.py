"""Stands in for the runtime's evaluation of Python: without what the page never asks, such as waiting."""

from _ast import Expr, Expression, PyCF_ONLY_AST
from importlib import import_module
from textwrap import dedent
from types import ModuleType
from typing import Any


def eval_code(
    source: str,
    globals: dict[str, Any] | None = None,
    locals: dict[str, Any] | None = None,
    *,
    filename: str = "<exec>",
) -> Any:
    """Run a source text; the value of its last line where that is an expression, or nothing.

    Raises whatever the source raises.
    """
    scope = {} if globals is None else globals
    tree: Any = compile(dedent(source), filename, "exec", PyCF_ONLY_AST)
    last = tree.body.pop() if tree.body and isinstance(tree.body[-1], Expr) else None
    exec(compile(tree, filename, "exec"), scope, locals)
    if last is None:
        return None
    return eval(compile(Expression(last.value), filename, "eval"), scope, locals)


def pyimport_impl(path: str) -> ModuleType:
    """A module by its path. Raises ``ModuleNotFoundError``."""
    return import_module(path)
