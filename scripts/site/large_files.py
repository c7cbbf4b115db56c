"""The large files that no page is made of: the open data, what the search reads, the browser's Python, the
wheel, the letters.
"""

from functools import partial
from typing import TYPE_CHECKING

from scripts.setup.new_folder import NewFolder
from scripts.setup.paths import SEARCH

if TYPE_CHECKING:  # the process that makes the site knows of no record
    from scripts.records.kept_files import KeptFiles

RUNTIME, DATA, FONTS = FOLDERS = "runtime", "data", "assets/fonts"  # of the site
WHEELS = "*.whl"  # in the folder of the open data


def write_files_of_records(known: "KeptFiles", source: NewFolder, site: NewFolder) -> None:
    """Write those that are made from records into the site's source, and from there into the site.

    Raises ``FileExistsError`` where a file of ours stands where one of them goes.
    """
    from scripts.pages.open_data.write_data import write_open_data
    from scripts.pages.search_file import search_maker
    from scripts.pages.write_made import write_made, write_new

    write_open_data(known, source)
    write_made(known, search_maker(known.library), partial(write_new, source))
    site.copy_all(source.path / DATA, DATA, ("*.md", WHEELS))
    site.copy(source.path / SEARCH, SEARCH)


def put_other_files(folder: NewFolder) -> None:
    """Put those that need no record into the site, or into its source; made where they have to be.

    Raises ``FileExistsError`` as above, and ``Missing``.
    """
    from scripts.runtime.make_runtime import STAMP, make_runtime
    from scripts.runtime.published_wheel import make_wheel
    from scripts.site.fonts import put_fonts

    wheel = make_wheel()
    folder.copy_all(make_runtime(), RUNTIME, (STAMP,))
    folder.copy(wheel, f"{DATA}/{wheel.name}")
    put_fonts(folder, FONTS)


def other_files_are_made() -> bool:
    """Whether those that need no record stand as they would be made now."""
    from scripts.runtime.make_runtime import runtime_is_made
    from scripts.runtime.published_wheel import made_wheel

    return runtime_is_made() and made_wheel() is not None


def is_large(name: str) -> bool:
    """Whether a file of the site's source is one of these; a page in one of their folders is none."""
    return name == SEARCH or (
        name.startswith(tuple(f"{below}/" for below in FOLDERS)) and not name.endswith(".md")
    )
