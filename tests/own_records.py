"""The project's own records, read once a process, whichever tests look at them."""

from functools import cache

from scripts.records.load import Library, load


@cache
def own_records() -> Library:
    """The library; not to be changed. A test that spoils records reads a copy of its own."""
    return load()
