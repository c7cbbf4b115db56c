"""Writes the site's source: a copy of docs/ with the generated pages beside it."""

import shutil
from collections.abc import Iterator
from pathlib import Path

from scripts.pages.generated import makers
from scripts.pages.open_data.data_files import FOLDER as OPEN_DATA
from scripts.pages.open_data.data_files import open_data
from scripts.pages.search import entries, index
from scripts.records.load import Library
from scripts.records.prose import read_prose
from scripts.setup.cores import on_all_cores
from scripts.setup.paths import DOCS, SOURCE

SEARCH = "assets/search.json"
LONG_TO_MAKE = (
    "assets/compare.json",
    "plants/growth.md",
    "problems/index.md",
    "nitrogen-model.md",
    OPEN_DATA,
)
NOT_FOUND_BY_SEARCH = ("index.md", "search.md")


def write(library: Library, target: Path = SOURCE) -> None:
    """Write the whole source of the site to ``target``; what was there is removed first.

    Raises ``FileExistsError`` where a page of ours stands where a generated one goes.
    """
    shutil.rmtree(target, ignore_errors=True)
    shutil.copytree(DOCS, target, ignore=shutil.ignore_patterns("theme", "pictures", "guides"))
    files = makers(library) | {SEARCH: lambda: index(entries(library, dict(prose())))}

    def make(name: str) -> None:
        if name == OPEN_DATA:
            for path, text in open_data(library):
                write_new(target / path, text)
        else:
            write_new(target / name, files[name]())

    for _ in on_all_cores(make, sorted([OPEN_DATA, *files], key=is_quick)):
        pass


def write_new(path: Path, text: str) -> None:
    """Write a file that is not there. Raises ``FileExistsError`` where it is."""
    path.parent.mkdir(parents=True, exist_ok=True)
    try:
        with path.open("x", encoding="utf-8") as file:
            file.write(text)
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
