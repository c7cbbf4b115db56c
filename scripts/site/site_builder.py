"""The one place that knows which site builder there is."""

import subprocess
import sys
from pathlib import Path

from scripts.setup.paths import ROOT


class BuildFailed(Exception):
    """The site builder refused, or a link leads nowhere; its words are the message."""


def run_builder(settings: Path, target: Path) -> None:
    """Have the builder make a site by these settings in a folder.

    Raises ``BuildFailed`` with its output.
    """
    options = ("--strict", "--quiet", "-f", str(settings), "-d", str(target.resolve()))
    command = [sys.executable, "-m", "mkdocs", "build", *options]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True)
    if done.returncode:
        raise BuildFailed(f"{done.stdout}{done.stderr}".strip())
