"""Links to the calculators that go on from an answer, filled in with what it gave."""

from calculators.core.address import write
from calculators.core.paint.element import NOTHING, Html, element
from calculators.core.paint.note_list import DIGITS, query
from calculators.core.run import Found


def ways_on(found: Found, root: str) -> Html:
    """The ways on, at the answer's end.

    A calculator to which a note leads already is not linked twice.
    """
    linked = {link.page for note in found.notes for link in note.links}
    links = [
        element(
            "a",
            {
                "class": "button",
                "href": f"{root}calculators/{way['calculator']}/"
                + query({key: write(value, DIGITS) for key, value in way["inputs"].items()}),
            },
            way["label"],
        )
        for way in found.answer.get("leads", ())
        if f"calculators/{way['calculator']}/" not in linked
    ]
    look = {"class": "after", "id": "leads", "aria-label": "Go on with this"}
    return element("nav", look, *links) if links else NOTHING
