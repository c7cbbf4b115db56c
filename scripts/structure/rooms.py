"""Which room a module stands in, and whether it stands where its users are."""

import ast
from collections.abc import Mapping
from typing import NamedTuple

from scripts.structure.circles import reach
from scripts.structure.modules import Module, graph

SHARED = ("calculators.core", "calculators.science")
SHELF = (
    "calculators.shelf"  # what the shelf asks beside calculators; only doors and pages import it
)
DOORS = ("calculators", "calculators.bridge", "calculators.__main__")

# Data flows species -> records -> tables -> calculators -> pages. Each room, and what it may not import.
# The units and kinds of quantity are in calculators.core and calculators.science, which are no calculator.
BACKWARDS = {
    "scripts.records": ("scripts.tables", "scripts.pages", "scripts.site", "calculators.bridge"),
    "scripts.tables": ("scripts.pages", "scripts.site", "calculators.bridge"),
    "calculators": ("scripts",),
    "scripts.pages": ("scripts.site", "scripts.records.checks"),
}
# The shape of a table is declared once, where it is read; what makes the table takes it from there.
TABLE_SHAPE = "_table"
CHECKS_THAT_RUN_CALCULATORS = "scripts.records.with_calculators"


class Import(NamedTuple):
    """A module and one that it imports."""

    by: str
    of: str


def within(name: str, room: str) -> bool:
    """Whether a module is a room's own, or the room itself."""
    return name == room or name.startswith(f"{room}.")


def calculator_rooms(modules: Mapping[str, Module]) -> dict[str, str]:
    """The room of each calculator, by the module that declares it: a package of its own, or its file."""
    return {
        name: name.removesuffix(".calculator")
        for name, module in modules.items()
        if name.startswith("calculators.") and declares(module.tree)
    }


def declares(tree: ast.Module) -> bool:
    """Whether a module has a function under ``@calculator(...)``."""
    marks = (
        mark
        for node in tree.body
        if isinstance(node, ast.FunctionDef)
        for mark in node.decorator_list
    )
    return any(
        isinstance(mark, ast.Call)
        and isinstance(mark.func, ast.Name)
        and mark.func.id == "calculator"
        for mark in marks
    )


def across(modules: Mapping[str, Module]) -> list[Import]:
    """Imports from the room of a calculator, of the shelf, or of what is shared, into the room of
    another calculator, into the shelf's, or of a door of the page."""
    closed = {*calculator_rooms(modules).values(), SHELF}
    return [
        Import(name, other)
        for room in sorted({*closed, *SHARED})
        for name in modules
        if within(name, room)
        for other in sorted(modules[name].imports)
        if other in DOORS[1:] or any(within(other, home) for home in closed - {room})
    ]


def stray(modules: Mapping[str, Module]) -> list[str]:
    """Modules under ``calculators`` that are of no calculator, nor of the shelf, nor shared, nor a door."""
    homes = (*SHARED, SHELF, *calculator_rooms(modules).values())
    return [
        name
        for name in modules
        if within(name, "calculators") and name not in DOORS
        if not any(within(name, home) for home in homes)
    ]


def backwards(modules: Mapping[str, Module]) -> list[Import]:
    """Imports against the flow of data."""
    calculators = {*calculator_rooms(modules).values(), SHELF}
    return [
        Import(name, other)
        for name, module in modules.items()
        for other in sorted(module.imports)
        if against(name, other)
        or (
            reads_records(name)
            and any(within(other, room) for room in calculators)
            and not other.endswith(TABLE_SHAPE)
        )
    ]


def against(name: str, other: str) -> bool:
    """Whether one room may not import the other."""
    return any(
        within(name, room) and within(other, later)
        for room, rooms in BACKWARDS.items()
        for later in rooms
    )


def reads_records(name: str) -> bool:
    """Whether a module reads records or makes tables: before any calculator may be imported."""
    return within(name, "scripts.tables") or (
        within(name, "scripts.records") and not within(name, CHECKS_THAT_RUN_CALCULATORS)
    )


def science_users(modules: Mapping[str, Module]) -> dict[str, list[str]]:
    """The rooms that reach each module of ``science/``, directly or through others of it: calculators,
    and the shelf's."""
    imports = graph(modules)
    users: dict[str, set[str]] = {
        name: set() for name in modules if within(name, "calculators.science")
    }
    for room in (*calculator_rooms(modules).values(), SHELF):
        own = [name for name in modules if within(name, room)]
        for name in {other for part in own for other in reach(imports, part)} & users.keys():
            users[name].add(room.removeprefix("calculators."))
    return {name: sorted(rooms) for name, rooms in users.items()}


def serving_one(modules: Mapping[str, Module]) -> dict[str, list[str]]:
    """Modules of ``science/`` that one room or none reaches, with which. Packages are left out."""
    packages = {name.rpartition(".")[0] for name in modules}
    return {
        name: rooms
        for name, rooms in science_users(modules).items()
        if len(rooms) < 2 and name not in packages
    }
