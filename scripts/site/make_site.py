"""Makes the site of its source: pages, frames, sheets, what is copied, and the list for offline use.

Nothing here knows of records, so that a process may do it that was begun before any was read.
"""

from collections.abc import Callable
from typing import Any

from scripts.setup import paths
from scripts.setup.file_hash import names_below
from scripts.setup.kept import code
from scripts.setup.new_folder import NewFolder
from scripts.site.docs_files import docs_names, put_docs_into_site, put_docs_into_source
from scripts.site.frames import Frames
from scripts.site.joined_scripts import put_scripts
from scripts.site.large_files import is_large, other_files_are_made, put_other_files
from scripts.site.offline import write_offline_list
from scripts.site.one_sheet import join_sheets
from scripts.site.page_content import reader_of
from scripts.site.page_links import broken_links
from scripts.site.ready_pages import pages_read_before, put_contents, read_pages
from scripts.site.site_builder import BuildFailed, run_builder
from scripts.site.theme import settled_theme


def make_site(site: NewFolder, wait: Callable[[], Any]) -> None:
    """Make the site. ``wait`` returns first once there is a folder for its source, with that; then once the
    pages from records stand there; and then once the large files of records stand in both.

    What needs none of these is done before. Raises ``BuildFailed`` or ``Missing``, and ``FileExistsError``
    where two files go to one place.
    """
    are_made = other_files_are_made()
    if are_made:
        put_other_files(site)
    put_docs_into_site(site)
    graph, docs = put_scripts(site), docs_names()
    code(), reader_of("")  # each takes long the first time
    before = pages_read_before(paths.SOURCE)
    source: NewFolder = wait()
    put_docs_into_source(source)
    for folder in (source,) if are_made else (source, site):
        put_other_files(folder)
    wait()
    pages = read_pages(source.path, before)
    for name in names_below(source.path):
        if name not in pages and name not in docs and not is_large(name):
            site.copy(source.path / name, name)
    frames = Frames({name: page.headings for name, page in pages.items()})
    frames.make(run_builder)
    frames.write_beside(site.path)
    classes = put_contents(source.path, site, graph, frames, pages)
    join_sheets(site.path, settled_theme(site.path, classes))
    wait()
    files = set(names_below(source.path))
    if broken := list(broken_links({name: page.links for name, page in pages.items()}, files)):
        raise BuildFailed("\n".join(broken))
    write_offline_list(site.path)
