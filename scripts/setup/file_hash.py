"""A hash of many files, by which a build sees whether any of them has changed."""

import hashlib
import os
from collections.abc import Iterable
from pathlib import Path

from scripts.setup.paths import ROOT


def hash_of_files(files: Iterable[Path]) -> str:
    """A hash of files: where each stands, seen from the project, and what is in it.

    What has gone meanwhile is passed over.
    """
    read = hashlib.sha256()
    for path in files:
        try:
            octets = path.read_bytes()
        except FileNotFoundError:
            continue
        read.update(f"{os.path.relpath(path, ROOT)}\0{len(octets)}\0".encode())
        read.update(octets)
    return read.hexdigest()
