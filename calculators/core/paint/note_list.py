"""Notes as a list, each with its links."""

from collections.abc import Iterable

from calculators.core.paint.element import NOTHING, Html, element, joined
from calculators.core.paint.lead_links import LeadLinks, query
from calculators.core.result import Link, Note

MOST_IN_VIEW = 2  # notes of background that are not worth a fold


def note_list(key: str, notes: Iterable[Note], leads: LeadLinks) -> Html:
    """All notes of one place."""
    return element("ul", {"class": "notes", "id": key}, *(note_item(note, leads) for note in notes))


def after_the_figures(notes: Iterable[Note], leads: LeadLinks) -> Html:
    """Notes that follow the figures: cautions in view, the rest behind a line that opens when tapped.

    A note that leads on stays in view, and so do few: a fold must save more than it hides.
    """
    notes = list(notes)
    background = [note for note in notes if is_background(note)]
    if len(background) <= MOST_IN_VIEW:
        return note_list("notes", notes, leads)
    in_view = [note for note in notes if not is_background(note)]
    folded = element(
        "details",
        {"id": "more-notes"},
        element("summary", {}, f"More to know: {len(background)} notes"),
        note_list("background", background, leads),
    )
    return joined([note_list("notes", in_view, leads) if in_view else NOTHING, folded])


def is_background(note: Note) -> bool:
    """Whether a note neither warns nor leads to a page or a calculator."""
    return note.level == "info" and not note.links and not note.leads


def note_item(note: Note, leads: LeadLinks) -> Html:
    """One note, its links behind its text: calculators that go on from it, then pages."""
    links = [
        *leads.at(note),
        *(link_html(link, leads.root) for link in note.links),
    ]
    css = f"{note.level} answer" if note.first else note.level
    return element("li", {"class": css}, joined([note.text, *links], " "))


def link_html(link: Link, root: str) -> Html:
    """A link to a page, or to a calculator with figures in its address."""
    return element("a", {"href": address_of(link, root)}, link.label)


def address_of(link: Link, root: str) -> str:
    """The address of a link; ``root`` leads from the page to the site's root."""
    return f"{root}{link.page}{query(link.given)}"
