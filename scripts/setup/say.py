"""What the two commands tell the person at the terminal."""

import io
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from typing import NoReturn


class Missing(Exception):
    """Something the machine lacks; the message says what, and how to get it, in one line."""


def say(text: str) -> None:
    """Print a line at once, even into a pipe."""
    print(text, flush=True)


@contextmanager
def step(text: str) -> Iterator[None]:
    """Announce a step, and how long it took when it ends."""
    say(f"· {text} …")
    start = time.monotonic()
    yield
    say(f"  done in {time.monotonic() - start:.1f} s")


def stop(text: str, status: int = 1) -> NoReturn:
    """Say in one line why it cannot go on, and end. Raises ``SystemExit``."""
    print(f"stopped: {text}", file=sys.stderr, flush=True)
    raise SystemExit(status)


def write_what_the_terminal_cannot() -> None:
    """Let letters that a terminal's encoding lacks come out as marks, and stop nothing."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")
