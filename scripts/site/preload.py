"""Names in each page the modules that its scripts load, so that the browser fetches them side by side.

Without this a browser learns of a module only once it has read the one that imports it, one after another.
The graph is read from the modules themselves; ``page.js`` says which part is loaded for which place. What a
module imports while it runs, in a line that ends in ``// soon``, stands in one line of its own:
``shelf/shelf-start.js`` fetches it once the page shows what it can show without it.
"""

import posixpath
import re
from functools import cache
from pathlib import Path

from scripts.setup.paths import DOCS

ENTRY = "page.js"
SCRIPT = re.compile(r'<script type="module" src="([^"]*)assets/page\.js"></script>\n')
IMPORT = re.compile(r'^(?:import|export)\b[^"\n]*"(\.{1,2}/[^"]+)";', re.MULTILINE)
SOON = re.compile(r"^.*// soon$", re.MULTILINE)
IN_CALL = re.compile(r'import\("(\.{1,2}/[^"]+)"\)')
PART = re.compile(r'"#([\w-]+)": \(\) => import\("\./([^"]+)"\)')
ON_EVERY_PAGE = re.compile(r'^  \(await import\("\./([^"]+)"\)\)', re.MULTILINE)
PLACE = re.compile(r'\bid="([\w-]+)"')


def with_preloads(html: str, assets: Path = DOCS / "assets") -> str:
    """The page with a line for each module that it will load; as it is where it loads none of ours."""
    found = SCRIPT.search(html)
    if not found:
        return html
    root = found[1]
    first, soon = modules_for(frozenset(PLACE.findall(html)), assets)
    lines = "".join(f'<link rel="modulepreload" href="{root}assets/{name}">\n' for name in first)
    if soon:
        lines += f'<meta name="modules-soon" content="{" ".join(soon)}">\n'
    return html[: found.start()] + lines + html[found.start() :]


def modules_for(
    places: frozenset[str], assets: Path = DOCS / "assets"
) -> tuple[list[str], list[str]]:
    """The modules of a page with these places, without the entry: its start, and what comes soon after."""
    text = (assets / ENTRY).read_text(encoding="utf-8")
    parts = [module for place, module in PART.findall(text) if place in places]
    return modules(tuple([*parts, *ON_EVERY_PAGE.findall(text)]), assets, stamp(assets))


def stamp(assets: Path) -> int:
    """What tells a changed folder from the one that was read before. In nanoseconds since 1970."""
    return max(path.stat().st_mtime_ns for path in assets.rglob("*.js"))


@cache
def modules(starts: tuple[str, ...], assets: Path, stamped: int) -> tuple[list[str], list[str]]:
    """All that some modules and the entry import, directly or not, in the order in which they do.

    Those that are fetched soon after come apart. A change is told by ``stamped``, in nanoseconds.
    """
    found: dict[str, None] = {}
    soon: dict[str, None] = {}
    for start in (ENTRY, *starts):
        follow(start, assets, found, soon)
    first = len(found)
    for start in list(soon):
        follow(start, assets, found, soon={})
    return list(found)[1:first], list(found)[first:]


def follow(name: str, assets: Path, found: dict[str, None], soon: dict[str, None]) -> None:
    """Add a module and what it imports; one of other people is copied at the build, and imports nothing."""
    if name in found:
        return
    found[name] = None
    path = assets / name
    if not path.exists():
        return
    text = path.read_text(encoding="utf-8")
    for target in IMPORT.findall(text):
        follow(beside(name, target), assets, found, soon)
    for target in IN_CALL.findall("\n".join(SOON.findall(text))):
        soon[beside(name, target)] = None


def beside(name: str, target: str) -> str:
    """What a module means by an address, as the names of the graph have it."""
    return posixpath.normpath(posixpath.join(posixpath.dirname(name), target))
