"""What the two commands tell the person at the terminal."""

import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager


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


def stop(text: str) -> None:
    """Say in one line why it cannot go on, and end."""
    print(f"stopped: {text}", file=sys.stderr, flush=True)
    raise SystemExit(1)
