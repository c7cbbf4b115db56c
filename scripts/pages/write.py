"""Writes the site's source: a copy of docs/ with the generated pages beside it."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import yaml

from scripts.pages.generated import generated
from scripts.pages.search import entries, index
from scripts.records.load import Library
from scripts.setup.paths import BUILD, ROOT

DOCS = ROOT / "docs"
SOURCE = BUILD / "docs"
NOT_FOUND_BY_SEARCH = ("index.md", "search.md")


def write(library: Library, target: Path = SOURCE) -> None:
    """Write the whole source of the site to ``target``; what was there is removed first."""
    shutil.rmtree(target, ignore_errors=True)
    shutil.copytree(DOCS, target, ignore=shutil.ignore_patterns("theme", "pictures", "guides"))
    files = generated(library)
    files["assets/search.json"] = index(entries(library, dict(prose())))
    for name, text in files.items():
        path = target / name
        if path.exists():
            raise FileExistsError(f"docs/{name} stands where a generated file goes; rename it")
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")


def prose() -> Iterator[tuple[str, tuple[str, str]]]:
    """Address, title and description of each page that people wrote."""
    for path in sorted(DOCS.glob("**/*.md")):
        name = path.relative_to(DOCS).as_posix()
        if name in NOT_FOUND_BY_SEARCH or name.startswith(("theme/", "guides/")):
            continue
        front = front_matter(path)
        yield f"{name.removesuffix('.md')}/", (front["title"], front["description"])


def front_matter(path: Path) -> dict[str, str]:
    """The front matter of a page, which must have a title and a description."""
    parts = path.read_text(encoding="utf-8").split("---\n", 2)
    front = yaml.safe_load(parts[1]) if len(parts) == 3 and not parts[0] else {}
    if not {"title", "description"} <= front.keys():
        raise ValueError(f"{path.relative_to(ROOT)}: needs title and description in front matter")
    return front
