"""Writes the pages of the site's source that are made from records, and what stands beside them."""

from functools import partial

from scripts.pages.generated import makers
from scripts.pages.write_made import write_made, write_new
from scripts.records.kept_files import KeptFiles
from scripts.setup.new_folder import NewFolder

LONG_TO_MAKE = (
    "assets/compare.json",
    "plants/growth.md",
    "problems/index.md",
    "nitrogen-model.md",
)


def write_pages(known: KeptFiles, source: NewFolder) -> None:
    """Write what is made from records into the source of the site, but for its large files.

    ``known`` has the records and what is kept of the files. Raises ``FileExistsError`` where a page of ours
    stands where a generated one goes.
    """
    files = makers(known.library)
    in_order = {name: files[name] for name in sorted(files, key=is_quick)}
    write_made(known, in_order, partial(write_new, source))


def is_quick(name: str) -> bool:
    """Whether a file is made quickly, and is begun after those that are not."""
    return name not in LONG_TO_MAKE
