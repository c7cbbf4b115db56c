"""Stands in for the module that looks into living objects: what the runtime and ``pkgutil`` ask of it."""

from importlib.machinery import all_suffixes
from typing import Any, NoReturn

COROUTINE = 0x80  # a flag of code that is written with async


def iscoroutinefunction(obj: Any) -> bool:
    """Whether a function is written with async."""
    code = getattr(getattr(obj, "__func__", obj), "__code__", None)
    return code is not None and bool(code.co_flags & COROUTINE)


def getmodulename(path: str) -> str | None:
    """The name of the module in a file, or nothing where it holds none."""
    name = path.rpartition("/")[2]
    endings = [ending for ending in all_suffixes() if name.endswith(ending)]
    return name.removesuffix(max(endings, key=len)) if endings else None


def __getattr__(name: str) -> NoReturn:
    """Raise ``AttributeError`` for all that the whole module has."""
    raise AttributeError(f"the book's Python goes without inspect.{name}")
