"""The question of the moment as HTML: drawn answers for a thumb, and the way out."""

from collections.abc import Mapping
from typing import Any

from calculators.core.paint.element import NOTHING, Html, element
from calculators.identify.drawn_answers import MOST_SHOWN, DrawnAnswer, choices
from calculators.identify.seen import SeenTraits
from calculators.identify.trait_evidence import MEASURED
from calculators.identify.trait_words import TRAITS

CANNOT_SEE = "I cannot see it"
COUNTED = "whorl_count"


def paint_question(
    ask: Mapping[str, Any] | None, seen: SeenTraits, chances: Mapping[str, float]
) -> Html:
    """The question with its answers; where nothing is left to ask, that."""
    if ask is None:
        return element(
            "div",
            {"class": "look-card"},
            element("h2", {"id": "naming-question", "tabindex": "-1"}, "Nothing more to ask"),
            element("p", {"class": "hint"}, "What is left must be told by the marks below."),
        )
    trait = str(ask["trait"])
    return element(
        "div",
        {"class": "look-card"},
        element("h2", {"id": "naming-question", "tabindex": "-1"}, TRAITS[trait].question),
        element("p", {"class": "hint"}, ask["why"]),
        *answer_buttons(trait, choices(trait, seen, chances)),
        measure(trait),
        element(
            "p",
            {"class": "look-moves"},
            element("button", {"type": "button", "data-unseen": trait}, CANNOT_SEE),
        ),
    )


def answer_buttons(trait: str, offered: list[DrawnAnswer]) -> list[Html]:
    """The answers; of many the likeliest, and the others behind a tap."""
    if trait in MEASURED or trait == COUNTED or len(offered) <= MOST_SHOWN + 1:
        return [grid(trait, offered)]
    rest = element(
        "details",
        {"id": "naming-others"},
        element("summary", {}, f"Other answers: {len(offered) - MOST_SHOWN}"),
        grid(trait, offered[MOST_SHOWN:]),
    )
    return [grid(trait, offered[:MOST_SHOWN]), rest]


def grid(trait: str, offered: list[DrawnAnswer]) -> Html:
    """Answers side by side, each with its drawing."""
    buttons = (button(trait, choice) for choice in offered)
    label = TRAITS[trait].question
    return element("div", {"class": "drawn", "role": "group", "aria-label": label}, *buttons)


def button(trait: str, choice: DrawnAnswer) -> Html:
    """One answer; ``data-set`` has the inputs that it sets, as an address writes them."""
    sets = "&".join(f"{key}={value}" for key, value in choice.sets.items())
    return element(
        "button",
        {"type": "button", "data-set": sets},
        picture(choice.picture),
        element("span", {}, choice.words),
    )


def picture(name: str) -> Html:
    """A drawing that stands in the page, by its id."""
    use = element("use", {"href": f"#{name}"})
    return element("svg", {"class": "trait", "viewBox": "0 0 56 56", "aria-hidden": "true"}, use)


def measure(trait: str) -> Html:
    """A field for a size that was measured; nothing for other traits."""
    if trait not in MEASURED:
        return NOTHING
    words = TRAITS[trait]
    label = element("label", {"for": "naming-measure"}, f"Or measured, {words.unit}")
    field = element(
        "input",
        {
            "id": "naming-measure",
            "name": f"traits.{trait}",
            "inputmode": "decimal",
            "autocomplete": "off",
        },
    )
    return element(
        "form",
        {"class": "measure", "data-measure": trait},
        label,
        field,
        element("button", {}, "Take it"),
    )
