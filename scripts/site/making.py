"""Who makes the site of its source: this process, or one that was begun before this one read any record.

Where records alone have changed, the other imports what it needs, and brings what needs no record, while this
one reads them and writes the few pages that are new; then it makes the site while this one writes the open
data. Where more has changed, there is enough for all cores at each step.
"""

import gc
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from functools import partial
from pathlib import Path
from typing import Any

from scripts.setup.cores import FEW, can_share
from scripts.setup.meanwhile import OtherProcess, begun_elsewhere
from scripts.setup.new_folder import NewFolder, remove
from scripts.setup.paths import SITE_BEFORE
from scripts.setup.rubbish import rubbish_left
from scripts.site.nothing_new import Sources, only_records_differ


class Making:
    """The making of a site in a folder of its own: by ``other`` as long as there is one, else by this
    process.
    """

    def __init__(self, folder: NewFolder, other: OtherProcess | None = None) -> None:
        self.folder, self.other = folder, other
        self.files_are_brought = False

    def take_over(self) -> None:
        """Have this process do all of it, which is to be done otherwise than the other began it."""
        if self.other:
            self.other.end()
            self.go_on_here()
            self.folder = empty(self.folder.path)

    def go_on_here(self) -> None:
        """Have this process do what is left, which is much: so it looks for rubbish again."""
        self.other = None
        gc.enable()

    def source_is_there(self, source: NewFolder) -> None:
        """Say where the source will stand. Raises as ``finish``."""
        self.source = source
        if self.other:
            self.other.tell(source)

    def put_unchanged(self, places: Mapping[str, str]) -> None:
        """Have the files that would be made the same put into the source, by name the place where each is
        kept. Raises as ``finish``.
        """
        if self.other:
            self.other.tell(places)
        else:
            from scripts.setup.generated_files import put_kept

            put_kept(self.source, places)

    def pages_stand(self, new_count: int) -> None:
        """Say that the new pages stand in the source, ``new_count`` of them.

        Where these are many this process goes on, which can share them out. Raises as ``finish``.
        """
        if self.other:
            are_few = new_count <= FEW
            self.other.tell(are_few)
            if not are_few:
                self.other.result()
                self.go_on_here()
                self.files_are_brought = True

    def finish(self) -> None:
        """Say that the large files of records stand in the source and the site. It is whole then.

        Raises ``BuildFailed`` or ``Missing``, and ``FileExistsError`` where two files go to one place.
        """
        if self.other:
            self.other.tell(None)
            self.other.result()
            return
        from scripts.site.make_site import bring_files, make_pages
        from scripts.site.ready_pages import PagesOfSource

        if not self.files_are_brought:
            bring_files(self.folder, lambda: self.source)
        make_pages(self.folder, self.source, PagesOfSource(self.source.path), lambda: None)


@contextmanager
def making_begun(site: Path, now: Sources) -> Iterator[Making]:
    """Begin to make a site of the sources that there are ``now``. Nothing stays of one that fails."""
    folder = empty(site.with_name(f"{site.name}-fresh"))
    try:
        if can_share() and only_records_differ(site, now):
            with rubbish_left(), begun_elsewhere(partial(made_by_other, folder)) as other:
                yield Making(folder, other)
        else:
            yield Making(folder)
    finally:
        remove(folder.path)


def made_by_other(folder: NewFolder, wait: Callable[[], Any]) -> None:
    """What the other process does; ``wait`` returns what it is told."""
    from scripts.setup.generated_files import put_kept
    from scripts.site.make_site import bring_files, make_pages
    from scripts.site.ready_pages import PagesOfSource

    source = bring_files(folder, wait)
    unchanged = wait()
    put_kept(source, unchanged)
    pages = PagesOfSource(source.path)
    pages.take_known(unchanged)
    if wait():
        make_pages(folder, source, pages, wait)


def empty(path: Path) -> NewFolder:
    """An empty folder for a site, in place of what was there."""
    remove(path)
    return NewFolder(path, SITE_BEFORE)
