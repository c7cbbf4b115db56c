"""Which calculators there are. Not needed in the browser, where a page asks for one by name."""

from importlib import import_module
from pkgutil import iter_modules

import calculators
from calculators.core.declare import CATALOGUE, Spec


def load_all() -> dict[str, Spec]:
    """Import every module of the package that holds a calculator; the catalogue by name, sorted."""
    for module in iter_modules(calculators.__path__):
        if not module.ispkg and not module.name.startswith("_") and module.name != "bridge":
            import_module(f"calculators.{module.name}")
    return dict(sorted(CATALOGUE.items()))
