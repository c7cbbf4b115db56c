"""The field for a photograph: two ways to choose one, the picture to mark, and the guide for the eye.

Without the page's script only the guide is of use, and the field says so.
"""

from calculators.core.fields import InputField
from calculators.core.paint.element import Attributes, Html, element, joined
from scripts.pages.calculators.eye_guide import eye_guide
from scripts.pages.calculators.form_fields import problem_html

# What the page's script does by itself; the kinds of marks come from the declaration.
CORNERS = "corners"
LOUPE = 132  # px


def photo_html(field: InputField, taps: InputField | None) -> Html:
    """The field of a picture; ``taps`` is the list that holds the places pointed out, if there is one."""
    key = field.key
    no_script = "Marking and counting a photo needs script. Compare by eye instead."
    return element(
        "div",
        {"class": "field photo", "id": "photo", "data-private": True, "data-key": key},
        element("label", {"for": f"in-{key}"}, field.label),
        element("input", {"type": "hidden", "id": f"in-{key}", "value": ""}),
        element("p", {"class": "hint", "id": f"hint-{key}"}, field.help),
        element("noscript", {}, element("p", {}, no_script)),
        element("div", {"class": "photo-live"}, choose(), stage(), tools(taps)),
        problem_html(key),
        element("details", {}, element("summary", {}, "Compare by eye"), eye_guide()),
    )


def choose() -> Html:
    """Take a photo, or choose one."""
    wrong: Attributes = {"class": "problem photo-problem", "role": "alert", "hidden": True}
    return joined(
        [
            element(
                "p", {"class": "photo-say"}, "The photo stays on this device. It is never sent."
            ),
            element(
                "div",
                {"class": "after"},
                photo_input("Take a photo", {"capture": "environment"}),
                photo_input("Choose a photo", {}),
            ),
            element("p", wrong),
        ]
    )


def photo_input(label: str, more: dict[str, str]) -> Html:
    """One way to a photo, as a button."""
    given: Attributes = {"type": "file", "accept": "image/*", **more, "data-photo": True}
    return element("label", {"class": "button"}, label, element("input", given))


def stage() -> Html:
    """The picture with its marks, and the magnifier that shows what a finger hides."""
    shown = {
        "class": "shown",
        "role": "img",
        "aria-label": "Your photo with what is counted as plant marked",
    }
    loupe: Attributes = {
        "class": "loupe",
        "width": LOUPE,
        "height": LOUPE,
        "aria-hidden": "true",
        "hidden": True,
    }
    pictures = element(
        "div",
        {"class": "stage", "hidden": True},
        element("canvas", shown),
        element("canvas", loupe),
    )
    counted = element("p", {"class": "counted", "role": "status", "hidden": True})
    return joined([pictures, counted])


def tools(taps: InputField | None) -> Html:
    """What a tap on the picture means, and buttons that change the count."""
    what = next((part for part in taps.row if part.choices), None) if taps else None
    kinds = [(CORNERS, "move corners")]
    kinds += list(zip(what.choices, what.words, strict=True)) if what else []
    meanings = (
        tool(words.capitalize(), {"data-what": kind, "aria-pressed": str(kind == CORNERS).lower()})
        for kind, words in kinds
    )
    say = "Drag each corner to a corner of the water. Then tap what is counted wrongly."
    return element(
        "div",
        {"class": "photo-tools", "hidden": True},
        element("p", {"class": "hint"}, say),
        element("div", {"class": "after", "role": "group", "aria-label": "A tap means"}, *meanings),
        element(
            "div",
            {"class": "after"},
            tool("Count more", {"data-more": "10"}),
            tool("Count less", {"data-more": "-10"}),
            tool("Undo a tap", {"data-undo": True}),
            tool("Hide what is counted", {"data-hide": True, "aria-pressed": "false"}),
            tool("Marks as numbers", {"data-numbers": True, "aria-pressed": "false"}),
        ),
    )


def tool(label: str, does: Attributes) -> Html:
    """One button; its attributes say what it does."""
    return element("button", {"type": "button", **does}, label)
