"""Notes as a list, each with its links."""

from collections.abc import Iterable

from calculators.core.paint.element import Html, element, joined
from calculators.core.paint.lead_links import LeadLinks, query
from calculators.core.result import Link, Note


def note_list(key: str, notes: Iterable[Note], leads: LeadLinks) -> Html:
    """All notes of one place."""
    return element("ul", {"class": "notes", "id": key}, *(note_item(note, leads) for note in notes))


def note_item(note: Note, leads: LeadLinks) -> Html:
    """One note, its links behind its text: calculators that go on from it, then pages."""
    links = [*leads.at(note), *(link_html(link, leads.root) for link in note.links)]
    css = f"{note.level} answer" if note.first else note.level
    return element("li", {"class": css}, joined([note.text, *links], " "))


def link_html(link: Link, root: str) -> Html:
    """A link to a page, or to a calculator with figures in its address."""
    return element("a", {"href": f"{root}{link.page}{query(link.given)}"}, link.label)
