"""A folder that a build makes anew: a file that would be the same as before is moved from the one before.

A file and its folder take several times as long to make as to move, and most of a site is the same as
before. Nothing is taken on trust: a file is moved only where its octets are those that would be written.
"""

import hashlib
import os
import shutil
import stat
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from fnmatch import fnmatch
from pathlib import Path

from scripts.setup.file_hash import Octets, digest_of, names_below, note_digest, write_known

READ_AND_WRITE = 0o666


class NewFolder:
    """Puts files into ``path``, which is empty. ``before`` is a folder that nobody needs, or is not there.

    Processes that share the work may put each their own files.
    """

    def __init__(self, path: Path, before: Path) -> None:
        path.mkdir(parents=True)
        self.path, self.before = path, before
        made = path.stat()
        self.folder_mode = made.st_mode
        self.file_mode = made.st_mode & READ_AND_WRITE
        self.plain = {"": self.is_plain_folder("") and before.stat().st_dev == made.st_dev}

    def put(self, name: str, octets: Octets) -> None:
        """Write a file. Raises ``FileExistsError`` where it stands already."""
        path = f"{self.path}{os.sep}{name}"
        if not os.path.lexists(path) and self.moved(name, octets, self.file_mode):
            return note_digest(os.stat(path), hashlib.sha256(octets).digest())
        os.makedirs(os.path.dirname(path), exist_ok=True)
        return write_known(path, octets, "xb")

    def copy_all(self, source: Path, below: str = "", ignored: Iterable[str] = ()) -> None:
        """Copy the files of a folder to a place ``below``, but those whose names, seen from there, fit a
        pattern of ``ignored``. Raises as ``copy``.
        """
        for name in names_below(source):
            if not any(fnmatch(name, pattern) for pattern in ignored):
                self.copy(source / name, f"{below}/{name}" if below else name)

    def copy(self, source: str | Path, name: str) -> None:
        """Copy a file into the folder as ``shutil.copy2`` does.

        Raises ``FileExistsError`` where it stands already, and ``OSError``.
        """
        path = f"{self.path}{os.sep}{name}"
        if os.path.lexists(path):
            raise FileExistsError(f"{name} stands in {self.path.name}/ already")
        with open(source, "rb", buffering=0) as file:
            mode, octets = os.fstat(file.fileno()).st_mode & READ_AND_WRITE, file.read()
        if not self.moved(name, octets, mode):
            os.makedirs(os.path.dirname(path), exist_ok=True)
            shutil.copy2(source, path)
        note_digest(os.stat(path), digest_of(os.fspath(source), just_made=True))

    def moved(self, name: str, octets: Octets, mode: int) -> bool:
        """Whether the folder before had such a file, which then stands in this one. ``mode`` in the bits of
        ``chmod``.

        Moved first and judged then: in the other folder another build may be at work.
        """
        above, _ = os.path.split(name)
        new = f"{self.path}{os.sep}{name}"
        try:
            if not self.is_plain(above):
                return False
            move(f"{self.before}{os.sep}{name}", new)
        except OSError:  # it is not there, or may not be touched
            return False
        if is_plain_file(new, octets, mode):
            return True
        remove(Path(new))
        return False

    def is_plain(self, name: str) -> bool:
        """Whether a folder of the one before, and each above it, is as it would be made: a link would lead to
        files of somebody's own.
        """
        if name not in self.plain:
            above, _ = os.path.split(name)
            self.plain[name] = self.is_plain(above) and self.is_plain_folder(name)
        return self.plain[name]

    def is_plain_folder(self, name: str) -> bool:
        """The same of this folder alone."""
        try:
            return os.lstat(self.before / name).st_mode == self.folder_mode
        except OSError:
            return False


@contextmanager
def made_anew(path: Path, before: Path) -> Iterator[NewFolder]:
    """Make a folder anew; what was there goes, and in the end what nobody took of ``before``."""
    remove(path)
    yield NewFolder(path, before)
    remove(before)


def set_aside(path: Path, before: Path) -> None:
    """Have a folder stand as ``before``, in place of what stood there; on another disk it goes."""
    remove(before)
    try:
        os.rename(path, before)
    except OSError:
        remove(path)


def remove(path: Path) -> None:
    """Remove a folder, a file or a link, if it is there."""
    if path.is_symlink() or path.is_file():
        path.unlink()
    else:
        shutil.rmtree(path, ignore_errors=True)


def is_plain_file(path: str, octets: Octets, mode: int) -> bool:
    """Whether it is a file, no link, that holds these octets and may be read and written by those that
    ``mode`` says, in the bits of ``chmod``.
    """
    found = os.lstat(path)
    if not stat.S_ISREG(found.st_mode) or found.st_mode & READ_AND_WRITE != mode:
        return False
    if found.st_size != len(octets):
        return False
    with open(path, "rb", buffering=0) as file:
        return file.read() == octets


def move(old: str, new: str) -> None:
    """Move a file; with its folder, where that holds nothing else and has yet to be made.

    Raises ``OSError``.
    """
    (old_folder, last), folder = os.path.split(old), os.path.dirname(new)
    if not os.path.lexists(folder):
        os.makedirs(os.path.dirname(folder), exist_ok=True)
        if os.listdir(old_folder) == [last]:
            os.rename(old_folder, folder)
            return
        os.mkdir(folder)
    os.rename(old, new)
