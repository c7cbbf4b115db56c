"""Our own scripts as they are served: joined into few files, without comments, blanks and long names.

A page asked for some seventy files before, and each cost a phone a request, a look into the book's copy and a
start of the compiler. Which modules stand together is said in ``scripts/javascript/packs.mjs``.
"""

import hashlib
import json
import shutil
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import NamedTuple

from scripts.setup.new_folder import NewFolder
from scripts.setup.node import browser_parts, node
from scripts.setup.paths import BUILD, DOCS, LOCKS, ROOT
from scripts.setup.say import Missing

SOURCES = DOCS / "assets"
BUNDLER = ROOT / "scripts" / "javascript" / "bundle.mjs"
PACKS = BUNDLER.with_name("packs.mjs")
MADE = BUILD / "bundles"
GRAPH = "graph.json"


class Graph(NamedTuple):
    """What loads what, by addresses below ``assets/``."""

    files: dict[str, list[str]]  # a served file: those that it loads at its start
    modules: dict[str, str]  # a module of ours: the served file that holds it
    packages: dict[str, str]  # a package of other people: the same

    def closure(self, modules: list[str]) -> list[str]:
        """The served files with some modules and all that they load, each once.

        Raises ``KeyError`` for no module of ours.
        """
        found: dict[str, None] = {}
        waiting = [self.modules[name] for name in modules]
        while waiting:
            name = waiting.pop(0)
            if name not in found:
                found[name] = None
                waiting += self.files[name]
        return list(found)


def put_scripts(site: NewFolder) -> None:
    """Put the joined scripts into a site. Raises ``Missing`` where the bundler refuses one."""
    site.copy_all(joined(), "assets", (GRAPH,))


def renew_scripts(site: Path) -> Graph:
    """Put the joined scripts in place of those that are there.

    Raises ``Missing``, and those that are there stay, where the bundler refuses one.
    """
    made = joined()
    assets = site / "assets"
    for path in assets.rglob("*.js"):
        path.unlink()
    shutil.copytree(made, assets, dirs_exist_ok=True, ignore=shutil.ignore_patterns(GRAPH))
    return graph_of(made)


def joined(sources: Path = SOURCES) -> Path:
    """The folder with the joined scripts, made once for their text and tools.

    Raises ``Missing`` where the bundler refuses one.
    """
    made = MADE / state_of(sources)
    if made.exists():
        return made
    MADE.mkdir(parents=True, exist_ok=True)
    with TemporaryDirectory(dir=MADE) as part:
        fresh = Path(part) / "fresh"
        done = node(str(BUNDLER), str(browser_parts()), str(sources), str(fresh))
        if done.returncode:
            raise Missing(f"the scripts could not be joined: {done.stderr.strip()}")
        try:
            fresh.rename(made)  # whole or not there
        except OSError:
            if not made.exists():  # another build was first, with the same
                raise
    return made


def graph_of(made: Path) -> Graph:
    """What the bundler says of the files in a folder that it made."""
    return Graph(**json.loads((made / GRAPH).read_text(encoding="utf-8")))


def state_of(sources: Path) -> str:
    """A name for what the scripts and the tools for them are made from."""
    digest = hashlib.sha256()
    lock = LOCKS / "npm" / "package-lock.json"
    for path in (BUNDLER, PACKS, lock, *sorted(sources.rglob("*.js"))):
        name = path.relative_to(sources).as_posix() if path.is_relative_to(sources) else path.name
        octets = path.read_bytes()
        digest.update(f"{name}\0{len(octets)}\0".encode() + octets)
    return digest.hexdigest()
