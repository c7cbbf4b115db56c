"""Writes the site's source: a copy of docs/ with the generated pages beside it."""

import shutil
from collections.abc import Iterator
from pathlib import Path

from scripts.pages.generated import generated
from scripts.pages.open_data.data_files import open_data
from scripts.pages.search import entries, index
from scripts.records.load import Library
from scripts.records.prose import read_prose
from scripts.setup.paths import BUILD, DOCS

SOURCE = BUILD / "docs"
NOT_FOUND_BY_SEARCH = ("index.md", "search.md")


def write(library: Library, target: Path = SOURCE) -> None:
    """Write the whole source of the site to ``target``; what was there is removed first.

    Raises ``FileExistsError`` where a page of ours stands where a generated one goes.
    """
    shutil.rmtree(target, ignore_errors=True)
    shutil.copytree(DOCS, target, ignore=shutil.ignore_patterns("theme", "pictures", "guides"))
    files = generated(library)
    files |= open_data(library)
    files["assets/search.json"] = index(entries(library, dict(prose())))
    for name, text in files.items():
        path = target / name
        if path.exists():
            raise FileExistsError(f"docs/{name} stands where a generated file goes; rename it")
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")


def prose() -> Iterator[tuple[str, tuple[str, str]]]:
    """Address, title and description of each page that people wrote, and that search finds."""
    for name, page in read_prose()[0].items():
        if name not in NOT_FOUND_BY_SEARCH:
            yield f"{name.removesuffix('.md')}/", page
