"""Stands in for the base classes of importers: the two that the runtime's own importer is made of.

The whole module brings those for files beside a module, and with them half the library.
"""

from importlib._abc import Loader

__all__ = ["Loader", "MetaPathFinder"]


class MetaPathFinder:
    """What finds modules."""
