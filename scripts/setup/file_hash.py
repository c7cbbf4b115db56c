"""A hash of many files, by which a build sees whether any of them has changed.

A build asks for most files several times. One process reads a file once, as long as the system says that
nobody has written to it since; the next process reads it anew, so that nothing is taken on trust.
"""

import hashlib
import os
import time
from collections.abc import Iterable, Iterator
from typing import Any, NamedTuple

from scripts.setup.paths import ROOT

Octets = bytes | memoryview

# Two writes can bear one time where they follow each other: in the steps of the clock of a file system.
COARSEST_STEP_NS = 2_000_000_000  # of one that counts every other second


class FileState(NamedTuple):
    """Which file it is, and what a write changes: its times, of which nobody can set the second, and size."""

    device: int
    number: int
    written_ns: int
    changed_ns: int
    octets: int


class Known(NamedTuple):
    """A file's digest; ``settled`` where its last write was so long ago that another would show."""

    digest: bytes
    settled: bool


KNOWN: dict[FileState, Known] = {}  # by state, so that a file is known under a new name too


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


def names_below(folder: str | os.PathLike[str]) -> Iterator[str]:
    """The same files by their names seen from the folder, with ``/`` on every machine."""
    start = len(os.fspath(folder)) + len(os.sep)
    for path in files_below(folder):
        yield path[start:].replace(os.sep, "/")


def hash_of_files(files: Iterable[str | os.PathLike[str]], *, just_made: bool = False) -> str:
    """A hash of files: where each stands, seen from the project, and what is in it.

    What has gone meanwhile is passed over. ``just_made`` as in ``digest_of``.
    """
    read = hashlib.sha256()
    root = f"{ROOT}{os.sep}"
    for file in files:
        path = os.fspath(file)
        try:
            digest = digest_of(path, just_made=just_made)
        except FileNotFoundError:
            continue
        name = path.removeprefix(root) if path.startswith(root) else os.path.relpath(path, ROOT)
        read.update(f"{name}\0".encode())
        read.update(digest)
    return read.hexdigest()


def digest_of(path: str, *, just_made: bool = False) -> bytes:
    """The SHA-256 digest of a file's octets.

    ``just_made``: of what this process has made, what it wrote is taken for what is there, though another
    write may bear the same time; for a note of what was made, which such a write should contradict.
    Raises ``OSError``.
    """
    known = KNOWN.get(state_of(os.stat(path)))
    if known and (known.settled or just_made):
        return known.digest
    now = time.time_ns()
    with open(path, "rb", buffering=0) as file:
        state = state_of(os.fstat(file.fileno()))
        digest = hashlib.sha256(file.read()).digest()
    settled = max(state.written_ns, state.changed_ns) < now - COARSEST_STEP_NS
    KNOWN[state] = Known(digest, settled)
    return digest


def all_known() -> list[tuple[int | bytes, ...]]:
    """What this process knows, in plain values: one row a file, its state and what is known of it."""
    return [(*state, *known) for state, known in KNOWN.items()]


def know_too(all_known: list[tuple[Any, ...]]) -> None:
    """Take what another process of the same command knows, in rows as ``all_known`` gives them."""
    for *state, digest, settled in all_known:
        KNOWN[FileState(*state)] = Known(digest, settled)


def write_known(path: str, octets: Octets, mode: str = "wb") -> None:
    """Write a file whose digest need not be read then. Raises ``OSError``."""
    with open(path, mode) as file:
        file.write(octets)
        file.flush()
        note_digest(os.fstat(file.fileno()), hashlib.sha256(octets).digest())


def note_digest(found: os.stat_result, digest: bytes) -> None:
    """Note the digest of a file that was just put there, as the system tells of it now."""
    KNOWN[state_of(found)] = Known(digest, settled=False)


def state_of(found: os.stat_result) -> FileState:
    """What of the system's answer tells one state of a file from another."""
    return FileState(
        found.st_dev, found.st_ino, found.st_mtime_ns, found.st_ctime_ns, found.st_size
    )
