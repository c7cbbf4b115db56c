"""What public docstrings leave out, as far as names, annotations and bodies can show it.

A number needs its unit, a sequence of numbers its shape, and an error its name. A unit stands in the name
itself, as in ``volume_l``, or in the docstring; then the docstring names the parameter too. Words are
looked for, not understood: that the unit is the right one is for people to see.
"""

import ast
import re
from collections.abc import Iterable, Iterator, Mapping
from typing import NamedTuple

from scripts.structure.modules import Module
from scripts.structure.number_words import NAMED_PARTS, SHAPE, UNIT, count_in_name, unit_in_name
from scripts.structure.raised import errors_that_leave

NUMBERS = ("float", "int")
SEQUENCES = ("list", "tuple", "Sequence", "Iterable", "Iterator")
# Their numbers are places on a picture; the docstring of the package tells in what.
PICTURES = ("scripts.drawings", "calculators.core.plot")


class Public(NamedTuple):
    """A public function or method: its full name, its node, and its docstring with its class's."""

    name: str
    node: ast.FunctionDef
    own: str
    text: str


def public_functions(modules: Mapping[str, Module]) -> Iterator[Public]:
    """The public functions of modules and methods of public classes."""
    for name, module in modules.items():
        yield from functions_in(name, module.tree.body, "")


def functions_in(name: str, body: Iterable[ast.stmt], above: str) -> Iterator[Public]:
    """The public functions of a body; ``above`` is the docstring of the class that it is of."""
    for node in body:
        if isinstance(node, ast.FunctionDef) and not node.name.startswith("_"):
            own = ast.get_docstring(node) or ""
            yield Public(f"{name}.{node.name}", node, own, f"{own} {above}")
        elif isinstance(node, ast.ClassDef) and not node.name.startswith("_"):
            yield from functions_in(f"{name}.{node.name}", node.body, ast.get_docstring(node) or "")


def without_docstring(modules: Mapping[str, Module]) -> list[str]:
    """Public modules, classes and functions that have none."""
    return [
        *(name for name, module in modules.items() if not ast.get_docstring(module.tree)),
        *(
            f"{name}.{node.name}"
            for name, module in modules.items()
            for node in module.tree.body
            if isinstance(node, ast.ClassDef) and not node.name.startswith("_")
            if not ast.get_docstring(node)
        ),
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
    for parameter in parameters(function.node):
        if not numeric(parameter.annotation) or unit_in_name(parameter.arg):
            continue
        if counts(parameter.annotation) and count_in_name(parameter.arg):
            continue
        if not (mentions(function.text, parameter.arg) and UNIT.search(function.text)):
            yield f"{function.name}({parameter.arg})"
    returns = function.node.returns
    if returns is None or not numeric(returns) or unit_in_name(function.node.name):
        return
    if not UNIT.search(function.text):
        yield f"{function.name} -> {ast.unparse(returns)}"


def without_shape(modules: Mapping[str, Module]) -> list[str]:
    """Functions that give back a sequence or table of numbers and do not tell what stands in it."""
    return [
        f"{function.name} -> {ast.unparse(function.node.returns)}"
        for function in public_functions(modules)
        if function.node.returns is not None and many_numbers(function.node.returns)
        if not SHAPE.search(function.own)
        if not (of_fixed_length(function.node.returns) and NAMED_PARTS.search(function.own))
    ]


def without_error(modules: Mapping[str, Module]) -> list[str]:
    """Functions whose docstring does not name an error that leaves them, as ``function: error``."""
    return [
        f"{function.name}: {error}"
        for function in public_functions(modules)
        if not is_calculator(function.node)
        for error in sorted(errors_that_leave(function.node))
        if error not in function.own
    ]


def parameters(node: ast.FunctionDef) -> list[ast.arg]:
    """All parameters that have a name of their own."""
    return [*node.args.posonlyargs, *node.args.args, *node.args.kwonlyargs]


def numeric(annotation: ast.expr | None) -> bool:
    """Whether an annotation is a number, one that may be missing, or a sequence of such."""
    return (
        annotation is not None
        and bool(names_in(annotation) & {"float", "int"})
        and not (names_in(annotation) - {*NUMBERS, *SEQUENCES, "None"})
    )


def counts(annotation: ast.expr | None) -> bool:
    """Whether a number is a whole one."""
    return annotation is not None and "float" not in names_in(annotation)


def many_numbers(annotation: ast.expr) -> bool:
    """Whether an annotation is a sequence or a table that holds numbers."""
    names = names_in(annotation)
    return bool(names & {*NUMBERS}) and bool(names & {*SEQUENCES, "dict", "Mapping"})


def of_fixed_length(annotation: ast.expr) -> bool:
    """Whether an annotation is a tuple with a place for each of its parts."""
    text = ast.unparse(annotation)
    return text.startswith("tuple[") and "..." not in text and not re.search(r"list|dict", text)


def names_in(annotation: ast.expr) -> set[str]:
    """The words of an annotation."""
    return set(re.findall(r"\w+", ast.unparse(annotation)))


def mentions(text: str, name: str) -> bool:
    """Whether a text names a parameter, its words apart or as it is written."""
    return bool(re.search(rf"\b{name.replace('_', '[ _-]')}\b", text, re.IGNORECASE))


def is_calculator(node: ast.FunctionDef) -> bool:
    """Whether a function is declared a calculator: its quantities have units, its docstring is a page."""
    return any("calculator(" in ast.unparse(mark) for mark in node.decorator_list)
