"""One page from Markdown to HTML without the site builder, for the watching server alone.

The same content and the same theme as the builder's; a test holds every page of a build against it, octet
by octet.
"""

from types import SimpleNamespace
from typing import Any

import yaml
from jinja2 import Environment, FileSystemLoader, pass_context
from jinja2.runtime import Context

from scripts.setup.paths import ROOT
from scripts.site.addresses import address_of, relative
from scripts.site.joined_scripts import graph_of, joined
from scripts.site.page_content import (
    Heading,
    extensions,
    front_and_body,
    page_content,
    settings,
)
from scripts.site.preload import with_preloads
from scripts.site.theme import theme_templates

NOTHING_EXTRA: dict[str, Any] = {"extra": {}, "extra_css": []}


class Renderer:
    """Fills the theme with pages. Templates of the theme are read again when they change."""

    def __init__(self) -> None:
        self.graph = graph_of(joined())  # of the scripts as they are served
        self.theme = Environment(
            loader=FileSystemLoader([ROOT / settings()["theme"]["custom_dir"], theme_templates()])
        )
        self.theme.filters["url"] = url
        self.theme.filters["script_tag"] = str  # named by the theme; no page has such a script

    def html(self, name: str, text: str) -> str:
        """The page of the source file ``name`` whose text is ``text``."""
        meta = yaml.load(front_and_body(text)[0], yaml.SafeLoader)
        content = page_content(name, text)
        page = SimpleNamespace(
            title=meta["title"],
            meta=meta,
            content=content.html,
            url=address_of(name),
            toc=contents(content.headings),
        )
        filled = self.theme.get_template("main.html").render(
            page=page,
            config=SimpleNamespace(**NOTHING_EXTRA, mdx_configs=extensions(), **settings()),
        )
        return with_preloads(filled, self.graph)


def contents(headings: list[Heading]) -> list[SimpleNamespace]:
    """The headings of a page as the theme's list of contents asks for them."""
    return [
        SimpleNamespace(
            title=heading.words,
            level=heading.level,
            url=f"#{heading.place}",
            children=contents(heading.below),
        )
        for heading in headings
    ]


@pass_context
def url(context: Context, value: str) -> str:
    """The theme's filter: an address below the root as a link from the page that is being made."""
    return value if value.startswith("#") else relative(value, context["page"].url)
