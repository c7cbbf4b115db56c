"""The offline list: every file of the site with its hash, and the service worker that holds to it."""

import hashlib
import json
import os
from collections.abc import Iterable
from pathlib import Path

from scripts.setup.file_hash import digest_of, names_below

WORKER = "service-worker.js"
LIST = "offline-list.json"
NOT_STORED = (WORKER, LIST, "sitemap.xml", "sitemap.xml.gz")
START_IMAGE = "runtime/start-"  # for a first visit alone
OPEN_DATA = "data/"  # to download, megabytes that no page needs; the page about them is stored


def write_offline_list(site: Path) -> str:
    """Write the list and the worker's version, which is the list's hash. Returns the version."""
    files = {
        address(name): digest_of(f"{site}{os.sep}{name}", just_made=True).hex()
        for name in sorted(names_below(site), key=lambda name: name.split("/"))
        if is_stored(name)
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
    files = (f"{name}index.html" if name.endswith("/") else name for name in addresses)
    return sum(os.stat(f"{site}{os.sep}{name}").st_size for name in files)


def address(name: str) -> str:
    """A file's address below the site's root; a page's is its folder."""
    if name == "index.html":
        return "./"
    return name.removesuffix("index.html") if name.endswith("/index.html") else name
