"""Watches what people edit and writes again only what changed, the page that is open first.

Style and scripts are joined anew; a page of prose, a record's or a guide's page is made through the same
templates and the same Markdown settings as in the build (``watch_page.py``). After a change to records
the whole build follows in a process of its own, for the checks, the tables and the browser's Python.
"""

import os
import shutil
import subprocess
import sys
import threading
import time
from collections.abc import Callable, Iterable
from functools import partial
from pathlib import Path
from typing import NoReturn

from scripts.pages.generated import import_all, makers
from scripts.pages.search_file import search_maker
from scripts.records.load import BadRecords, Library, load
from scripts.setup.kept import octets_of
from scripts.setup.new_folder import set_aside
from scripts.setup.paths import BUILD, DOCS, ROOT, SITE_BEFORE, SOURCE, SPECIES
from scripts.setup.say import Missing, say
from scripts.site.addresses import address_of
from scripts.site.build import build
from scripts.site.joined_scripts import SOURCES, renew_scripts
from scripts.site.one_sheet import renew_sheet
from scripts.site.watch_page import Renderer
from scripts.site.watch_server import News, make_watch_server

TEMPLATES = ROOT / "scripts" / "templates"
THEME = DOCS / "theme"
SITE = BUILD / "watch-site"
NEXT = BUILD / "watch-next"
CHECK_EVERY_S = 0.1  # seconds
QUIET = 3.0  # seconds without a change before the whole build follows


def stamps() -> dict[Path, tuple[int, int]]:
    """When each watched file was written, and its size."""
    return {
        path: (status.st_mtime_ns, status.st_size)
        for folder in (DOCS, SPECIES, TEMPLATES)
        for path in folder.rglob("*")
        if not path.name.startswith(".") and not path.name.endswith("~")
        if (status := stat(path)) is not None
    }


def stat(path: Path) -> os.stat_result | None:
    """What the disk says of a file; nothing where it has just gone, or is a folder."""
    try:
        return path.stat() if path.is_file() else None
    except FileNotFoundError:
        return None


class Watcher:
    """What is shown, and what has to be looked at again."""

    def __init__(self, news: News, library: Library) -> None:
        self.news = news
        self.renderer = Renderer()
        self.library = library
        self.texts = {
            path.relative_to(SOURCE).as_posix(): path.read_text(encoding="utf-8")
            for path in SOURCE.rglob("*")
            if path.suffix in (".md", ".json", ".svg")
        }
        self.seen = stamps()
        self.pending: dict[str, Callable[[], str | bytes]] = {}
        self.theme_changed = False
        self.rebuild_at: float | None = None
        self.child: subprocess.Popen[str] | None = None

    def changes(self) -> list[Path]:
        """The files written, added or taken away since the last look."""
        now = stamps()
        changed = [
            path for path in self.seen.keys() | now.keys() if self.seen.get(path) != now.get(path)
        ]
        self.seen = now
        return sorted(changed)

    def turn(self) -> None:
        """One look: take up what changed, else write one waiting page, else rest."""
        changed = self.changes()
        if changed:
            self.take_up(changed)
        elif self.pending:
            self.write_next()
        else:
            self.follow_up()
            time.sleep(CHECK_EVERY_S)

    def take_up(self, changed: list[Path]) -> None:
        """Copy what is copied, and put every page that may have changed on the list."""
        for path in changed:
            say(f"· {path.relative_to(ROOT).as_posix()}")
        copied = [path for path in changed if path.is_relative_to(DOCS) and is_copied(path)]
        self.copy(copied)
        rest = [path for path in changed if path not in copied]
        if rest:
            self.theme_changed |= any(path.is_relative_to(THEME) for path in rest)
            self.read_again(rest)
            self.line_up(rest)

    def copy(self, paths: list[Path]) -> None:
        """Bring style, scripts and pictures over."""
        scripts = [path for path in paths if path.suffix == ".js" and path.is_relative_to(SOURCES)]
        if scripts:
            self.join_scripts()
        for path in paths:
            if path in scripts:
                continue
            if path.suffix == ".css":
                renew_sheet(SITE)
                continue
            target = SITE / path.relative_to(DOCS)
            target.parent.mkdir(parents=True, exist_ok=True)
            if path.exists():
                shutil.copyfile(path, target)
        if paths:
            style = all(path.suffix == ".css" for path in paths)
            self.news.tell(**{"style": True} if style else {"pages": "all"})

    def join_scripts(self) -> None:
        """Join the scripts anew; where one is half written, say so, and leave those that are shown."""
        try:
            self.renderer.graph = renew_scripts(SITE)
        except Missing as wrong:
            self.complain(str(wrong))

    def read_again(self, paths: list[Path]) -> None:
        """Load the library again where records or guides changed: that takes half a second."""
        records = any(path.is_relative_to(SPECIES) for path in paths)
        guides = any(path.is_relative_to(DOCS / "guides") for path in paths)
        if records:
            self.stop_build()
            self.rebuild_at = time.monotonic() + QUIET
        try:
            if records or guides:
                self.library = load()
        except BadRecords as bad:
            self.complain(f"the records do not hold; the pages stay as they were\n{bad}")

    def line_up(self, changed: Iterable[Path] = ()) -> None:
        """Everything that is made: first the pages that somebody looks at, then those of what changed."""
        made = makers(self.library) | search_maker(self.library)
        for path in sorted(DOCS.glob("*.md")):
            made[path.name] = partial(path.read_text, encoding="utf-8")
        shown = self.news.open_pages()
        first = [name for name in made if name.endswith(".md") and address_of(name) in shown]
        first += [name for name in map(page_of, changed) if name in made]
        self.pending = {name: made[name] for name in dict.fromkeys([*first, *made])}

    def write_next(self) -> None:
        """Make the next file on the list; write it where it differs, and tell the open pages."""
        name = next(iter(self.pending))
        make = self.pending.pop(name)
        try:
            text = octets_of(make()).decode()
            if text != self.texts.get(name) or (self.theme_changed and name.endswith(".md")):
                self.write(name, text)
        except Exception as wrong:  # half-written input is usual here, and the next save mends it
            self.complain(f"{name} cannot be made: {type(wrong).__name__}: {wrong}")
        if not self.pending:
            self.theme_changed = False

    def write(self, name: str, text: str) -> None:
        """Write one file of the site."""
        page = name.endswith(".md")
        address = address_of(name) if page else name
        target = SITE / (f"{address}index.html" if page else name)
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(self.renderer.html(name, text) if page else text, encoding="utf-8")
        self.texts[name] = text
        say(f"  {address or 'the home page'}")
        self.news.tell(pages=[address])

    def complain(self, text: str) -> None:
        """Say it at the terminal and in the browser's console."""
        say(text)
        self.news.tell(problem=text)

    def follow_up(self) -> None:
        """Start the whole build once it is quiet, and take what it made."""
        if self.child is not None and self.child.poll() is not None:
            self.take_build(self.child)
            self.child = None
        elif self.rebuild_at is not None and time.monotonic() >= self.rebuild_at:
            self.rebuild_at = None
            command = ("scripts.serve", "--build-only", "--into", str(NEXT))
            self.child = subprocess.Popen(
                [sys.executable, "-m", *command],
                cwd=ROOT,
                stdout=subprocess.DEVNULL,
                stderr=subprocess.PIPE,
                text=True,
            )

    def take_build(self, child: "subprocess.Popen[str]") -> None:
        """Put what the build made in place of what is shown, or say why it stopped."""
        assert child.stderr
        reason = child.stderr.read().strip()
        if child.returncode:
            self.complain(reason)
            return
        set_aside(SITE, SITE_BEFORE)
        NEXT.rename(SITE)
        say("  checked and built as a whole: tables, search and the browser's Python are new")

    def stop_build(self) -> None:
        """End a build that has been overtaken by another change."""
        if self.child is not None:
            self.child.kill()
            self.child.wait()
            self.child = None


def page_of(path: Path) -> str:
    """What the page of a record, a guide or a page of prose is called, if a file is one of those."""
    folder = SPECIES if path.is_relative_to(SPECIES) else DOCS
    return (
        path.relative_to(folder).with_suffix(".md").as_posix()
        if path.is_relative_to(folder)
        else ""
    )


def is_copied(path: Path) -> bool:
    """Whether a file of docs/ goes to the site as it is."""
    return path.suffix != ".md" and not path.is_relative_to(THEME)


def serve_and_watch(port: int) -> NoReturn:
    """Build, serve, and follow every change until interrupted.

    Raises ``BadRecords`` where the first build finds records that do not hold.
    """
    build(SITE)
    import_all()  # else the first change would wait for it
    news = News()
    with make_watch_server(SITE, port, news) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        watcher = Watcher(news, load())
        say(f"Watching, on http://127.0.0.1:{server.server_address[1]}/ - stop with Ctrl+C")
        while True:
            watcher.turn()
