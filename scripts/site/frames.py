"""The frame around each page as the site builder fills it, kept from one build to the next.

A frame follows from the front matter and the headings of its page and from what stands in
``shared_ingredients``; of other pages it says nothing but of those in the navigation. So the builder gets
only pages whose frame no build has made, and is not started where there is none. A description, which
changes with a sentence of a record, is put into its place in the frame afterwards.
"""

import hashlib
import json
import re
import shutil
from base64 import b64decode, b64encode
from collections.abc import Callable, Iterable, Iterator, Mapping
from functools import cached_property
from pathlib import Path
from typing import Any

from markupsafe import escape

from scripts.setup.kept import is_kept, keep, kept, thrown_away
from scripts.setup.paths import BUILD, DOCS
from scripts.setup.surroundings import surroundings
from scripts.site.addresses import address_of
from scripts.site.page_content import SETTINGS, settings, settings_text
from scripts.site.theme import is_of_no_use

HEADINGS = BUILD / "headings"
FRAMED = BUILD / "framed"  # what the builder made last
BUILDERS_SETTINGS = BUILD / "mkdocs.yml"
BEGIN, END = "<!--content-->", "<!--/content-->"
# As pages from records have it.
DESCRIPTION = re.compile(r'^description: ("[^"].*")$', re.MULTILINE)
MARK = "what-the-page-is-about"  # in its place
FRAME, BESIDE = "frames", "beside-frames"  # kinds of what is kept


class Frames:
    """The frames of some pages; ``texts`` are the front matter and headings of each, by the page's file."""

    def __init__(self, texts: Mapping[str, str]) -> None:
        marked = {name: with_mark(text) for name, text in texts.items()}
        self.texts = {name: text for name, (text, _) in marked.items()}
        self.descriptions = {name: description for name, (_, description) in marked.items()}

    def make(self, run_builder: Callable[[Path, Path], None]) -> None:
        """Have the builder make the frames that nobody has made.

        Raises what ``run_builder`` does, and ``ValueError`` where it leaves no place for a content.
        """
        lacking = [name for name in self.texts if not is_kept(FRAME, self.ingredients(name))]
        if not lacking and is_kept(BESIDE, self.shared_ingredients):
            return
        self.write({*lacking, *pages_of_navigation()} & self.texts.keys())
        run_builder(BUILDERS_SETTINGS, FRAMED)
        for name in lacking:
            page = FRAMED / address_of(name) / "index.html"
            keep(FRAME, self.ingredients(name), without_inside(name, page.read_text("utf-8")))
        keep(BESIDE, self.shared_ingredients, json.dumps(dict(beside_pages(self.texts))))

    def write(self, names: Iterable[str]) -> None:
        """Write what the builder reads."""
        shutil.rmtree(HEADINGS, ignore_errors=True)
        for name in names:
            path = HEADINGS / name
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(self.texts[name], encoding="utf-8")
        BUILDERS_SETTINGS.write_text(
            f"INHERIT: ../{SETTINGS.name}\ndocs_dir: {HEADINGS.name}\n"
            f"theme:\n  custom_dir: ../{DOCS.name}/theme\n",
            encoding="utf-8",
        )

    def filled(self, name: str, content: str) -> str:
        """The page with its content. Raises ``Missing`` where the frame has been thrown away meanwhile."""
        frame = kept(FRAME, self.ingredients(name), thrown_away)
        before, _, after = frame.replace(MARK, self.descriptions[name]).partition(BEGIN)
        return f"{before}{content}{after}"

    def write_beside(self, site: Path) -> None:
        """Write into the site what the builder makes beside the pages."""
        made: dict[str, str] = json.loads(kept(BESIDE, self.shared_ingredients, thrown_away))
        for name, octets in made.items():
            path = site / name
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(b64decode(octets))

    def ingredients(self, name: str) -> str:
        """All that a page's frame follows from."""
        return f"{self.shared_ingredients}\0{name}\0{self.texts[name]}"

    @cached_property
    def shared_ingredients(self) -> str:
        """A hash of what all frames follow from: settings, templates, navigation, packages and the day."""
        theme = DOCS / "theme"
        templates = sorted(path for path in theme.rglob("*") if path.is_file())
        parts = [
            surroundings(),
            settings_text(),
            *(
                f"{path.relative_to(theme).as_posix()}\0{path.read_text('utf-8')}"
                for path in templates
            ),
            *(f"{name}\0{self.texts.get(name)}" for name in pages_of_navigation()),
        ]
        return hashlib.sha256("\0".join(parts).encode()).hexdigest()


def with_mark(text: str) -> tuple[str, str]:
    """What the builder gets of a page with a mark for its description; the description as HTML, if any."""
    found = DESCRIPTION.search(text)
    if not found:
        return text, ""
    marked = f"{text[: found.start()]}description: {MARK}{text[found.end() :]}"
    return marked, str(escape(json.loads(found[1])))


def without_inside(name: str, page: str) -> str:
    """A page that the builder made, with a mark in place of what stands between its two marks.

    Raises ``ValueError`` where they are not there.
    """
    before, begin, rest = page.partition(BEGIN)
    _, end, after = rest.partition(END)
    if not begin or not end:
        raise ValueError(f"{name}: the site builder left no place for the content")
    return f"{before}{BEGIN}{after}"


def beside_pages(names: Iterable[str]) -> Iterator[tuple[str, str]]:
    """What the builder made that is none of the pages and of use, in letters."""
    pages = {f"{address_of(name)}index.html" for name in names}
    for path in sorted(FRAMED.rglob("*")):
        name = path.relative_to(FRAMED).as_posix()
        if path.is_file() and name not in pages and not is_of_no_use(name):
            yield name, b64encode(path.read_bytes()).decode()


def pages_of_navigation() -> list[str]:
    """The pages that the settings name for the navigation."""
    return list(files_in(settings()["nav"]))


def files_in(entry: Any) -> Iterator[str]:
    """The pages in an entry of the navigation, which may hold others."""
    if isinstance(entry, str):
        yield entry
    else:
        for inner in entry.values() if isinstance(entry, dict) else entry:
            yield from files_in(inner)
