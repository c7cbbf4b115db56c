"""Writes the site's source: a copy of docs/ with the generated pages beside it."""

import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

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
from scripts.setup.file_hash import copy_known, write_known
from scripts.setup.paths import DOCS, SOURCE

SEARCH = "assets/search.json"
LONG_TO_MAKE = (
    "assets/compare.json",
    "plants/growth.md",
    "problems/index.md",
    "nitrogen-model.md",
    *RESOURCES,
)
NOT_FOUND_BY_SEARCH = ("index.md", "search.md")


def write(known: KeptFiles, target: Path = SOURCE) -> None:
    """Write the whole source of the site to ``target``; what was there is removed first.

    ``known`` has the records and what is kept of the files. Raises ``FileExistsError`` where a page of ours
    stands where a generated one goes.
    """
    shutil.rmtree(target, ignore_errors=True)
    ignored = shutil.ignore_patterns("theme", "pictures", "guides")
    shutil.copytree(DOCS, target, ignore=ignored, copy_function=copy_known)
    files = source_makers(known.library)

    def put(name: str, octets: bytes) -> bytes:
        """Write a file; of a resource of the open data its description, of any other nothing."""
        about = b""
        if name in RESOURCES:
            octets, about = octets.rsplit(b"\n", 1)
        write_new(target / name, octets)
        return about

    def put_known(name: str) -> bytes | None:
        """Write a file that would be made the same, as ``put``. None where it has to be made."""
        octets = known.unchanged(name)
        return None if octets is None else put(name, octets)

    def put_made(name: str) -> bytes:
        """Make a file and write it, as ``put``."""
        return put(name, known.made(name, files[name]))

    resources = known_or_made(put_known, put_made, sorted(files, key=is_quick))
    package = package_text([resources[name] for name in RESOURCES])
    write_new(target / PACKAGE, package.encode())


def source_makers(library: Library) -> dict[str, Callable[[], str | bytes]]:
    """What makes each file of the source, but the package of the open data, which describes its files."""
    search = {SEARCH: lambda: index(entries(library, dict(prose())))}
    return {**makers(library), **search, **open_data_makers(library)}


def write_new(path: Path, octets: bytes) -> None:
    """Write a file that is not there. Raises ``FileExistsError`` where it is."""
    path.parent.mkdir(parents=True, exist_ok=True)
    try:
        write_known(path, octets, "xb")
    except FileExistsError:
        raise FileExistsError(
            f"{path.relative_to(path.parents[1])} is generated, and stands in docs/ too; rename it there"
        ) from None


def is_quick(name: str) -> bool:
    """Whether a file is made quickly, and is begun after those that are not."""
    return name not in LONG_TO_MAKE


def prose() -> Iterator[tuple[str, tuple[str, str]]]:
    """Address, title and description of each page that people wrote, and that search finds."""
    for name, page in read_prose()[0].items():
        if name not in NOT_FOUND_BY_SEARCH:
            yield f"{name.removesuffix('.md')}/", page
