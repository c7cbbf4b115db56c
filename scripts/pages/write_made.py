"""Writes files of the site's source that are made from records, each made only where it has to be."""

from collections.abc import Callable, Mapping
from typing import TypeVar

from scripts.records.kept_files import KeptFiles
from scripts.setup.cores import known_or_made
from scripts.setup.file_hash import Octets
from scripts.setup.new_folder import NewFolder

Told = TypeVar("Told")


def write_made(
    known: KeptFiles,
    makers: Mapping[str, Callable[[], str | bytes]],
    put: Callable[[str, bytes], Told],
) -> dict[str, Told]:
    """Have ``put`` write each file, begun in the order of the makers; by name what it tells of the file,
    which is never None.

    ``known`` has the records and what is kept of the files.
    """

    def put_known(name: str) -> Told | None:
        """Write a file that would be made the same. None where it has to be made."""
        octets = known.unchanged(name)
        return None if octets is None else put(name, octets)

    def put_made(name: str) -> Told:
        """Make a file and write it."""
        return put(name, known.made(name, makers[name]))

    return known_or_made(put_known, put_made, list(makers))


def write_new(source: NewFolder, name: str, octets: Octets) -> str:
    """Write a file that is not there; its name. Raises ``FileExistsError`` where it is."""
    try:
        source.put(name, octets)
        return name
    except FileExistsError:
        raise FileExistsError(
            f"{name} is generated, and stands in docs/ too; rename it there"
        ) from None
