"""Makes the tables from the records: before any calculator that reads them is imported."""

from collections.abc import Callable, Mapping
from functools import partial
from pathlib import Path
from typing import Any

from calculators.core.data import tables_read
from scripts.records.checks.all import record_faults
from scripts.records.load import BadRecords, Library, read_records
from scripts.setup import paths
from scripts.tables.registry import MAKERS
from scripts.tables.text import is_ours, table_text


class TablesInUse(Exception):
    """Tables changed that this process has read already, so that it would go on with the old ones."""


def make_tables(species: Path = paths.SPECIES, target: Path = paths.TABLES) -> list[str]:
    """Write the tables that differ from what the records say; the names of those written.

    Raises ``BadRecords`` where the records do not hold, with nothing written, and ``TablesInUse``.
    """
    reading = read_records(species)
    faults = [*reading.faults, *record_faults(reading)]
    if faults:
        raise BadRecords(faults)
    made = {name: make() for name, make in texts_of_tables(reading.library).items()}
    return write_tables(made, target)


def texts_of_tables(library: Library) -> dict[str, Callable[[], str]]:
    """What makes the text of each table, by its file's name, from records that hold and fit together."""
    return {f"{name}.json": partial(text_of, make, library) for name, make in MAKERS.items()}


def text_of(make: Callable[[Library], dict[str, Any]], library: Library) -> str:
    """The text of one table."""
    return table_text(make(library))


def write_tables(texts: Mapping[str, str], target: Path = paths.TABLES) -> list[str]:
    """Write the tables that differ from these texts; the names of those written.

    Raises ``TablesInUse`` where a table changed that was read already.
    """
    target.mkdir(parents=True, exist_ok=True)
    changed = [name for name, text in texts.items() if text_on_disk(target / name) != text]
    for name in changed:
        fresh = target / f"{name}.new"  # a run that is stopped leaves the old table or the new one
        fresh.write_text(texts[name], encoding="utf-8", newline="\n")
        fresh.replace(target / name)
    for path in target.glob("*.json"):
        if path.name not in texts and is_ours(text_on_disk(path)):
            path.unlink()  # a table that there was once
    written = [name.removesuffix(".json") for name in changed]
    if target == paths.TABLES and (in_use := tables_read() & set(written)):
        names = ", ".join(sorted(in_use))
        raise TablesInUse(f"the tables {names} were made anew; run the command again.")
    return written


def text_on_disk(path: Path) -> str | None:
    """The text of a table as it is, None where there is none that can be read."""
    try:
        return path.read_bytes().decode("utf-8")
    except (OSError, UnicodeDecodeError):
        return None
