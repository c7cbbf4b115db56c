"""The pages as the site builder gets them: their headings alone, what stands below them being ready.

Markdown is most of what a site of a thousand pages takes. So every page is read here, on all cores and only
where it has changed; the builder sets a page's headings into the theme's frame, and the content is put in
their place afterwards. Its memory does not grow with the content either.
"""

import re
import shutil
from functools import partial
from pathlib import Path

from scripts.setup.cores import on_all_cores
from scripts.setup.paths import BUILD, DOCS
from scripts.site.addresses import address_of
from scripts.site.joined_scripts import Graph
from scripts.site.page_content import (
    SETTINGS,
    Heading,
    front_and_body,
    page_content,
    settings,
)
from scripts.site.page_links import LinksOf, links_of
from scripts.site.preload import with_preloads
from scripts.site.theme import classes_in

HEADINGS = BUILD / "headings"
BUILDERS_SETTINGS = BUILD / "mkdocs.yml"
BEGIN, END = "<!--content-->", "<!--/content-->"
SAYS_SOMETHING = re.compile(r"([\\`*_{}\[\]()+.!-]|(?<!&)#)")  # to Markdown


def write_headings(source: Path) -> dict[str, LinksOf]:
    """Write what the builder gets, from the pages of ``source``; by page, what they link to."""
    shutil.rmtree(HEADINGS, ignore_errors=True)
    names = page_names(source)
    for name in names:
        (HEADINGS / name).parent.mkdir(parents=True, exist_ok=True)
    BUILDERS_SETTINGS.write_text(
        f"INHERIT: ../{SETTINGS.name}\ndocs_dir: {HEADINGS.name}\n"
        f"theme:\n  custom_dir: ../{DOCS.name}/theme\n",
        encoding="utf-8",
    )
    return dict(zip(names, on_all_cores(partial(write_one, source), names), strict=True))


def write_one(source: Path, name: str) -> LinksOf:
    """Write the headings of one page; what it links to."""
    text = (source / name).read_text(encoding="utf-8")
    content = page_content(name, text)
    front, _ = front_and_body(text)
    (HEADINGS / name).write_text(
        f"---\n{front}---\n{BEGIN}\n\n{heading_lines(content.headings)}\n{END}\n", encoding="utf-8"
    )
    return links_of(content)


def heading_lines(headings: list[Heading]) -> str:
    """The headings as Markdown that means their words and nothing else."""
    return "".join(
        f"{'#' * heading.level} {plain(heading.words)} {{: #{heading.place} }}\n\n"
        + heading_lines(heading.below)
        for heading in headings
    )


def plain(words: str) -> str:
    """Words in which Markdown sees no mark of its own."""
    return SAYS_SOMETHING.sub(r"\\\1", words)


def put_contents(source: Path, site: Path, graph: Graph) -> set[str]:
    """Put the content into every page of the built site, and in its head the scripts that it loads.

    The classes that stand in the pages. Raises ``ValueError`` where a page has no place for its content.
    """
    classes: set[str] = set()
    for used in on_all_cores(partial(put_one, source, site, graph), page_names(source)):
        classes |= used
    for name in settings()["theme"]["static_templates"]:
        classes |= finish(site / name, (site / name).read_text(encoding="utf-8"), graph)
    return classes


def put_one(source: Path, site: Path, graph: Graph, name: str) -> set[str]:
    """Put the content of one page between its marks; the classes that stand in it.

    Raises ``ValueError`` where the marks are not there.
    """
    path = site / address_of(name) / "index.html"
    before, begin, rest = path.read_text(encoding="utf-8").partition(BEGIN)
    _, end, after = rest.partition(END)
    if not begin or not end:
        raise ValueError(f"{name}: the site builder left no place for the content")
    content = page_content(name, (source / name).read_text(encoding="utf-8"))
    return finish(path, before + content.html + after, graph)


def finish(path: Path, html: str, graph: Graph) -> set[str]:
    """Write a page with the scripts that it loads named in its head; the classes that stand in it."""
    path.write_text(with_preloads(html, graph), encoding="utf-8")
    return classes_in(html)


def page_names(source: Path) -> list[str]:
    """The pages of the source by their files' names."""
    return sorted(path.relative_to(source).as_posix() for path in source.rglob("*.md"))
