"""A hash of many files, by which a build sees whether any of them has changed.

A build asks for most files several times. One process reads a file once, as long as the system says that
nobody has written to it since; the next process reads it anew, so that nothing is taken on trust.
"""

import hashlib
import os
import time
from collections.abc import Iterable, Iterator
from typing import NamedTuple

from scripts.setup.paths import ROOT

# Two writes can bear one time where they follow each other: in the steps of the clock of a file system.
COARSEST_STEP_NS = 2_000_000_000  # of one that counts every other second


class State(NamedTuple):
    """What the system says of a file; a write changes its times, of which nobody can set the second."""

    written_ns: int
    changed_ns: int
    octets: int
    number: int


class Known(NamedTuple):
    """A file's digest, and the state in which it had been long enough for a write to change that."""

    state: State
    digest: bytes


KNOWN: dict[str, Known] = {}


def files_below(folder: str | os.PathLike[str]) -> Iterator[str]:
    """Every file of a folder, in an order that holds from one look to the next, but compiled Python.

    By ``os.walk``, which asks the system once a folder, where ``rglob`` asks once a file; as texts, which
    are made in a tenth of the time of a ``Path``.
    """
    for place, folders, names in os.walk(folder):
        folders.sort()
        for name in sorted(names):
            if not name.endswith(".pyc"):
                yield f"{place}{os.sep}{name}"


def hash_of_files(files: Iterable[str | os.PathLike[str]]) -> str:
    """A hash of files: where each stands, seen from the project, and what is in it.

    What has gone meanwhile is passed over.
    """
    read = hashlib.sha256()
    root = f"{ROOT}{os.sep}"
    for file in files:
        path = os.fspath(file)
        try:
            digest = digest_of(path)
        except FileNotFoundError:
            continue
        name = path.removeprefix(root) if path.startswith(root) else os.path.relpath(path, ROOT)
        read.update(f"{name}\0".encode())
        read.update(digest)
    return read.hexdigest()


def digest_of(path: str) -> bytes:
    """The SHA-256 digest of a file's octets. Raises ``OSError``."""
    known = KNOWN.get(path)
    if known and known.state == state_of(os.stat(path)):
        return known.digest
    now = time.time_ns()
    with open(path, "rb", buffering=0) as file:
        state = state_of(os.fstat(file.fileno()))
        digest = hashlib.sha256(file.read()).digest()
    if max(state.written_ns, state.changed_ns) < now - COARSEST_STEP_NS:
        KNOWN[path] = Known(state, digest)
    return digest


def state_of(found: os.stat_result) -> State:
    """What of the system's answer a write changes."""
    return State(found.st_mtime_ns, found.st_ctime_ns, found.st_size, found.st_ino)
