"""How long modules and functions are, and which names of classes and files stand more than once."""

import ast
from collections import defaultdict
from collections.abc import Iterable, Mapping
from typing import NamedTuple

from scripts.structure.modules import Module

LONGEST_MODULE_LINES = 150
LONGEST_FUNCTION_LINES = 25
LARGEST_ROUNDING = 1e-8
# A calculator's declaration, outputs and words have the same file names in every package, on purpose.
# a calculator's package has these by plan, so that a reader knows where to look
SAME_IN_EVERY_PACKAGE = frozenset({"__init__", "calculator", "outputs", "words", "notes"})


class Length(NamedTuple):
    """How many lines a thing of this name has."""

    name: str
    lines: int


def long_modules(modules: Mapping[str, Module]) -> list[Length]:
    """Modules over the usual length, longest first."""
    return longest(
        Length(name, module.lines)
        for name, module in modules.items()
        if module.lines > LONGEST_MODULE_LINES
    )


def long_functions(modules: Mapping[str, Module]) -> list[Length]:
    """Functions over the usual length, signature and docstring counted, longest first."""
    return longest(
        Length(f"{name}.{node.name}", lines)
        for name, module in modules.items()
        for node in ast.walk(module.tree)
        if isinstance(node, ast.FunctionDef)
        if (lines := (node.end_lineno or node.lineno) - node.lineno + 1) > LONGEST_FUNCTION_LINES
    )


def longest(lengths: Iterable[Length]) -> list[Length]:
    """Sorted by lines, the most first."""
    return sorted(lengths, key=lambda length: (-length.lines, length.name))


def classes_named_twice(modules: Mapping[str, Module]) -> dict[str, list[str]]:
    """Names of classes that stand in several modules, with the modules."""
    return several(
        (node.name, name)
        for name, module in modules.items()
        for node in module.tree.body
        if isinstance(node, ast.ClassDef)
    )


def files_named_twice(modules: Mapping[str, Module]) -> dict[str, list[str]]:
    """Names of files that stand in several folders, but for those that every package has.

    Folders do not count: ``scripts/pages/animals/`` and ``scripts/drawings/animals/`` are of one thing.
    """
    folders = {name.rpartition(".")[0] for name in modules}
    return several(
        (stem, name)
        for name in modules
        if name not in folders
        if (stem := name.rpartition(".")[2]) not in SAME_IN_EVERY_PACKAGE
    )


def figures_declared_twice(modules: Mapping[str, Module]) -> dict[str, list[str]]:
    """Constants of one name and one number in several modules, as ``NAME = number``, with the modules.

    Steps of rounding are left out: each place has its own, and that they agree means nothing.
    """
    return several(
        (f"{target.id} = {node.value.value:g}", name)
        for name, module in modules.items()
        for node in module.tree.body
        if isinstance(node, ast.Assign) and isinstance(node.value, ast.Constant)
        if isinstance(node.value.value, int | float) and abs(node.value.value) > LARGEST_ROUNDING
        for target in node.targets
        if isinstance(target, ast.Name)
    )


def several(pairs: Iterable[tuple[str, str]]) -> dict[str, list[str]]:
    """The keys that come more than once, sorted, with their values."""
    values: dict[str, list[str]] = defaultdict(list)
    for key, value in pairs:
        values[key].append(value)
    return {key: values[key] for key in sorted(values) if len(values[key]) > 1}
