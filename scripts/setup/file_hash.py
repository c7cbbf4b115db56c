"""A hash of many files, by which a build sees whether any of them has changed."""

import hashlib
import os
from collections.abc import Iterable, Iterator
from pathlib import Path

from scripts.setup.paths import ROOT


def files_below(folder: Path) -> Iterator[Path]:
    """Every file of a folder, in an order that holds from one look to the next, but compiled Python.

    By ``os.walk``, which asks the system once a folder, where ``rglob`` asks once a file.
    """
    for place, folders, names in os.walk(folder):
        folders.sort()
        for name in sorted(names):
            if not name.endswith(".pyc"):
                yield Path(place, name)


def hash_of_files(files: Iterable[Path]) -> str:
    """A hash of files: where each stands, seen from the project, and what is in it.

    What has gone meanwhile is passed over.
    """
    read = hashlib.sha256()
    root = f"{ROOT}{os.sep}"
    for path in map(str, files):
        try:
            with open(path, "rb", buffering=0) as file:  # as a Path it would take twice as long
                octets = file.read()
        except FileNotFoundError:
            continue
        name = path.removeprefix(root) if path.startswith(root) else os.path.relpath(path, ROOT)
        read.update(f"{name}\0{len(octets)}\0".encode())
        read.update(octets)
    return read.hexdigest()
