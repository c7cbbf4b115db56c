"""The system's package manager, where it lets us install without asking."""

import os
import shutil
import subprocess
from collections.abc import Sequence

from scripts.setup.say import say


def package_commands(*packages: str) -> list[list[str]]:
    """The commands that install packages, in their order; none where the machine does not allow it."""
    root = as_root()
    if not shutil.which("apt-get") or root is None:
        return []
    install = [*root, "apt-get", "install", "-y", "--no-install-recommends", *packages]
    return [[*root, "apt-get", "update"], install]


def is_listed(package: str) -> bool:
    """Whether the lists of packages that this machine holds have one; nothing is fetched."""
    if not shutil.which("apt-cache"):
        return False
    known = subprocess.run(["apt-cache", "show", package], capture_output=True)
    return known.returncode == 0


def run_in_order(commands: Sequence[Sequence[str]]) -> None:
    """Run commands until one fails, and say which and why."""
    for command in commands:
        done = subprocess.run(command, capture_output=True, text=True)
        if done.returncode:
            reason = (done.stderr.strip().splitlines() or [""])[-1]
            say(f"    {' '.join(command)} failed: {reason}")
            return


def as_root() -> list[str] | None:
    """What to put before a command that needs root, or None where that cannot be had unasked."""
    if hasattr(os, "geteuid") and os.geteuid() == 0:
        return []
    sudo = shutil.which("sudo")
    if sudo and subprocess.run([sudo, "-n", "true"], capture_output=True).returncode == 0:
        return [sudo, "-n"]
    return None
