"""The site's own search under Node: its own script and its own index."""

import json
import shutil
import subprocess
from pathlib import Path

PROGRAM = Path(__file__).with_name("search_queries.mjs")
FILES = ("finder.js", "intent.js", "minisearch.js", "search.json", "shared-words.js")
MOST_SECONDS = 60  # a search that hangs ends here


def searched(site: Path, folder: Path, queries: list[str]) -> list[list[str]]:
    """The addresses that the search of a built site finds for each query, best first.

    ``folder`` is an empty one to work in. Raises ``CalledProcessError`` or ``TimeoutExpired``.
    """
    assets = folder / "assets"
    assets.mkdir()
    for name in FILES:
        shutil.copy(site / "assets" / name, assets / name)
    (folder / "package.json").write_text('{"type": "module"}', encoding="utf-8")
    shutil.copy(PROGRAM, folder / PROGRAM.name)
    node = shutil.which("node") or "node"
    done = subprocess.run(
        [node, PROGRAM.name], cwd=folder, input=json.dumps(queries), capture_output=True, text=True,
        check=True, timeout=MOST_SECONDS,
    )  # fmt: skip
    found: list[list[str]] = json.loads(done.stdout)
    return found
