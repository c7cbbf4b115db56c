"""The interpreter's two files without what only native packages would call, made once for each version."""

import hashlib
import shutil
from pathlib import Path

from scripts.setup.node import browser_parts, node
from scripts.setup.paths import BUILD, LOCKS
from scripts.setup.say import Missing, step

FILES = ("pyodide.asm.js", "pyodide.asm.wasm")
SHRINK = Path(__file__).parent / "shrink.mjs"
SMALL = BUILD / "interpreter"


def small_interpreter() -> Path:
    """The folder with the two files. Raises ``Missing`` where they cannot be made."""
    digest = hashlib.sha256((LOCKS / "npm" / "package-lock.json").read_bytes())
    digest.update(SHRINK.read_bytes())
    stamp = SMALL / "made-from.txt"
    if stamp.exists() and stamp.read_text(encoding="utf-8") == digest.hexdigest():
        return SMALL
    parts = browser_parts()
    with step("taking out of the interpreter what no calculator can call"):
        shutil.rmtree(SMALL, ignore_errors=True)
        SMALL.mkdir(parents=True)
        done = node(str(SHRINK), *map(str, (parts / "binaryen", parts / "pyodide", SMALL)))
        if done.returncode:
            raise Missing(f"the interpreter could not be made small: {done.stderr[-2_000:]}")
        stamp.write_text(digest.hexdigest(), encoding="utf-8")
    return SMALL
