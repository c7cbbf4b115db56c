"""How often Python looks for what nobody needs any more."""

import gc
from collections.abc import Iterator
from contextlib import contextmanager

# After so many new objects Python looks for rubbish, after so many looks among older ones; else 700, 10, 10.
SELDOM = 10_000, 20, 100


@contextmanager
def rubbish_seldom_sought() -> Iterator[None]:
    """Have Python look for rubbish seldom: a look goes through all that a build holds, for little."""
    before = gc.get_threshold()
    gc.set_threshold(*SELDOM)
    try:
        yield
    finally:
        gc.set_threshold(*before)


@contextmanager
def rubbish_left() -> Iterator[None]:
    """Have Python look for no rubbish, for work that is short and leaves little: the looks alone would be a
    twentieth of it.
    """
    gc.disable()
    try:
        yield
    finally:
        gc.enable()


@contextmanager
def nothing_sought_in_copies() -> Iterator[None]:
    """Have no copy that is forked meanwhile seek in what is there now: each memory page would be its own."""
    gc.freeze()
    try:
        yield
    finally:
        gc.unfreeze()
