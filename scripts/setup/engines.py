"""Other engines than Chromium's, for the tests' walk of the core path: found, or installed where allowed."""

import shutil
from dataclasses import dataclass
from pathlib import Path

from scripts.setup.chromium import starts
from scripts.setup.packages import package_commands, run_in_order
from scripts.setup.say import step

PACKAGES = ("firefox-esr", "webkit2gtk-driver", "xvfb")  # Debian's
LIBRARIES = Path("/usr/lib")


@dataclass(frozen=True)
class WebKit:
    """The programs that WebKit takes here: its driver, its small browser, a screen in memory."""

    driver: str
    browser: str
    screen: str


def find_firefox() -> str | None:
    """The path of a Firefox that starts, or None."""
    for name in ("firefox-esr", "firefox"):
        path = shutil.which(name)
        if path and starts(path):
            return path
    return None


def find_webkit() -> WebKit | None:
    """WebKit's GTK build with its driver, or None where a part of it is missing."""
    driver, screen = shutil.which("WebKitWebDriver"), shutil.which("Xvfb")
    browsers = sorted(LIBRARIES.glob("*/webkit2gtk-4.*/MiniBrowser"))
    if not driver or not screen or not browsers:
        return None
    return WebKit(driver, str(browsers[-1]), screen)


def ensure_engines() -> None:
    """Install what is missing where the system allows it; else the tests say which engine was not tried."""
    if find_firefox() and find_webkit():
        return
    if commands := package_commands(*PACKAGES):
        with step("installing Firefox and WebKit for the tests' core path"):
            run_in_order(commands)
