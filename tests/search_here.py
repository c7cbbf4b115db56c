"""The site's own search under Node: its own script and its own index, opened once."""

import json
import shutil
import subprocess
import threading
from pathlib import Path

PROGRAM = Path(__file__).with_name("search_queries.mjs")
FILES = ("finder.js", "finding.js", "search.json")
MOST_SECONDS = 60  # a search that hangs ends here


class SearchHere:
    """A built site's search, answering until it is closed. ``folder`` is an empty one to work in."""

    def __init__(self, site: Path, folder: Path) -> None:
        assets = folder / "assets"
        assets.mkdir()
        for name in FILES:
            shutil.copy(site / "assets" / name, assets / name)
        (folder / "package.json").write_text('{"type": "module"}', encoding="utf-8")
        shutil.copy(PROGRAM, folder / PROGRAM.name)
        node = shutil.which("node") or "node"
        self.node = subprocess.Popen(
            [node, PROGRAM.name], cwd=folder, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
        )  # fmt: skip

    def __call__(self, queries: list[str]) -> list[list[str]]:
        """The addresses found for each query, best first. Raises ``ChildProcessError`` where it ended."""
        assert self.node.stdin
        assert self.node.stdout
        limit = threading.Timer(MOST_SECONDS, self.node.kill)
        limit.start()
        try:
            self.node.stdin.write(json.dumps(queries) + "\n")
            self.node.stdin.flush()
            line = self.node.stdout.readline()
        finally:
            limit.cancel()
        if not line:
            raise ChildProcessError("the search ended without an answer")
        found: list[list[str]] = json.loads(line)
        return found

    def close(self) -> None:
        """End it."""
        assert self.node.stdin
        assert self.node.stdout
        self.node.stdin.close()
        self.node.wait()
        self.node.stdout.close()
