"""The memory of this process's children and theirs together, while they run."""

import os
import threading
from collections.abc import Iterator
from pathlib import Path
from types import TracebackType
from typing import Self

PROCESSES = Path("/proc")
LOOK_EVERY_S = 0.05  # seconds
SHARE = "Pss:"  # what a process has to itself, and its share of what it has with others, kB


class PeakMemory:
    """The highest of many looks, MB; of memory that processes share each counts its part.

    Nothing, ``nan``, where the machine does not say.
    """

    def __init__(self) -> None:
        self.peak_mb = 0.0 if PROCESSES.exists() else float("nan")
        self.ended = threading.Event()
        self.thread = threading.Thread(target=self.look, daemon=True)

    def __enter__(self) -> Self:
        if PROCESSES.exists():
            self.thread.start()
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.ended.set()
        if self.thread.is_alive():
            self.thread.join()

    def look(self) -> None:
        """Look again and again until it is over."""
        while not self.ended.wait(LOOK_EVERY_S):
            self.peak_mb = max(self.peak_mb, sum(map(share_mb, below(str(os.getpid())))))


def below(parent: str) -> Iterator[str]:
    """The processes that a process has started, and theirs, each by its number."""
    try:
        threads = [path / "children" for path in (PROCESSES / parent / "task").iterdir()]
        children = [word for path in threads for word in path.read_text().split()]
    except OSError:  # it has ended
        return
    for child in children:
        yield child
        yield from below(child)


def share_mb(process: str) -> float:
    """The share of the memory that a process has by its number, MB; none of one that has ended."""
    try:
        lines = (PROCESSES / process / "smaps_rollup").read_text().splitlines()
    except OSError:
        return 0.0
    return sum(int(line.split()[1]) for line in lines if line.startswith(SHARE)) / 1024
