"""What public docstrings leave out, as far as names, annotations and bodies can show it.

A number needs its unit, a sequence of numbers its shape, and an error its name. A unit stands in the name
itself, as in ``volume_l``, or in the docstring; then the docstring names the parameter too. Words are
looked for, not understood: that the unit is the right one is for people to see.
"""

import ast
import re
from collections.abc import Iterable, Iterator, Mapping
from typing import NamedTuple

from scripts.structure.annotations import has_fixed_parts, holds_many, is_numeric, is_whole
from scripts.structure.modules import Module
from scripts.structure.number_words import (
    NAMED_PARTS,
    SHAPE,
    UNIT,
    count_in_name,
    unit_in_name,
)
from scripts.structure.raised import errors_that_leave, readers_called

# Their numbers are places on a picture; the docstring of the package tells in what.
PICTURES = ("scripts.drawings", "calculators.core.plot")


class Public(NamedTuple):
    """A public function or method: its full name, its module, its node, and its docstring.

    ``text`` is its own docstring with that of its class.
    """

    name: str
    module: str
    node: ast.FunctionDef
    own: str
    text: str


def public_functions(modules: Mapping[str, Module]) -> Iterator[Public]:
    """The public functions of modules and methods of public classes."""
    for name, module in modules.items():
        for owner, node in public_definitions(name, module.tree.body):
            above = ast.get_docstring(owner) or "" if owner else ""
            own = ast.get_docstring(node) or ""
            place = f"{name}.{owner.name}" if owner else name
            yield Public(f"{place}.{node.name}", name, node, own, f"{own} {above}")


def public_definitions(
    name: str, body: Iterable[ast.stmt], owner: ast.ClassDef | None = None
) -> Iterator[tuple[ast.ClassDef | None, ast.FunctionDef]]:
    """Each public function of a body, after the class that it is of."""
    for node in body:
        if isinstance(node, ast.FunctionDef) and not node.name.startswith("_"):
            yield owner, node
        elif isinstance(node, ast.ClassDef) and not node.name.startswith("_"):
            yield from public_definitions(name, node.body, node)


def without_docstring(modules: Mapping[str, Module]) -> list[str]:
    """Public modules, classes and functions that have none."""
    classes = (
        (f"{name}.{node.name}", node)
        for name, module in modules.items()
        for node in module.tree.body
        if isinstance(node, ast.ClassDef) and not node.name.startswith("_")
    )
    return [
        *(name for name, module in modules.items() if not ast.get_docstring(module.tree)),
        *(name for name, node in classes if not ast.get_docstring(node)),
        *(function.name for function in public_functions(modules) if not function.own),
    ]


def without_unit(modules: Mapping[str, Module]) -> list[str]:
    """Numbers that say no unit, as ``function(parameter)`` or ``function -> number``."""
    return [
        fault
        for function in public_functions(modules)
        if not function.name.startswith(PICTURES) and not is_calculator(function.node)
        for fault in unit_faults(function)
    ]


def unit_faults(function: Public) -> Iterator[str]:
    """The numbers of one function that say no unit."""
    says_unit = bool(UNIT.search(function.text))
    for parameter in parameters(function.node):
        says = unit_in_name(parameter.arg) or (
            is_whole(parameter.annotation) and count_in_name(parameter.arg)
        )
        names_it = says_unit and mentions(function.text, parameter.arg)
        if is_numeric(parameter.annotation) and not says and not names_it:
            yield f"{function.name}({parameter.arg})"
    returns = function.node.returns
    if is_numeric(returns) and not says_unit and not unit_in_name(function.node.name):
        yield f"{function.name} -> number"


def without_shape(modules: Mapping[str, Module]) -> list[str]:
    """Functions that give back a sequence or table of numbers and do not tell what stands in it."""
    return [
        function.name
        for function in public_functions(modules)
        if (returns := function.node.returns) is not None and holds_many(returns)
        if not SHAPE.search(function.own)
        if not (has_fixed_parts(returns) and NAMED_PARTS.search(function.own))
    ]


def without_error(modules: Mapping[str, Module]) -> list[str]:
    """Functions whose docstring does not name an error that leaves them, as ``function: error``."""
    readers = {name: readers_called(module) for name, module in modules.items()}
    return [
        f"{function.name}: {error}"
        for function in public_functions(modules)
        if not is_calculator(function.node)
        for error in sorted(errors_that_leave(function.node, readers[function.module]))
        if error not in function.own
    ]


def parameters(node: ast.FunctionDef) -> list[ast.arg]:
    """All parameters that have a name of their own."""
    return [*node.args.posonlyargs, *node.args.args, *node.args.kwonlyargs]


def mentions(text: str, name: str) -> bool:
    """Whether a text names a parameter, its words apart or as it is written."""
    return bool(re.search(rf"\b{name.replace('_', '[ _-]')}\b", text, re.IGNORECASE))


def is_calculator(node: ast.FunctionDef) -> bool:
    """Whether a function is declared a calculator: its quantities have units, its docstring is a page."""
    return any("calculator(" in ast.unparse(mark) for mark in node.decorator_list)
