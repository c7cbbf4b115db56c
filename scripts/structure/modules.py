"""Reads our modules as syntax trees, and what each imports of ours, imports inside functions too."""

import ast
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path
from typing import NamedTuple

from scripts.setup.paths import ROOT

ROOMS = ("calculators", "scripts")


class Module(NamedTuple):
    """A module by its full name. ``imports`` are the full names of our modules that it imports."""

    name: str
    lines: int
    tree: ast.Module
    imports: frozenset[str]


def read_modules(root: Path = ROOT, rooms: Iterable[str] = ROOMS) -> dict[str, Module]:
    """Every module under these folders of ``root``, by full name. Raises ``SyntaxError`` with the file."""
    sources = {
        full_name(path.relative_to(root)): (path, path.read_text(encoding="utf-8"))
        for room in rooms
        for path in sorted((root / room).rglob("*.py"))
    }
    trees = {name: ast.parse(text, str(path)) for name, (path, text) in sources.items()}
    return {
        name: Module(
            name,
            len(text.splitlines()),
            trees[name],
            frozenset(imported(trees[name], sources.keys())) - {name},
        )
        for name, (_, text) in sources.items()
    }


def full_name(path: Path) -> str:
    """``calculators/tank/words.py`` is ``calculators.tank.words``; a package has its folder's name."""
    parts = path.with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


def imported(tree: ast.Module, known: Iterable[str]) -> Iterator[str]:
    """The full names among ``known`` that a module imports, wherever in it the statement stands."""
    known = frozenset(known)
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names if alias.name in known)
        elif isinstance(node, ast.ImportFrom) and node.module in known:
            for alias in node.names:
                member = f"{node.module}.{alias.name}"
                yield member if member in known else str(node.module)


def graph(modules: Mapping[str, Module]) -> dict[str, frozenset[str]]:
    """What each module imports, by full name."""
    return {name: module.imports for name, module in modules.items()}
