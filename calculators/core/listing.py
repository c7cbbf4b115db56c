"""Which calculators there are. Not needed in the browser, where a page asks for one by name."""

from pkgutil import iter_modules

import calculators
from calculators.core.declare import CATALOGUE, Spec
from calculators.core.run import import_calculator

NO_CALCULATORS = ("bridge", "core", "science")


def load_all() -> dict[str, Spec]:
    """Import every module that holds a calculator; the catalogue by name, sorted."""
    for module in iter_modules(calculators.__path__):
        if module.name not in NO_CALCULATORS and not module.name.startswith("_"):
            import_calculator(module.name)
    return dict(sorted(CATALOGUE.items()))
