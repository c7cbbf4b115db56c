"""Makes the site of its source: pages, frames, sheets, what is copied, and the list for offline use.

Nothing here knows of records, so that a process may do it that was begun before any was read.
"""

from collections.abc import Callable

from scripts.setup.file_hash import names_below
from scripts.setup.kept import code
from scripts.setup.new_folder import NewFolder
from scripts.site.docs_files import docs_names, put_docs_into_site, put_docs_into_source
from scripts.site.frames import Frames
from scripts.site.joined_scripts import graph_of, joined, put_scripts
from scripts.site.large_files import is_large, other_files, other_files_there, put_other_files
from scripts.site.offline import write_offline_list
from scripts.site.one_sheet import join_sheets
from scripts.site.page_content import reader_of
from scripts.site.page_links import broken_links
from scripts.site.ready_pages import PagesOfSource, put_contents
from scripts.site.site_builder import BuildFailed, run_builder
from scripts.site.theme import settled_theme


def bring_files(site: NewFolder, wait: Callable[[], NewFolder]) -> NewFolder:
    """Bring what is copied, or made of no record, into the site and its source; the source's folder, as
    ``wait`` says it once it is there.

    What the pages need of this process is made ready too. Raises ``Missing``, and ``FileExistsError`` where
    two files go to one place.
    """
    there = other_files_there()
    if there:
        put_other_files(there, site)
    put_docs_into_site(site)
    put_scripts(site)
    code(), reader_of("")  # each takes long the first time
    source = wait()
    put_docs_into_source(source)
    made = there or other_files()
    for folder in (source,) if there else (source, site):
        put_other_files(made, folder)
    return source


def make_pages(
    site: NewFolder, source: NewFolder, pages_of: PagesOfSource, wait: Callable[[], object]
) -> None:
    """Make the site whole: of the pages in its source, and what ``bring_files`` brought. ``wait`` returns
    once the large files of records stand in both.

    Raises ``BuildFailed`` or ``Missing``, and ``FileExistsError`` as above.
    """
    pages, docs = pages_of.read(), docs_names()
    for name in names_below(source.path):
        if name not in pages and name not in docs and not is_large(name):
            site.copy(source.path / name, name)
    frames = Frames({name: page.headings for name, page in pages.items()})
    frames.make(run_builder)
    frames.write_beside(site.path)
    classes = put_contents(source.path, site, graph_of(joined()), frames, pages)
    join_sheets(site.path, settled_theme(site.path, classes))
    wait()
    files = set(names_below(source.path))
    if broken := list(broken_links({name: page.links for name, page in pages.items()}, files)):
        raise BuildFailed("\n".join(broken))
    write_offline_list(site.path)
