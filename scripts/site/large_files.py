"""The large files that no page is made of: they are written while another process writes the pages.

The open data, what the search reads, the browser's Python, the wheel, the letters.
"""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import partial

from scripts.pages.search_file import SEARCH, search_maker
from scripts.pages.write_made import write_made, write_new
from scripts.records.kept_files import KeptFiles
from scripts.setup.meanwhile import begun_elsewhere
from scripts.setup.new_folder import NewFolder

RUNTIME, DATA, FONTS = FOLDERS = "runtime", "data", "assets/fonts"  # of the site


@contextmanager
def large_files_begun(
    known: KeptFiles, source: NewFolder, site: NewFolder
) -> Iterator[Callable[[], None]]:
    """Have these files written into the site's source and the site; the function waits for them.

    Raises ``Missing``, and ``FileExistsError`` where a file of ours stands where one of them goes.
    """

    work, was_made = partial(write_large_files, known, source, site), known.were_made(SEARCH)
    del known  # nor is it held here: while pages are read, nobody needs the records
    if was_made:  # it is only records that may have changed
        with begun_elsewhere(work) as result:
            del work
            yield result
    else:  # there is enough to do for all cores as it is, and a copy of the records takes memory
        work()
        del work
        yield lambda: None


def write_large_files(known: KeptFiles, source: NewFolder, site: NewFolder) -> None:
    """Write these files. Raises as ``large_files_begun``."""
    from scripts.pages.open_data.write_data import write_open_data
    from scripts.runtime.make_runtime import make_runtime  # which imports the calculators
    from scripts.runtime.published_wheel import make_wheel
    from scripts.site.fonts import write_fonts

    wheel = make_wheel()
    source.copy_all(make_runtime(), RUNTIME, ("made-from.txt",))
    write_open_data(known, source)
    write_made(known, search_maker(known.library), partial(write_new, source))
    source.copy(wheel, f"{DATA}/{wheel.name}")
    write_fonts(source.path / FONTS)
    for below in FOLDERS:
        site.copy_all(source.path / below, below, ("*.md",))
    site.copy(source.path / SEARCH, SEARCH)


def is_large(name: str) -> bool:
    """Whether a file of the site's source is one of these; a page in one of their folders is none."""
    return name == SEARCH or (
        name.startswith(tuple(f"{below}/" for below in FOLDERS)) and not name.endswith(".md")
    )
