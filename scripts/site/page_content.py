"""One page of the source from Markdown to HTML, with the settings of the site (``mkdocs.yml``).

A test holds what comes out to what the site builder makes of the same page, octet by octet.
"""

import json
import posixpath
from functools import cache
from importlib import import_module
from itertools import chain
from typing import Any, NamedTuple
from urllib.parse import urlsplit, urlunsplit
from xml.etree.ElementTree import Element

import markdown
import yaml
from markdown.extensions import Extension
from markdown.treeprocessors import Treeprocessor

from scripts.setup.kept import kept
from scripts.setup.one_kept_file import hash_of
from scripts.setup.paths import ROOT
from scripts.site.addresses import address_of, relative
from scripts.site.attributes import values_of
from scripts.site.ready_blocks import AFTER_FENCED_CODE, ReadyBlocks

KIND = "pages"
SETTINGS = ROOT / "mkdocs.yml"
BUILDERS_OWN: dict[str, dict[str, Any]] = {
    "toc": {},
    "tables": {},
    "fenced_code": {},
}  # extensions that it always loads


class Heading(NamedTuple):
    """A heading: 1 to 6, the name of its place, its words as HTML without tags, and those below it."""

    level: int
    place: str
    words: str
    below: "list[Heading]"


class PageLink(NamedTuple):
    """A link in a page's prose: as it is written, the source's file that it leads to, and the place in it.

    ``file`` is empty where the link counts from the root of the host, which nobody knows.
    """

    written: str
    file: str
    place: str


class PageContent(NamedTuple):
    """A page as HTML, without the frame around it."""

    html: str
    headings: list[Heading]
    links: list[PageLink]
    places: frozenset[str]  # names that a link can lead to


class Links(Treeprocessor):
    """Turns links to files of the source into links to their addresses, and remembers them.

    A link to a folder stays as it is written; the tests follow it.
    """

    def __init__(self, reader: markdown.Markdown, name: str) -> None:
        super().__init__(reader)
        self.name = name
        self.found: list[PageLink] = []

    def run(self, root: Element) -> None:
        """Change the links of a page in place."""
        for element in root.iter():
            key = {"a": "href", "img": "src"}.get(element.tag)
            link = element.get(key) if key else None
            if key and link:
                element.set(key, self.changed(link))

    def changed(self, link: str) -> str:
        """A link that leads to a file of the source, as an address; any other as it is."""
        parts = urlsplit(link)
        if parts.scheme or parts.netloc:
            return link
        if parts.path.startswith("/"):
            self.found.append(PageLink(link, "", parts.fragment))
            return link
        if not parts.path:
            self.found.append(PageLink(link, self.name, parts.fragment))
            return link
        file = posixpath.normpath(posixpath.join(posixpath.dirname(self.name), parts.path))
        if not posixpath.splitext(parts.path)[1]:
            return link
        self.found.append(PageLink(link, file, parts.fragment))
        target = address_of(file) if file.endswith(".md") else file
        return urlunsplit(
            ("", "", relative(target, address_of(self.name)), parts.query, parts.fragment)
        )


def front_and_body(text: str) -> tuple[str, str]:
    """A page's front matter, as YAML, and what follows it."""
    _, front, body = text.split("---\n", 2)
    return front, body


def page_content(name: str, text: str) -> PageContent:
    """The page of the source file ``name`` whose text is ``text``; made only where no build has made it."""
    ingredients = content_ingredients(name, hash_of(text))
    about, html = kept(KIND, ingredients, lambda: converted(name, text)).split("\n", 1)
    tokens, links, places = json.loads(about)
    linked = [PageLink(*link) for link in links]
    return PageContent(html, headings_of(tokens), linked, frozenset(places))


def content_ingredients(name: str, text_hash: str) -> str:
    """All that a page's content follows from, with a hash of its text."""
    return f"{settings_text()}\0{markdown.__version__}\0{name}\0{text_hash}"


def converted(name: str, text: str) -> str:
    """What is kept of a page: one line of JSON with the reader's headings, the links and the places, then the
    HTML.
    """
    reader, links = reader_of(name)
    html = reader.convert(front_and_body(text)[1])
    places = sorted(set(chain.from_iterable(values_of(key, html) for key in ("id", "name"))))
    return f"{json.dumps([getattr(reader, 'toc_tokens', []), links.found, places])}\n{html}"


def reader_of(name: str) -> tuple[markdown.Markdown, Links]:
    """What reads the page of a source file, and in it what notes the page's links."""
    reader = markdown.Markdown(extensions=[extension(*one) for one in extensions().items()])
    links = Links(reader, name)
    reader.treeprocessors.register(links, "links", 0)
    reader.preprocessors.register(ReadyBlocks(reader), "ready_blocks", AFTER_FENCED_CODE)
    return reader, links


def headings_of(tokens: list[dict[str, Any]]) -> list[Heading]:
    """The headings as the reader gives them."""
    return [
        Heading(token["level"], token["id"], token["name"], headings_of(token["children"]))
        for token in tokens
    ]


@cache
def settings_text() -> str:
    """The site's settings as they are written."""
    return SETTINGS.read_text(encoding="utf-8")


@cache
def settings() -> dict[str, Any]:
    """The site's settings."""
    loaded: dict[str, Any] = yaml.load(settings_text(), yaml.SafeLoader)
    return loaded


def extension(name: str, config: dict[str, Any]) -> Extension:
    """One of Markdown's own extensions. By its module: by its name alone Markdown reads the lists of all
    packages first.
    """
    made: Extension = import_module(f"markdown.extensions.{name}").makeExtension(**config)
    return made


@cache
def extensions() -> dict[str, dict[str, Any]]:
    """Markdown's extensions by name, with their settings."""
    known = dict(BUILDERS_OWN)
    for entry in settings()["markdown_extensions"]:
        known |= entry if isinstance(entry, dict) else {entry: {}}
    return known
