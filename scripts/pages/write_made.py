"""Makes files from records, on all cores where they are many."""

from collections.abc import Callable, Mapping
from typing import TypeVar

from scripts.records.kept_files import KeptFiles
from scripts.setup.cores import known_or_made

Told = TypeVar("Told")
Makers = Mapping[str, Callable[[], str | bytes]]


def write_made(
    known: KeptFiles, makers: Makers, put: Callable[[str, bytes], Told]
) -> dict[str, Told]:
    """Have ``put`` write each file, made only where it has to be; by name what it tells of the file.

    ``known`` has the records and what is kept of the files. What has to be made is begun in the order of
    the makers.
    """

    def put_known(name: str) -> tuple[Told, str] | None:
        """Write a file that would be made the same. None where it has to be made."""
        octets = known.unchanged(name)
        return None if octets is None else (put(name, octets), known.reads.get(name))

    def put_made(name: str) -> tuple[Told, str]:
        """Make a file and write it; beside what is told of it, what it was made of."""
        told = put(name, known.made(name, makers[name]))
        return told, known.reads.get(name)

    results = known_or_made(put_known, put_made, list(makers))
    for name, (_, reads) in results.items():
        known.reads.put(name, reads)  # another process may have made it
    return {name: told for name, (told, _) in results.items()}
