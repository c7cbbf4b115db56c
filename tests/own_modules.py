"""The project's own modules as syntax trees, read once a process, whichever tests look at them."""

from functools import cache

from scripts.structure.modules import Module, read_modules


@cache
def own_modules() -> dict[str, Module]:
    """Every module of ``calculators/`` and ``scripts/`` by full name; not to be changed."""
    return read_modules()
