"""Stands in for the loader of packages: all that the book runs comes in two files."""

from typing import Any, NoReturn

from pyodide_js import loadedPackages

# An image of memory counts what of JavaScript is held, by its place: the whole module holds this one.
HELD = loadedPackages


class PackageFolder:
    """A folder that the runtime asks for by name."""

    def __init__(self, path: str) -> None:
        """Keep the path."""
        self.path = path

    def __str__(self) -> str:
        """The path as text."""
        return self.path


SITE_PACKAGES = PackageFolder("/lib/site-packages")
DSO_DIR = PackageFolder("/usr/lib")


def init_loaded_packages() -> None:
    """None is there."""


def unpack_buffer(*given: Any, **named: Any) -> NoReturn:
    """Raise ``NotImplementedError``: the book loads no packages."""
    raise NotImplementedError("the book's Python loads no packages")
