"""Links that lead nowhere: to a file that is not there, to a place that no page has, or to a host's root."""

from collections.abc import Collection, Iterator, Mapping
from typing import NamedTuple

from scripts.site.page_content import PageContent, PageLink


class LinksOf(NamedTuple):
    """The links of a page's prose, and the places in it that others may link to."""

    links: list[PageLink]
    places: frozenset[str]


def links_of(content: PageContent) -> LinksOf:
    """What of a page's content the links of all pages are judged by."""
    return LinksOf(content.links, content.places)


def broken_links(pages: Mapping[str, LinksOf], files: Collection[str]) -> Iterator[str]:
    """A line for each link that leads nowhere. ``files`` are all files of the source but the pages."""
    for name, page in pages.items():
        for link in page.links:
            if not link.file:
                yield f"{name}: {link.written} counts from the root of the host, which may be any"
            elif link.file in pages:
                if link.place and link.place not in pages[link.file].places:
                    yield f"{name}: {link.written}: {link.file} has no place {link.place}"
            elif link.file not in files:
                yield f"{name}: {link.written}: there is no file {link.file}"
