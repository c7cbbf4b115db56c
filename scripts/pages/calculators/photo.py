"""The field for a photograph: two ways to choose one, the picture to mark, and the guide for the eye.

Without the page's script only the guide is of use, and the field says so.
"""

from html import escape

from calculators.core.fields import InputField
from scripts.pages.calculators.eye_guide import eye_guide

# What the page's script does by itself; the kinds of marks come from the declaration.
CORNERS = "corners"


def photo_html(field: InputField, taps: InputField | None) -> str:
    """The field of a picture; ``taps`` is the list that holds the places pointed out, if there is one."""
    key = escape(field.key)
    return (
        f'<div class="field photo" id="photo" data-private data-key="{key}">'
        f'<label for="in-{key}">{escape(field.label)}</label><input type="hidden" id="in-{key}" value="">'
        f'<p class="hint" id="hint-{key}">{escape(field.help)}</p>'
        "<noscript><p>Marking and counting a photo needs script. Compare by eye instead.</p></noscript>"
        f'<div class="photo-live" hidden>{choose()}{stage()}{tools(taps)}</div>'
        f'<p class="problem" id="problem-{key}" hidden></p>'
        f"<details><summary>Compare by eye</summary>{eye_guide()}</details></div>"
    )


def choose() -> str:
    """Take a photo, or choose one."""
    return (
        '<p class="photo-say">The photo stays on this device. It is never sent.</p>'
        '<div class="after"><label class="button">Take a photo'
        '<input type="file" accept="image/*" capture="environment" data-photo></label>'
        '<label class="button">Choose a photo<input type="file" accept="image/*" data-photo></label></div>'
        '<p class="problem photo-problem" role="alert" hidden></p>'
    )


def stage() -> str:
    """The picture with its marks, and the magnifier that shows what a finger hides."""
    return (
        '<div class="stage" hidden><canvas class="shown" role="img" aria-label="Your photo with what is '
        'counted as plant marked"></canvas><canvas class="loupe" width="132" height="132" aria-hidden="true" '
        "hidden></canvas></div>"
        '<p class="counted" role="status" hidden></p>'
    )


def tools(taps: InputField | None) -> str:
    """What a tap on the picture means, and buttons that change the count."""
    what = next((one for one in taps.row if one.choices), None) if taps else None
    kinds = [(CORNERS, "move corners")]
    kinds += list(zip(what.choices, what.words, strict=True)) if what else []
    buttons = "".join(
        f'<button type="button" data-what="{escape(kind)}" aria-pressed="{str(kind == CORNERS).lower()}">'
        f"{escape(words.capitalize())}</button>"
        for kind, words in kinds
    )
    return (
        '<div class="photo-tools" hidden><p class="hint">Drag each corner to a corner of the water. Then tap '
        "what is counted wrongly.</p>"
        f'<div class="after" role="group" aria-label="A tap means">{buttons}</div>'
        '<div class="after"><button type="button" data-more="10">Count more</button>'
        '<button type="button" data-more="-10">Count less</button>'
        '<button type="button" data-undo>Undo a tap</button>'
        '<button type="button" data-hide aria-pressed="false">Hide what is counted</button>'
        '<button type="button" data-numbers aria-pressed="false">Marks as numbers</button></div></div>'
    )
