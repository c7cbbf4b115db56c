"""The file that the search page reads, made from the records and from the pages that people wrote."""

from collections.abc import Callable, Iterator

from scripts.records.kept_pieces import PiecesByRecord, each_made
from scripts.records.load import Library
from scripts.records.prose import read_prose
from scripts.setup.paths import SEARCH

NOT_FOUND_BY_SEARCH = ("index.md", "search.md")


def search_maker(
    library: Library, pieces_of: Callable[[str], PiecesByRecord] = each_made
) -> dict[str, Callable[[], str | bytes]]:
    """What makes the file, by its path. ``pieces_of`` has the pieces of a file, by its path."""

    def made() -> str:
        """The file, by what is imported only where it has to be made."""
        from scripts.pages.search import entries, index

        return index(entries(library, dict(prose()), pieces_of(SEARCH)))

    return {SEARCH: made}


def prose() -> Iterator[tuple[str, tuple[str, str]]]:
    """Address, title and description of each page that people wrote, and that search finds."""
    for name, page in read_prose()[0].items():
        if name not in NOT_FOUND_BY_SEARCH:
            yield f"{name.removesuffix('.md')}/", page
