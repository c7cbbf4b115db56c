"""Circles of imports: modules of which each needs the others before it is whole."""

from collections.abc import Mapping, Set


def circles(graph: Mapping[str, Set[str]]) -> list[list[str]]:
    """The groups of two or more modules that reach each other, sorted.

    Two modules are in one group where each is reached from the other.
    """
    reached = {name: reach(graph, name) for name in graph}
    groups = {
        tuple(sorted({name} | {other for other in reached[name] if name in reached[other]}))
        for name in graph
        if name in reached[name]
    }
    return [list(group) for group in sorted(groups)]


def reach(graph: Mapping[str, Set[str]], start: str) -> frozenset[str]:
    """Every module that ``start`` imports, directly or through others; itself only if in a circle."""
    reached: set[str] = set()
    waiting = list(graph[start])
    while waiting:
        name = waiting.pop()
        if name not in reached:
            reached.add(name)
            waiting.extend(graph.get(name, ()))
    return frozenset(reached)
