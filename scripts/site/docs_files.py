"""The files of docs/ that go into the site or its source as they are."""

from scripts.setup.file_hash import names_below
from scripts.setup.new_folder import NewFolder
from scripts.setup.paths import DOCS

FOR_THE_BUILD = ("theme/*", "pictures/*", "guides/*")  # read, and not copied
MADE_OTHERWISE = ("*.md", "assets/*.js")  # of these a site has what is made of them


def put_docs_into_source(source: NewFolder) -> None:
    """Put them into the site's source. Raises ``FileExistsError`` where one stands there already."""
    try:
        source.copy_all(DOCS, ignored=FOR_THE_BUILD)
    except FileExistsError as twice:
        raise FileExistsError(f"{twice}, generated; rename what has its name in docs/") from None


def put_docs_into_site(site: NewFolder) -> None:
    """Put them into the site, but what is read or joined. Raises ``FileExistsError`` as above."""
    site.copy_all(DOCS, ignored=(*FOR_THE_BUILD, *MADE_OTHERWISE))


def docs_names() -> set[str]:
    """The names of all files of docs/, seen from there."""
    return set(names_below(DOCS))
