"""Writes the site's source: a copy of docs/ with the generated pages beside it."""

from collections.abc import Callable, Iterator

from scripts.pages.generated import makers
from scripts.pages.open_data.data_files import (
    PACKAGE,
    RESOURCES,
    open_data_makers,
    package_text,
)
from scripts.pages.search import entries, index
from scripts.records.kept_files import KeptFiles
from scripts.records.load import Library
from scripts.records.prose import read_prose
from scripts.setup.cores import known_or_made
from scripts.setup.file_hash import Octets
from scripts.setup.meanwhile import begun_elsewhere
from scripts.setup.new_folder import NewFolder
from scripts.setup.paths import DOCS

SEARCH = "assets/search.json"
LONG_TO_MAKE = (
    "assets/compare.json",
    "plants/growth.md",
    "problems/index.md",
    "nitrogen-model.md",
    *RESOURCES,
)
NOT_FOUND_BY_SEARCH = ("index.md", "search.md")


def write(known: KeptFiles, source: NewFolder) -> None:
    """Write the whole source of the site.

    ``known`` has the records and what is kept of the files. Raises ``FileExistsError`` where a page of ours
    stands where a generated one goes.
    """
    source.copy_all(DOCS, ("theme", "pictures", "guides"))
    files = source_makers(known.library)

    def put(name: str, octets: bytes) -> bytes:
        """Write a file; of a resource of the open data its description, of any other nothing."""
        if name not in RESOURCES:
            write_new(source, name, octets)
            return b""
        end = octets.rindex(b"\n")
        write_new(source, name, memoryview(octets)[:end])  # no copy: these are megabytes
        return octets[end + 1 :]

    def put_known(name: str) -> bytes | None:
        """Write a file that would be made the same, as ``put``. None where it has to be made."""
        octets = known.unchanged(name)
        return None if octets is None else put(name, octets)

    def put_made(name: str) -> bytes:
        """Make a file and write it, as ``put``."""
        return put(name, known.made(name, files[name]))

    known_data = {name: about for name in RESOURCES if (about := put_known(name)) is not None}
    names = [name for name in sorted(files, key=is_quick) if name not in known_data]
    made_elsewhere: Callable[[], dict[str, bytes]] = dict
    if known_data:  # else nothing is known, and all cores have enough to do
        data = [name for name in names if name in RESOURCES]
        names = [name for name in names if name not in RESOURCES]
        if data:
            made_elsewhere = begun_elsewhere(lambda: {name: put_made(name) for name in data})
    abouts = known_data | known_or_made(put_known, put_made, names) | made_elsewhere()
    package = package_text([abouts[name] for name in RESOURCES])
    write_new(source, PACKAGE, package.encode())


def source_makers(library: Library) -> dict[str, Callable[[], str | bytes]]:
    """What makes each file of the source, but the package of the open data, which describes its files."""
    search = {SEARCH: lambda: index(entries(library, dict(prose())))}
    return {**makers(library), **search, **open_data_makers(library)}


def write_new(source: NewFolder, name: str, octets: Octets) -> None:
    """Write a file that is not there. Raises ``FileExistsError`` where it is."""
    try:
        source.put(name, octets)
    except FileExistsError:
        raise FileExistsError(
            f"{name} is generated, and stands in docs/ too; rename it there"
        ) from None


def is_quick(name: str) -> bool:
    """Whether a file is made quickly, and is begun after those that are not."""
    return name not in LONG_TO_MAKE


def prose() -> Iterator[tuple[str, tuple[str, str]]]:
    """Address, title and description of each page that people wrote, and that search finds."""
    for name, page in read_prose()[0].items():
        if name not in NOT_FOUND_BY_SEARCH:
            yield f"{name.removesuffix('.md')}/", page
