"""A Chromium for the browser tests: found, or installed, or plainly refused. Never skipped."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

from scripts.setup.packages import is_listed, package_commands, run_in_order
from scripts.setup.say import Missing, step

# The same engine without windows, in a package of its own: a test takes a third less of the processor.
SHELL = "chromium-headless-shell"
NAMES = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable")
MAC = Path("/Applications/Google Chrome.app/Contents/MacOS/Google Chrome")


def find_chromium(*, windowless: bool = False) -> str | None:
    """The browser that CHROMIUM names, one on the PATH, or the test driver's own; None if none starts.

    ``windowless`` prefers the engine alone, where it is installed.
    """
    named = os.environ.get("CHROMIUM")
    on_path = [shutil.which(name) for name in ((SHELL, *NAMES) if windowless else (*NAMES, SHELL))]
    for candidate in [named, *on_path, str(MAC) if MAC.exists() else None]:
        if candidate and starts(candidate):
            return candidate
    own = driver_browser()  # asked last: the driver has to be started to tell
    return own if own and starts(own) else None


def starts(path: str) -> bool:
    """Whether the browser answers at all; a shim that only advises an install does not."""
    try:
        done = subprocess.run([path, "--version"], capture_output=True, timeout=30)
    except (OSError, subprocess.TimeoutExpired):
        return False
    return done.returncode == 0


def driver_browser() -> str | None:
    """The browser that the test driver downloaded for itself, if it did."""
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        path = playwright.chromium.executable_path
    return path if path and Path(path).exists() else None


def ensure_chromium(*, windowless: bool = False) -> str:
    """A working Chromium's path, installed first where the machine lets us.

    ``windowless`` prefers the engine alone. Raises ``Missing`` where none can be had.
    """
    if windowless and not shutil.which(SHELL) and "CHROMIUM" not in os.environ:
        add_shell()
    program = find_chromium(windowless=windowless)
    if program:
        return program
    for what, commands in install_commands(SHELL if windowless else "chromium"):
        with step(f"no Chromium here: installing one with {what}"):
            run_in_order(commands)
        program = find_chromium(windowless=windowless)
        if program:
            return program
    raise Missing(
        "the browser tests need Chromium and none could be installed; install the package "
        "chromium, or set CHROMIUM to the path of one, then run the command again."
    )


def add_shell() -> None:
    """Install the engine alone where the system's lists of packages have it; say nothing if not."""
    commands = package_commands(SHELL)
    if commands and is_listed(SHELL):
        with step("installing Chromium's engine without windows, for faster tests"):
            run_in_order(commands[-1:])


def install_commands(package: str) -> list[tuple[str, list[list[str]]]]:
    """The ways to install one that this machine offers, the system's ``package`` first."""
    system = package_commands(package)
    commands = [("the system's package manager", system)] if system else []
    driver = [sys.executable, "-m", "playwright", "install", "chromium-headless-shell"]
    commands.append(("the test driver's own download", [driver]))
    return commands
