"""Names in each page the files that its scripts load, so that the browser fetches them side by side.

Without this a browser learns of a file only once it has read the one that loads it, one after another.
The bundler says which file loads which, ``page-parts.js`` which part is loaded for which place, ``page.js``
what every page loads.
"""

import re

from scripts.site.attributes import values_of
from scripts.site.joined_scripts import SOURCES, Graph

ENTRY, PARTS = "page.js", "page-parts.js"
SCRIPT = re.compile(r'<script type="module" src="([^"]*)assets/page\.js"></script>\n')
PART = re.compile(r'"#([\w-]+)": \(\) => import\("\./([^"]+)"\)')
ON_EVERY_PAGE = re.compile(r'^  \(await import\("\./([^"]+)"\)\)', re.MULTILINE)


def with_preloads(html: str, graph: Graph) -> str:
    """The page with a line for each file that it will load; as it is where it loads none of ours."""
    found = SCRIPT.search(html)
    if not found:
        return html
    names = files_for(frozenset(values_of("id", html)), graph)
    lines = "".join(
        f'<link rel="modulepreload" href="{found[1]}assets/{name}">\n' for name in names
    )
    return html[: found.start()] + lines + html[found.start() :]


def files_for(places: frozenset[str], graph: Graph) -> list[str]:
    """The served files of a page with these places, without the entry."""
    entry, by_place = texts_read()
    parts = [module for place, module in PART.findall(by_place) if place in places]
    needed = graph.closure([*parts, *ON_EVERY_PAGE.findall(entry)])
    return [name for name in needed if name != graph.modules[ENTRY]]


def texts_read() -> tuple[str, str]:
    """The scripts that say what a page loads: on every page, and by place."""
    entry, parts = ((SOURCES / name).read_text(encoding="utf-8") for name in (ENTRY, PARTS))
    return entry, parts
