"""Notes as a list, each with its links to pages of the book."""

from collections.abc import Iterable
from urllib.parse import urlencode

from calculators.core.numbers import show_plain
from calculators.core.paint.element import Html, element, joined
from calculators.core.result import Link, Note

DIGITS = 6  # of a figure in an address


def note_list(key: str, notes: Iterable[Note], root: str) -> Html:
    """All notes of one place; ``root`` leads from the page to the site's root."""
    return element("ul", {"class": "notes", "id": key}, *(note_item(note, root) for note in notes))


def note_item(note: Note, root: str) -> Html:
    """One note, its links behind its text."""
    links = (link_html(link, root) for link in note.links)
    look = f"{note.level} answer" if note.first else note.level
    return element("li", {"class": look}, joined([note.text, *links], " "))


def link_html(link: Link, root: str) -> Html:
    """A link to a page, or to a calculator with figures in its address."""
    given = {
        key: value if isinstance(value, str) else show_plain(value, DIGITS)
        for key, value in link.given.items()
    }
    address = f"{root}{link.page}{query(given)}"
    return element("a", {"href": address}, link.label)


def query(given: dict[str, str]) -> str:
    """Inputs as the part of an address behind its page; none, nothing."""
    return f"?{urlencode(given)}" if given else ""
