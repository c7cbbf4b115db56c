"""What ships to the browser imports the standard library alone, and little of it."""

import ast

import pytest

from scripts.setup.paths import ROOT

# Each module costs start-up time on a phone; add one only for a reason.
ALLOWED = {
    "collections", "difflib", "enum",
    "html", "importlib", "json", "math", "pkgutil", "re", "types", "typing", "bisect",
    "functools", "itertools", "operator", "statistics", "datetime", "random",
    "binascii",  # part of the interpreter itself: no file to load
}  # fmt: skip
ONLY_ON_THE_COMMAND_LINE = {"argparse", "os", "sys"}
FILES = sorted((ROOT / "calculators").rglob("*.py"))


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.relative_to(ROOT).as_posix())
def test_imports_only_what_is_allowed(path):
    allowed = ALLOWED | (ONLY_ON_THE_COMMAND_LINE if path.name == "__main__.py" else set())
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        names = []
        if isinstance(node, ast.Import):
            names = [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            names = [node.module or ""]
        for name in names:
            assert name.split(".")[0] in allowed | {"calculators"}, f"{path.name} imports {name}"


def test_calculators_know_nothing_of_the_build():
    for path in FILES:
        assert "scripts" not in path.read_text(encoding="utf-8").split(), path


def test_nothing_of_ours_imports_the_site_builder():
    for path in (ROOT / "scripts").rglob("*.py"):
        text = path.read_text(encoding="utf-8")
        assert "import mkdocs" not in text, path
        assert "from mkdocs" not in text, path
