"""What ships to the browser imports the standard library alone, and little of it."""

import ast

from scripts.setup.paths import ROOT
from tests.own_modules import own_modules

# Each module costs start-up time on a phone; add one only for a reason.
ALLOWED = {
    "collections", "difflib", "enum",
    "html", "importlib", "json", "math", "pkgutil", "re", "types", "typing", "bisect",
    "functools", "itertools", "operator", "datetime", "random",
    "binascii",  # part of the interpreter itself: no file to load
}  # fmt: skip
ONLY_ON_THE_COMMAND_LINE = {"argparse", "os", "sys"}
FILES = sorted((ROOT / "calculators").rglob("*.py"))


def imports(tree):
    """The names of the modules that a module imports, inside functions too."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            yield node.module or ""


def test_imports_only_what_is_allowed():
    ours = {name: one for name, one in own_modules().items() if name.startswith("calculators")}
    assert len(ours) == len(FILES)
    wrong = []
    for module, one in ours.items():
        more = ONLY_ON_THE_COMMAND_LINE if module.endswith("__main__") else set()
        allowed = {*ALLOWED, *more, "calculators"}
        rooms = ((name, name.split(".")[0]) for name in imports(one.tree))
        wrong += [f"{module} imports {name}" for name, room in rooms if room not in allowed]
    assert wrong == []


def test_calculators_know_nothing_of_the_build():
    for path in FILES:
        assert "scripts" not in path.read_text(encoding="utf-8").split(), path


def test_nothing_of_ours_imports_the_site_builder():
    for path in (ROOT / "scripts").rglob("*.py"):
        text = path.read_text(encoding="utf-8")
        assert "import mkdocs" not in text, path
        assert "from mkdocs" not in text, path
