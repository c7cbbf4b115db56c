"""What the browser's scripts import of one another, at their start or while they run: from their text."""

import re
from pathlib import Path

# `import ... from "./x.js"`, `export ... from "./x.js"`, `import "./x.js"` and `import("./x.js")`, in code
# alone: what a comment says of types is no import.
NAMED = re.compile(r"""^(?:import|export)\b[^;"'(]*["'](\.[^"']+)["']""", re.MULTILINE)
WHILE_RUNNING = re.compile(r"""\bimport\(\s*["'](\.[^"']+)["']""")
COMMENT = re.compile(r"/\*.*?\*/|^\s*//[^\n]*", re.DOTALL | re.MULTILINE)


def script_graph(folder: Path) -> dict[str, frozenset[str]]:
    """Each script of a folder by its place there, with the places of those that it imports."""
    top = folder.resolve()
    scripts = {path.relative_to(top).as_posix(): path for path in sorted(top.rglob("*.js"))}
    return {
        name: frozenset(found for found in imported(path, top) if found in scripts)
        for name, path in scripts.items()
    }


def imported(path: Path, top: Path) -> list[str]:
    """What one script imports, by place in the folder; what lies outside of it is left out."""
    code = COMMENT.sub("", path.read_text(encoding="utf-8"))
    found = [*NAMED.findall(code), *WHILE_RUNNING.findall(code)]
    places = [(path.parent / one).resolve() for one in found]
    return [one.relative_to(top).as_posix() for one in places if one.is_relative_to(top)]
