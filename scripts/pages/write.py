"""Writes the pages of the site's source that are made from records, and what stands beside them."""

from collections.abc import Callable, Mapping
from functools import partial

from scripts.pages.generated import makers
from scripts.pages.write_made import write_made
from scripts.records.kept_files import KeptFiles
from scripts.setup.generated_files import put_generated
from scripts.setup.new_folder import NewFolder

LONG_TO_MAKE = (
    "assets/compare.json",
    "plants/growth.md",
    "problems/index.md",
    "nitrogen-model.md",
)


def write_pages(
    known: KeptFiles, source: NewFolder, put_unchanged: Callable[[Mapping[str, str]], None]
) -> int:
    """Write what is made from records into the source of the site, but for its large files; the number of
    those that had to be made.

    ``known`` has the records and what is kept of the files; ``put_unchanged`` puts those that would be made
    the same, by name and place, into the source too. Raises ``FileExistsError`` where a page of ours stands
    where a generated one goes.
    """
    files = makers(known.library)
    unchanged = known.places_of_unchanged(files)
    put_unchanged(unchanged)
    new = [name for name in sorted(files, key=is_quick) if name not in unchanged]
    write_made(known, {name: files[name] for name in new}, partial(put_generated, source))
    return len(new)


def is_quick(name: str) -> bool:
    """Whether a file is made quickly, and is begun after those that are not."""
    return name not in LONG_TO_MAKE
