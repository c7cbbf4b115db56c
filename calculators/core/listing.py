"""Finds calculators and imports them: one by name, as a page asks for it, or all."""

from functools import cache
from importlib import import_module
from pkgutil import iter_modules

import calculators
from calculators.core.declare import CATALOGUE, Spec
from calculators.core.lead_checks import check_leads

NO_CALCULATORS = ("bridge", "core", "science", "shelf")


def import_calculator(module: str) -> None:
    """Import a calculator by its module's name, if there is one: a file, or a package of that name."""
    room = f"calculators.{module}"
    declaration = f"{room}.calculator"
    try:
        if hasattr(import_module(room), "__path__"):
            import_module(declaration)
    except ModuleNotFoundError as missing:
        if missing.name not in (room, declaration):
            raise


@cache
def import_calculators() -> None:
    """Import every module that holds a calculator, and look at their leads; once a process.

    Raises ``TypeError`` where an answer leads to a calculator or an input that is not there.
    """
    for module in iter_modules(calculators.__path__):
        if module.name not in NO_CALCULATORS and not module.name.startswith("_"):
            import_calculator(module.name)
    check_leads(CATALOGUE)


def load_all() -> dict[str, Spec]:
    """The catalogue of all calculators by name, sorted.

    Raises ``TypeError`` where an answer leads to a calculator or an input that is not there.
    """
    import_calculators()
    return dict(sorted(CATALOGUE.items()))
