"""The site that the tests look at: built once a run, whoever of the workers comes first.

An everyday run takes the site of the last one where nothing that a site is made from has changed since;
a thorough run never does.
"""

import os
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from scripts.setup.paths import BUILD, ROOT
from scripts.site.nothing_new import forget, sources
from tests.effort import thorough

FOLDER = BUILD / "test-site"
LOCK = BUILD / "test-site.lock"
BUILT_BY = BUILD / "test-site-run.txt"
RUN = "PYTEST_XDIST_TESTRUNUID"  # the same in all workers of a run
ALONE = "alone"  # a run of a single process


@contextmanager
def locked(path: Path) -> Iterator[None]:
    """Hold a lock that ends with the process, however that ends."""
    path.parent.mkdir(parents=True, exist_ok=True)
    with path.open("a+b") as file:
        if os.name == "nt":
            import msvcrt

            file.seek(0)
            msvcrt.locking(file.fileno(), msvcrt.LK_LOCK, 1)
        else:
            import fcntl

            fcntl.flock(file, fcntl.LOCK_EX)
        yield  # closing the file frees the lock


def made_from() -> str:
    """A hash of all that a site is made from: our files, the locks of others' among them, Python, the day."""
    return " ".join(sources())


def is_there() -> bool:
    """Whether the site of this run stands; one of an earlier run becomes it where it would be the same."""
    if not BUILT_BY.exists() or not FOLDER.exists():
        return False
    run = os.environ.get(RUN, ALONE)
    of_run, _, made = BUILT_BY.read_text(encoding="utf-8").partition(" ")
    if of_run == run != ALONE:
        return True  # whatever was changed meanwhile: one run looks at one site
    if thorough() or made != made_from():
        return False
    BUILT_BY.write_text(f"{run} {made}", encoding="utf-8")
    return True


def built_site() -> Path:
    """Build the site unless it is there already; its folder."""
    with locked(LOCK):
        if not is_there():
            BUILT_BY.unlink(missing_ok=True)
            forget(FOLDER)
            before = made_from()
            # In a process of its own: this one has threads, so that it could use one core alone.
            build = ("-m", "scripts.serve", "--build-only", "--into", str(FOLDER))
            subprocess.run(
                [sys.executable, *build], cwd=ROOT, check=True, stdout=subprocess.DEVNULL
            )
            made = before if before == made_from() else "changed-meanwhile"
            BUILT_BY.write_text(f"{os.environ.get(RUN, ALONE)} {made}", encoding="utf-8")
    return FOLDER


if __name__ == "__main__":
    built_site()
