"""The errors that leave a function: those that it raises, and those of a reader that it calls."""

import ast
from collections.abc import Iterable, Iterator, Mapping, Set

from scripts.structure.modules import Module

# Readers take what a keeper, a file or a page gave, and raise where it does not hold. Other functions
# raise where the code that calls them is wrong, which their callers need not say again.
READERS: dict[str, frozenset[str]] = {
    "calculators.core.read.read_inputs": frozenset({"BadInput"}),
    "calculators.core.run.compute": frozenset({"BadInput"}),
    "calculators.core.read_figure.read_figure": frozenset({"ValueError"}),
    "calculators.core.numbers.read_number": frozenset({"ValueError"}),
    "calculators.shelf.json_text.read_json": frozenset({"BadText"}),
    "calculators.science.shelf.reading.read_tank": frozenset({"BadInput"}),
    "calculators.science.shelf.reading.read_entries": frozenset({"BadInput"}),
    "calculators.shelf.form_filling.fill": frozenset({"BadInput"}),
    "calculators.shelf.redate.redated": frozenset({"ValueError"}),
    "scripts.records.parse.parse": frozenset({"NotARecord"}),
    "scripts.records.load.load": frozenset({"BadRecords"}),
}
ABOVE = {
    "BadInput": {"ValueError"},
    "BadText": {"ValueError"},
    "NotARecord": {"ValueError"},
}


def readers_called(module: Module) -> dict[str, frozenset[str]]:
    """The errors of each reader that a module imports or holds, by the name that it has there."""
    own = {full.rpartition(".") for full in READERS}
    held = {name: READERS[f"{room}.{name}"] for room, _, name in own if room == module.name}
    return held | {
        alias.asname or alias.name: READERS[full]
        for node in ast.walk(module.tree)
        if isinstance(node, ast.ImportFrom)
        for alias in node.names
        if (full := f"{node.module}.{alias.name}") in READERS
    }


def errors_that_leave(
    function: ast.FunctionDef, readers: Mapping[str, Set[str]] | None = None
) -> set[str]:
    """Names of the errors that the body raises, or a reader in it, and does not catch."""
    return set(raised(function.body, readers or {}))


def raised(body: Iterable[ast.stmt], readers: Mapping[str, Set[str]]) -> Iterator[str]:
    """The errors of these statements, without those of functions and classes that are defined in them."""
    for node in body:
        if isinstance(node, ast.FunctionDef | ast.ClassDef):
            continue
        if isinstance(node, ast.Raise):
            yield from error_names(node.exc)
        if isinstance(node, ast.Try):
            caught = {name for handler in node.handlers for name in error_names(handler.type)}
            inside = raised(node.body, readers)
            yield from (name for name in inside if not {name, *ABOVE.get(name, ())} & caught)
            for part in (node.orelse, node.finalbody, *(one.body for one in node.handlers)):
                yield from raised(part, readers)
            continue
        yield from called(node, readers)
        for part in (getattr(node, "body", []), getattr(node, "orelse", [])):
            yield from raised(part, readers)
        for case in getattr(node, "cases", []):
            yield from raised(case.body, readers)


def called(statement: ast.stmt, readers: Mapping[str, Set[str]]) -> Iterator[str]:
    """The errors of the readers called in a statement, those in blocks below it left out."""
    parts = [part for part in ast.iter_child_nodes(statement) if isinstance(part, ast.expr)]
    for node in (node for part in parts for node in ast.walk(part)):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
            yield from readers.get(node.func.id, ())


def error_names(expression: ast.expr | None) -> Iterator[str]:
    """The names of errors in a ``raise`` or an ``except``; those of a variable are not known."""
    if isinstance(expression, ast.Tuple):
        for item in expression.elts:
            yield from error_names(item)
    made_of = expression.func if isinstance(expression, ast.Call) else expression
    while isinstance(made_of, ast.Attribute) and not made_of.attr[:1].isupper():
        made_of = made_of.value  # a maker of the class, such as ``ValueError.of``
    if isinstance(made_of, ast.Attribute):
        yield made_of.attr
    elif isinstance(made_of, ast.Name) and made_of.id[:1].isupper():
        yield made_of.id
