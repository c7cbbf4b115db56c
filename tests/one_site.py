"""The site that the tests look at: built once a run, whoever of the workers comes first."""

import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from scripts.setup.paths import BUILD
from scripts.site.build import build

FOLDER = BUILD / "test-site"
LOCK = BUILD / "test-site.lock"
BUILT_BY = BUILD / "test-site-run.txt"
RUN = "PYTEST_XDIST_TESTRUNUID"  # the same in all workers of a run


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


def built_site() -> Path:
    """Build the site unless a worker of this run has done so; its folder."""
    run = os.environ.get(RUN)
    with locked(LOCK):
        done = run and BUILT_BY.exists() and BUILT_BY.read_text(encoding="utf-8") == run
        if not done:
            BUILT_BY.unlink(missing_ok=True)
            build(FOLDER)
            BUILT_BY.write_text(run or "alone", encoding="utf-8")
    return FOLDER


if __name__ == "__main__":
    built_site()
