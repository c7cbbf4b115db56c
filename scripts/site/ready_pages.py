"""The pages as the site builder gets them: their headings alone, what stands below them being ready.

Markdown is most of what a site of a thousand pages takes. So every page is read here, on all cores and only
where it has changed; the builder sets a page's headings into the theme's frame, and the content is put in
their place afterwards. Its memory does not grow with the content either.
"""

import os
import re
from collections.abc import Iterable
from functools import partial
from pathlib import Path
from typing import Any, NamedTuple

from scripts.setup.cores import known_or_made
from scripts.setup.file_hash import digest_of, names_below
from scripts.setup.kept import keep, recall_octets
from scripts.setup.new_folder import NewFolder
from scripts.setup.one_kept_file import KeptTogether, hash_of
from scripts.site.addresses import address_of
from scripts.site.frames import BEGIN, END, Frames
from scripts.site.joined_scripts import Graph
from scripts.site.page_content import (
    Heading,
    PageLink,
    content_ingredients,
    front_and_body,
    page_content,
    settings,
)
from scripts.site.page_links import LinksOf, links_of
from scripts.site.preload import texts_read, with_preloads
from scripts.site.theme import classes_in

READ = "read-pages"  # the kind of what is kept of all pages together
WHOLE = "whole-pages"  # the kind of a page that is kept as it goes into the site
SAYS_SOMETHING = re.compile(r"([\\`*_{}\[\]()+.!-]|(?<!&)#)")  # to Markdown


class ReadyPage(NamedTuple):
    """What the site is made of beside the content: a page's links, what the builder gets of it, and a hash of
    all that its content follows from.
    """

    links: LinksOf
    headings: str
    made_of: str


class PagesOfSource:
    """The pages of a source. Those that an earlier build has read can be taken before all stand there."""

    def __init__(self, source: Path) -> None:
        self.source = source
        self.known = KeptTogether(READ, str(source))
        self.ahead: dict[str, ReadyPage] = {}

    def take_known(self, names: Iterable[str]) -> None:
        """Take those of some files that stand there already, and stay as they are."""
        for name in names:
            if is_page(name) and (page := self.known_one(name)):
                self.ahead[name] = page

    def read(self) -> dict[str, ReadyPage]:
        """Every page by its file's name, now that all stand there."""
        names = page_names(self.source)
        pages = known_or_made(self.known_one, partial(read_one, self.source), names)
        for page in pages.values():
            if self.known.get(page.made_of) is None:
                self.known.put(page.made_of, as_kept(page))
        self.known.keep()
        return pages

    def known_one(self, name: str) -> ReadyPage | None:
        """One page, where this or an earlier build has read it."""
        if name in self.ahead:
            return self.ahead[name]
        made_of = ingredients_hash(self.source, name)
        found = self.known.get(made_of)
        return found and from_kept(found, made_of)


def read_one(source: Path, name: str) -> ReadyPage:
    """Read one page."""
    text = text_of(source, name)
    content = page_content(name, text)
    front, _ = front_and_body(text)
    headings = f"---\n{front}---\n{BEGIN}\n\n{heading_lines(content.headings)}\n{END}\n"
    return ReadyPage(links_of(content), headings, ingredients_hash(source, name))


def ingredients_hash(source: Path, name: str) -> str:
    """A hash of all that a page's content follows from; the page itself is mostly known, and not read."""
    written = digest_of(f"{source}{os.sep}{name}", just_made=True)
    return hash_of(content_ingredients(name, written.hex()))


def as_kept(page: ReadyPage) -> list[Any]:
    """A page in plain values."""
    return [[tuple(link) for link in page.links.links], page.links.places, page.headings]


def from_kept(kept: list[Any], made_of: str) -> ReadyPage:
    """The page that was kept so."""
    links, places, headings = kept
    return ReadyPage(LinksOf([PageLink(*link) for link in links], places), headings, made_of)


def text_of(source: Path, name: str) -> str:
    """A page as it stands in the source."""
    with open(f"{source}{os.sep}{name}", encoding="utf-8") as file:
        return file.read()


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


class PageMaker:
    """Makes the pages of a site: of each its frame, the content, and in its head the scripts it loads."""

    def __init__(
        self,
        source: Path,
        site: NewFolder,
        graph: Graph,
        frames: Frames,
        pages: dict[str, ReadyPage],
    ) -> None:
        self.source, self.site, self.graph, self.frames = source, site, graph, frames
        self.pages = pages
        self.scripts = hash_of(str(graph), *texts_read())

    def put_known(self, name: str) -> set[str] | None:
        """Write one page as it is kept; the classes that stand in it. None where it is not kept."""
        page = recall_octets(WHOLE, self.ingredients(name))
        return None if page is None else self.write(name, page)

    def put(self, name: str) -> set[str]:
        """Make and write one page; the classes that stand in it."""
        content = page_content(name, text_of(self.source, name))
        page = self.finished(self.frames.filled(name, content.html))
        keep(WHOLE, self.ingredients(name), page)
        return self.write(name, page.encode())

    def write(self, name: str, page: bytes) -> set[str]:
        """Write a page that stands behind a line of its classes; the classes."""
        classes, html = page.split(b"\n", 1)
        self.site.put(f"{address_of(name)}index.html", html)
        return set(classes.decode().split())

    def ingredients(self, name: str) -> str:
        """All that a page follows from."""
        return f"{self.scripts}\0{self.frames.ingredients(name)}\0{self.pages[name].made_of}"

    def finished(self, html: str) -> str:
        """One line with the classes that stand in a page, then the page with its scripts."""
        return f"{' '.join(sorted(classes_in(html)))}\n{with_preloads(html, self.graph)}"


def put_contents(
    source: Path, site: NewFolder, graph: Graph, frames: Frames, pages: dict[str, ReadyPage]
) -> set[str]:
    """Write every page of the site; the classes that stand in them."""
    maker = PageMaker(source, site, graph, frames, pages)
    classes = set().union(*known_or_made(maker.put_known, maker.put, list(pages)).values())
    for name in settings()["theme"]["static_templates"]:
        path = site.path / name
        used_there, html = maker.finished(path.read_text(encoding="utf-8")).split("\n", 1)
        path.write_text(html, encoding="utf-8")
        classes.update(used_there.split())
    return classes


def page_names(source: Path) -> list[str]:
    """The pages of the source by their files' names."""
    return sorted(filter(is_page, names_below(source)))


def is_page(name: str) -> bool:
    """Whether a file of the source is a page."""
    return name.endswith(".md")
