"""The large files that no page is made of: the open data, what the search reads, the browser's Python, the
wheel, the letters.
"""

from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from scripts.setup.generated_files import put_generated
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
    from scripts.pages.write_made import write_made
    from scripts.records.kept_pieces import KeptPieces

    write_open_data(known, source)
    search = search_maker(known.library, partial(KeptPieces, known))
    write_made(known, search, partial(put_generated, source))
    site.copy_all(source.path / DATA, DATA, ("*.md", WHEELS))
    site.copy(source.path / SEARCH, SEARCH)


class OtherFiles(NamedTuple):
    """Those that need no record, as they are made: the folder of the browser's Python, and the wheel."""

    runtime: Path
    wheel: Path


def other_files() -> OtherFiles:
    """These files, made where they have to be. Raises ``Missing``."""
    from scripts.runtime.make_runtime import make_runtime
    from scripts.runtime.published_wheel import make_wheel

    return OtherFiles(make_runtime(), make_wheel())


def other_files_there() -> OtherFiles | None:
    """These files where they stand as they would be made now."""
    from scripts.runtime.make_runtime import made_runtime
    from scripts.runtime.published_wheel import made_wheel

    runtime, wheel = made_runtime(), made_wheel()
    return OtherFiles(runtime, wheel) if runtime and wheel else None


def put_other_files(made: OtherFiles, folder: NewFolder) -> None:
    """Put them into the site, or into its source, and the letters with them.

    Raises ``FileExistsError`` as above, and ``Missing``.
    """
    from scripts.runtime.make_runtime import STAMP
    from scripts.site.fonts import put_fonts

    folder.copy_all(made.runtime, RUNTIME, (STAMP,))
    folder.copy(made.wheel, f"{DATA}/{made.wheel.name}")
    put_fonts(folder, FONTS)


def is_large(name: str) -> bool:
    """Whether a file of the site's source is one of these; a page in one of their folders is none."""
    return name == SEARCH or (
        name.startswith(tuple(f"{below}/" for below in FOLDERS)) and not name.endswith(".md")
    )
