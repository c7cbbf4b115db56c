"""What it may be, as HTML for the page at the tank: the law first, then the plants, then side by side."""

from collections.abc import Mapping, Sequence
from typing import Any

from calculators.core.paint.element import NOTHING, Html, element, joined
from calculators.core.result import Note
from calculators.identify.law_words import listed_at
from calculators.identify.plant_posterior import given_traits
from calculators.identify.seen import SeenTraits
from calculators.identify.trait_table import plant_book
from calculators.identify.trait_words import TRAITS, words_of
from calculators.science.evidence.weighing import shown_percent, words_for

Row = Mapping[str, Any]


def paint_notes(notes: Sequence[Note], root: str) -> Html:
    """The notes as a list, each with its links."""
    made = [
        element("li", {"class": note.level}, note.text, *(
            joined([" ", element("a", {"href": root + link.page}, link.label)]) for link in note.links
        ))
        for note in notes
    ]  # fmt: skip
    return element("ul", {"class": "notes"}, *made) if made else NOTHING


def thumb(plant: str, root: str) -> Html:
    """A plant's small picture, from the file that holds them all."""
    use = element("use", {"href": f"{root}assets/thumbnails.svg#{plant}"})
    return element("svg", {"class": "thumb", "viewBox": "0 0 48 48", "aria-hidden": "true"}, use)


def paint_ranking(outputs: Mapping[str, Any], place: str | None, root: str) -> Html:
    """The plants in order, the first one open."""
    rows = [
        candidate(row, place, root, is_open=number == 0)
        for number, row in enumerate(outputs["ranked"])
    ]
    other = shown_percent(outputs["not_in_book_percent"])
    return joined(
        [
            element("ol", {"class": "causes"}, *rows),
            element("p", {"class": "hint"}, f"A plant that is not in this book: {other}."),
        ]
    )


def candidate(row: Row, place: str | None, root: str, *, is_open: bool) -> Html:
    """One plant with its share and its reasons."""
    percent = row["fit_percent"]
    is_listed = bool(listed_at(plant_book().plants[row["plant"]], place))
    meter = element(
        "meter", {"min": 0, "max": 100, "value": f"{percent:.1f}", "aria-hidden": "true"}
    )
    law = element("em", {}, "the law restricts it") if is_listed else NOTHING
    heading = element(
        "summary",
        {},
        thumb(row["plant"], root),
        element("b", {}, element("i", {}, row["name"])),
        joined([" ", law]),
        element("br"),
        element("span", {}, f"{words_for(percent)}, {shown_percent(percent)}"),
        meter,
    )
    page = element("a", {"class": "button", "href": f"{root}plants/{row['plant']}/"}, "Its page")
    body = [
        *part("The law", row["law"]),
        *part("For it", row["for"]),
        *part("Against it", row["against"]),
        element("p", {}, page),
    ]
    return element(
        "li", {}, element("details", {"data-plant": row["plant"], "open": is_open}, heading, *body)
    )


def part(title: str, texts: Sequence[str]) -> list[Html]:
    """A heading with its sentences; nothing without any."""
    if not texts:
        return []
    return [
        element("h3", {}, title),
        element("ul", {}, *(element("li", {}, text) for text in texts)),
    ]


def paint_beside(outputs: Mapping[str, Any]) -> Html:
    """The leading plants side by side: in what they differ and where to look."""
    rows = [
        element(
            "li",
            {},
            element("b", {}, row["label"]),
            element("span", {"class": "hint"}, f" {row['look']}"),
            element("ul", {}, *(element("li", {}, value) for value in row["values"])),
        )
        for row in outputs["side_by_side"]
    ]
    told = [element("p", {}, text) for pair in outputs["told_apart"] for text in pair["text"]]
    if not rows and not told:
        return NOTHING
    return joined(
        [
            element("h2", {}, "Side by side: what differs, and where to look"),
            *told,
            element("ul", {"class": "differing"}, *rows),
        ]
    )


def paint_answers(seen: SeenTraits, unseen: Sequence[str]) -> Html:
    """What was said so far, each with a button that takes it back."""
    rows = [
        answer_row(f"traits.{trait}", f"{TRAITS[trait].label}: {words_of(trait, value)}")
        for trait, value in given_traits(seen).items()
    ]
    rows += [answer_row(f"unseen.{key}", f"{TRAITS[key].label}: cannot be seen") for key in unseen]
    if not rows:
        return NOTHING
    return element(
        "details",
        {"id": "naming-given"},
        element("summary", {}, f"Your answers: {len(rows)}"),
        element("ul", {"class": "answers"}, *rows),
    )


def answer_row(key: str, words: str) -> Html:
    """One answer to take back."""
    take = element(
        "button",
        {"type": "button", "class": "drop", "data-drop": key, "aria-label": f"Take back: {words}"},
        "Take back",
    )
    return element("li", {}, element("span", {}, words), take)
