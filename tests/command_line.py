"""The calculators' command line: as a process of its own, and, for the many cases, in this one."""

import io
import subprocess
import sys
from contextlib import redirect_stderr, redirect_stdout
from typing import NamedTuple

from calculators.__main__ import main
from scripts.setup.paths import ROOT


class Done(NamedTuple):
    """What a command came to, with the names that ``subprocess`` gives."""

    returncode: int
    stdout: str
    stderr: str


def process(*words, given=None):
    """A run as a keeper of scripts starts it."""
    done = subprocess.run(
        [sys.executable, "-m", "calculators", *words],
        cwd=ROOT, input=given, capture_output=True, text=True,
    )  # fmt: skip
    return Done(done.returncode, done.stdout, done.stderr)


def command(*words, given=None):
    """The same in this process; ``given`` is what standard input holds."""
    out, wrong, kept = io.StringIO(), io.StringIO(), sys.stdin
    sys.stdin = io.StringIO(given or "")
    try:
        with redirect_stdout(out), redirect_stderr(wrong):
            status = main(list(words))
    except SystemExit as end:  # argparse's own refusals
        status = end.code
    finally:
        sys.stdin = kept
    return Done(status, out.getvalue(), wrong.getvalue())
