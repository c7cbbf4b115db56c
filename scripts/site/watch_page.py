"""One page from Markdown to HTML without the site builder, for the watching server alone.

The same Markdown settings (``mkdocs.yml``) and the same theme as the builder's; a test holds every
page of a build against it, octet by octet.
"""

import posixpath
from collections.abc import Collection
from types import SimpleNamespace
from typing import Any
from urllib.parse import urlsplit, urlunsplit
from xml.etree.ElementTree import Element

import markdown
import yaml
from jinja2 import Environment, FileSystemLoader, pass_context
from jinja2.runtime import Context
from markdown.treeprocessors import Treeprocessor

from scripts.setup.paths import ROOT
from scripts.site.joined_scripts import graph_of, joined
from scripts.site.preload import with_preloads
from scripts.site.theme import theme_templates

BUILDERS_OWN: dict[str, dict[str, Any]] = {
    "toc": {},
    "tables": {},
    "fenced_code": {},
}  # extensions that it always loads

NOTHING_EXTRA: dict[str, Any] = {"extra": {}, "extra_css": []}


def address_of(name: str) -> str:
    """The address of a page of the source, below the site's root: ``plants/index.md`` is ``plants/``."""
    stem = name.removesuffix(".md")
    return (
        f"{stem}/".removesuffix("index/")
        if stem == "index" or stem.endswith("/index")
        else f"{stem}/"
    )


def relative(target: str, page: str) -> str:
    """The link from a page's address to another address, both below the site's root."""
    base = [part for part in page.split("/")[:-1] if part]
    parts = [part for part in posixpath.normpath(target or ".").split("/") if part != "."]
    common = 0
    while common < min(len(base), len(parts)) and base[common] == parts[common]:
        common += 1
    link = "/".join([".."] * (len(base) - common) + parts[common:]) or "."
    return f"{link}/" if target.endswith("/") else link


class Links(Treeprocessor):
    """Turns links to files of the source into links to their addresses."""

    name = ""
    known: Collection[str] = ()

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
        file = posixpath.normpath(posixpath.join(posixpath.dirname(self.name), parts.path))
        if parts.scheme or parts.netloc or not parts.path or file not in self.known:
            return link
        target = address_of(file) if file.endswith(".md") else file
        return urlunsplit(
            ("", "", relative(target, address_of(self.name)), parts.query, parts.fragment)
        )


class Renderer:
    """Fills the theme with pages. Templates of the theme are read again when they change."""

    def __init__(self) -> None:
        self.graph = graph_of(joined())  # of the scripts as they are served
        self.settings = yaml.load(
            (ROOT / "mkdocs.yml").read_text(encoding="utf-8"), yaml.SafeLoader
        )
        self.theme = Environment(
            loader=FileSystemLoader(
                [ROOT / self.settings["theme"]["custom_dir"], theme_templates()]
            )
        )
        self.theme.filters["url"] = url
        self.theme.filters["script_tag"] = str  # named by the theme; no page has such a script
        self.extensions = dict(BUILDERS_OWN)
        for entry in self.settings["markdown_extensions"]:
            self.extensions |= entry if isinstance(entry, dict) else {entry: {}}

    def html(self, name: str, text: str, known: Collection[str]) -> str:
        """The page of the source file ``name`` whose text is ``text``; ``known`` are all source files."""
        _, front, body = text.split("---\n", 2)
        meta = yaml.load(front, yaml.SafeLoader)
        reader = markdown.Markdown(
            extensions=list(self.extensions), extension_configs=self.extensions
        )
        links = Links(reader)
        links.name, links.known = name, known
        reader.treeprocessors.register(links, "links", 0)
        page = SimpleNamespace(
            title=meta["title"],
            meta=meta,
            content=reader.convert(body),
            url=address_of(name),
            toc=contents(getattr(reader, "toc_tokens", [])),
        )
        filled = self.theme.get_template("main.html").render(
            page=page,
            config=SimpleNamespace(**NOTHING_EXTRA, mdx_configs=self.extensions, **self.settings),
        )
        return with_preloads(filled, self.graph)


def contents(tokens: list[dict[str, Any]]) -> list[SimpleNamespace]:
    """The headings of a page as the theme's list of contents asks for them."""
    return [
        SimpleNamespace(
            title=one["name"],
            level=one["level"],
            url=f"#{one['id']}",
            children=contents(one["children"]),
        )
        for one in tokens
    ]


@pass_context
def url(context: Context, value: str) -> str:
    """The theme's filter: an address below the root as a link from the page that is being made."""
    return value if value.startswith("#") else relative(value, context["page"].url)
