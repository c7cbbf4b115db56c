"""Writes the site's source: a copy of docs/ with the generated pages beside it."""

import shutil
from collections import deque
from collections.abc import Iterator
from functools import partial
from pathlib import Path

from scripts.pages.generated import makers
from scripts.pages.open_data.data_files import open_data
from scripts.pages.search import entries, index
from scripts.records.load import Library
from scripts.records.prose import read_prose
from scripts.setup.cores import on_all_cores
from scripts.setup.paths import BUILD, DOCS

SOURCE = BUILD / "docs"
SEARCH = "assets/search.json"
LONG_TO_MAKE = ("problems/index.md", "nitrogen-model.md", "assets/compare.json", "plants/growth.md")
NOT_FOUND_BY_SEARCH = ("index.md", "search.md")


def write(library: Library, target: Path = SOURCE) -> None:
    """Write the whole source of the site to ``target``; what was there is removed first.

    Raises ``FileExistsError`` where a page of ours stands where a generated one goes.
    """
    shutil.rmtree(target, ignore_errors=True)
    shutil.copytree(DOCS, target, ignore=shutil.ignore_patterns("theme", "pictures", "guides"))
    files = makers(library) | {SEARCH: lambda: index(entries(library, dict(prose())))}
    for name, text in open_data(library).items():
        files[name] = partial(str, text)
    for name in files:
        if (target / name).exists():
            raise FileExistsError(f"docs/{name} stands where a generated file goes; rename it")
        (target / name).parent.mkdir(parents=True, exist_ok=True)

    def write_one(name: str) -> None:
        (target / name).write_text(files[name](), encoding="utf-8")

    deque(on_all_cores(write_one, sorted(files, key=is_quick)), maxlen=0)


def is_quick(name: str) -> bool:
    """Whether a file is made quickly, and is begun after those that are not."""
    return name not in LONG_TO_MAKE


def prose() -> Iterator[tuple[str, tuple[str, str]]]:
    """Address, title and description of each page that people wrote, and that search finds."""
    for name, page in read_prose()[0].items():
        if name not in NOT_FOUND_BY_SEARCH:
            yield f"{name.removesuffix('.md')}/", page
