"""Our own scripts as they are served: without comments, blanks and long local names, a third lighter."""

import hashlib
import shutil
from pathlib import Path

from scripts.setup.node import MINIFIER, minify
from scripts.setup.paths import BUILD, LOCKS

MADE = BUILD / "small-scripts"


def shrink_scripts(site: Path, ready: frozenset[str]) -> None:
    """Shrink the site's scripts in place; ``ready`` names those that came small already.

    Each is made once for its text and its tool's lock. Raises ``Missing`` where Node refuses one.
    """
    assets = site / "assets"
    files = sorted(path for path in assets.rglob("*.js") if path.name not in ready)
    wanted = {path: MADE / f"{state_of(path)}.js" for path in files}
    fresh = {path: made for path, made in wanted.items() if not made.exists()}
    if fresh:
        shrink(fresh)
    for path, made in wanted.items():
        shutil.copyfile(made, path)


def state_of(path: Path) -> str:
    """A name for what a script and the tool for it are made from."""
    lock = LOCKS / "npm" / "package-lock.json"
    parts = (path.read_bytes(), MINIFIER.read_bytes(), lock.read_bytes())
    return hashlib.sha256(b"\0".join(parts)).hexdigest()


def shrink(files: dict[Path, Path]) -> None:
    """Make the small forms, by script. Raises ``Missing``."""
    MADE.mkdir(parents=True, exist_ok=True)
    minify(files)
    for path, made in files.items():
        part = made.with_suffix(".part")
        shutil.copyfile(path, part)
        part.replace(made)  # whole or not there
