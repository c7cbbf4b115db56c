"""The offline list: every file of the site with its hash, and the service worker that holds to it."""

import hashlib
import json
from collections.abc import Iterable
from pathlib import Path

from scripts.setup.file_hash import digest_of, files_below

WORKER = "service-worker.js"
LIST = "offline-list.json"
NOT_STORED = (WORKER, LIST, "sitemap.xml", "sitemap.xml.gz")
START_IMAGE = "runtime/start-"  # for a first visit alone
OPEN_DATA = "data/"  # to download, megabytes that no page needs; the page about them is stored


def write_offline_list(site: Path) -> str:
    """Write the list and the worker's version, which is the list's hash. Returns the version."""
    files = {
        address(path.relative_to(site)): digest_of(str(path), just_made=True).hex()
        for path in sorted(map(Path, files_below(site)))
        if is_stored(path.relative_to(site).as_posix())
    }
    text = json.dumps(files, ensure_ascii=False, separators=(",", ":"))
    version = hashlib.sha256(text.encode()).hexdigest()
    (site / LIST).write_text(text, encoding="utf-8")
    worker = site / WORKER
    text = worker.read_text(encoding="utf-8").replace("{{ version }}", version)
    worker.write_text(text.replace("{{ bytes }}", str(size(site, files))), encoding="utf-8")
    return version


def is_stored(name: str) -> bool:
    """Whether a phone keeps a file of the site, by its path there."""
    if name in NOT_STORED or name.startswith(START_IMAGE):
        return False
    return not name.startswith(OPEN_DATA) or name.endswith(".html")


def size(site: Path, addresses: Iterable[str]) -> int:
    """The bytes of all files that the list names."""
    return sum(
        (site / name / "index.html" if name.endswith("/") else site / name).stat().st_size
        for name in addresses
    )


def address(path: Path) -> str:
    """A file's address below the site's root; a page's is its folder."""
    name = path.as_posix()
    if name == "index.html":
        return "./"
    return name.removesuffix("index.html") if name.endswith("/index.html") else name
