"""Texts that take long to make, kept in ``build/kept/`` from one build to the next.

A text is kept under all that it follows from: its ingredients, which the caller names, and our code, all of
it, so that nobody has to say which part of it the text needs.
"""

import hashlib
import os
import sys
import time
from collections.abc import Callable, Iterable, Iterator
from contextlib import suppress
from functools import cache
from tempfile import NamedTemporaryFile
from typing import NoReturn

from scripts.setup.file_hash import files_below, hash_of_files
from scripts.setup.paths import BUILD, ROOT
from scripts.setup.say import Missing

FOLDER = BUILD / "kept"
CODE = ("calculators", "scripts")
CODE_FILES = (".py", ".j2")
LONGEST_UNUSED_S = (
    3 * 24 * 3600
)  # seconds after which a text that no build asked for is thrown away
LOOK_EVERY_S = 24 * 3600  # seconds; a look through thousands of files takes a tenth of one
LOOKED = "looked-through"  # a file whose time says when


def kept(kind: str, ingredients: str, make: Callable[[], str]) -> str:
    """The text that follows from the ingredients; made only where no build has made it.

    ``kind`` names what makes it, so that two makers with the same ingredients keep two texts.
    """
    text = recall(kind, ingredients)
    if text is None:
        text = make()
        keep(kind, ingredients, text)
    return text


def recall(kind: str, ingredients: str) -> str | None:
    """The text that a build has made of these ingredients; None where none has."""
    octets = recall_octets(kind, ingredients)
    return None if octets is None else octets.decode()


def recall_octets(kind: str, ingredients: str) -> bytes | None:
    """As ``recall``, in UTF-8."""
    return octets_at(place_of(kind, ingredients))


def octets_at(path: str) -> bytes | None:
    """What is kept in a file; None where it is kept no longer."""
    try:
        with open(path, "rb", buffering=0) as file:
            octets = file.read()
        os.utime(path)
    except OSError:
        return None
    return octets


def recall_blocks(kind: str, ingredients: str) -> Iterator[bytes]:
    """The blocks that a build has made, one at a time; none where none has."""
    path = place_of(kind, ingredients)
    try:
        os.utime(path)
        with open(path, "rb") as file:
            while length := file.readline():
                yield file.read(int(length))
    except OSError:
        return


def keep(kind: str, ingredients: str, *parts: str | bytes) -> None:
    """Keep a text that was made of these ingredients, together with others. Its parts, those that are octets
    in UTF-8, follow each other.
    """
    keep_parts(kind, ingredients, parts)


def keep_parts(kind: str, ingredients: str, parts: Iterable[str | bytes]) -> None:
    """As ``keep``, with parts that are made one at a time."""
    path = place_of(kind, ingredients)
    folder = os.path.dirname(path)
    os.makedirs(folder, exist_ok=True)
    with NamedTemporaryFile(dir=folder, suffix=".part", delete=False) as part:
        part.writelines(octets_of(one) for one in parts)
    os.replace(part.name, path)  # whole or not there, however many builds run


def keep_blocks(kind: str, ingredients: str, blocks: Iterable[bytes]) -> None:
    """Keep blocks of octets that are made one at a time, each behind a line with its length."""
    keep_parts(kind, ingredients, (b"%d\n%b" % (len(block), block) for block in blocks))


def octets_of(text: str | bytes) -> bytes:
    """A text in UTF-8, which it may be already."""
    return text.encode() if isinstance(text, str) else text


def is_kept(kind: str, ingredients: str) -> bool:
    """Whether a build has made the text; it then stays for this one."""
    return is_there(place_of(kind, ingredients))


def is_there(path: str) -> bool:
    """Whether something is kept in a file; it then stays for this build."""
    try:
        os.utime(path)
    except OSError:
        return False
    return True


def thrown_away() -> NoReturn:
    """Instead of a maker for what was there a moment ago. Raises ``Missing``."""
    raise Missing("build/kept was emptied while the site was built; run the command again.")


def throw_away(kind: str, ingredients: str) -> None:
    """Keep a text no longer, if it is there."""
    with suppress(OSError):
        os.unlink(place_of(kind, ingredients))


def place_of(kind: str, ingredients: str) -> str:
    """The file of a kept text."""
    name = hashlib.sha256(f"{code()}\0{ingredients}".encode()).hexdigest()
    return os.sep.join((str(FOLDER), kind, name))


@cache
def code() -> str:
    """A hash of our code and of the Python that runs it."""
    below = (path for room in CODE for path in files_below(ROOT / room))
    return f"{sys.version} {hash_of_files(path for path in below if path.endswith(CODE_FILES))}"


def throw_away_unused(now: float | None = None) -> None:
    """Remove every text that no build has asked for of late, once a day; ``now`` in seconds, as ``time.time``
    counts.
    """
    now = time.time() if now is None else now
    if not is_time_to_look(now):
        return
    oldest = now - LONGEST_UNUSED_S
    for kind in FOLDER.glob("*"):
        if not kind.is_dir():
            continue  # a file that somebody's file manager put there
        for entry in os.scandir(kind):  # there are thousands
            try:
                if entry.stat().st_mtime < oldest:
                    os.unlink(entry)
            except FileNotFoundError:
                pass  # another build was first


def is_time_to_look(now: float) -> bool:
    """Whether the last look is a day away, by a clock that may have been set back; this one is then noted.

    ``now`` in seconds, as ``time.time`` counts.
    """
    mark = FOLDER / LOOKED
    try:
        if abs(now - mark.stat().st_mtime) < LOOK_EVERY_S:
            return False
    except FileNotFoundError:
        FOLDER.mkdir(parents=True, exist_ok=True)
    mark.touch()
    return True
