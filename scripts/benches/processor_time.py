"""Processor time of a program and all that it started: steadier than a clock. On Linux alone."""

import os
from pathlib import Path

TICKS = os.sysconf("SC_CLK_TCK")
PARENT, USER, SYSTEM = 1, 11, 12  # places in /proc/PID/stat after the name


def processor_seconds(word: str) -> float:
    """Seconds used so far by the processes with ``word`` in their command line, and all below them."""
    processes = dict(filter(None, map(read, Path("/proc").glob("[0-9]*"))))
    members = {number for number in processes if word in command(number)}
    size = -1
    while size != len(members):
        size = len(members)
        members |= {number for number, (parent, _) in processes.items() if parent in members}
    return sum(processes[number][1] for number in members)


def read(folder: Path) -> tuple[int, tuple[int, float]] | None:
    """A process's number, its parent's and its seconds; nothing where it has just ended."""
    try:
        fields = (folder / "stat").read_text().rpartition(")")[2].split()
    except OSError:
        return None
    return int(folder.name), (
        int(fields[PARENT]),
        (int(fields[USER]) + int(fields[SYSTEM])) / TICKS,
    )


def command(number: int) -> str:
    """A process's command line; empty where it has just ended."""
    try:
        return Path(f"/proc/{number}/cmdline").read_text()
    except OSError:
        return ""
