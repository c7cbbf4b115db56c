"""One field of a form as plain HTML: label, entry, unit, what is allowed, and room for a problem."""

from collections.abc import Callable, Mapping, Sequence
from typing import Any, TypeVar

from calculators.core.fields import InputField, Kind
from calculators.core.form_hints import ByChoice, InRow, Step, Suggest
from calculators.core.numbers import in_threes, show_number, show_plain
from calculators.core.paint.element import NOTHING, Html, element, joined
from calculators.core.shown_units import System, to_shown, unit_shown

MOST_TICKS = 80  # keys that are boxes to tap; more are typed
KEYPADS = {Kind.NUMBER: "decimal", Kind.INTEGER: "numeric", Kind.TEXT: "text", Kind.KEYS: "text"}
# What the page's script fills from a picture, and never puts into an address.
HIDDEN_MARK = {"data-mark": True, "data-private": True, "hidden": True}

Hint = TypeVar("Hint")


def hint(field: InputField, kind: type[Hint]) -> Hint | None:
    """What a field says about its place in a form, of one kind; None where it says nothing."""
    return next((attached for attached in field.hints if isinstance(attached, kind)), None)


def field_html(
    field: InputField,
    value: Any,
    within: str,
    row: Mapping[str, Any] | None = None,
    *,
    marks: bool = False,
) -> Html:
    """One field. ``row`` holds the values of the row around it, if it stands in one.

    ``marks`` says that it belongs to the marks on a picture, which fill it in.
    """
    path = f"{within}{field.key}"
    if is_ticked(field):
        return ticks_html(field, value or [], path)
    label = element("label", {"for": f"in-{path}"}, short_label(field) or field.label)
    entered = joined(
        [stepped(field, entry(field, value, path)), in_both_systems(field, unit_shown, "unit")]
    )
    return element(
        "div",
        {"class": "field", **(HIDDEN_MARK if marks else {}), "data-key": field.key},
        label_with_units(field, label, row or {}),
        element("div", {"class": "entry"}, entered),
        element("p", {"class": "hint", "id": f"hint-{path}"}, hint_html(field)),
        problem_html(path),
    )


def short_label(field: InputField) -> str:
    """The label in a row of fields that are one idea; nothing where the whole one stands."""
    row = hint(field, InRow)
    return row.label if row else ""


def problem_html(path: str) -> Html:
    """Room for what is wrong with a field or a list."""
    return element("p", {"class": "problem", "id": f"problem-{path}", "hidden": True})


def is_ticked(field: InputField) -> bool:
    """Whether keys are chosen by tapping: few enough to be looked through."""
    return field.kind == Kind.KEYS and len(field.choices) <= MOST_TICKS


def ticks_html(field: InputField, chosen: Sequence[str], path: str) -> Html:
    """Keys as boxes to tap, in a group that is read out by its label."""
    boxes = (
        element(
            "label",
            {"class": "tick"},
            element("input", {"type": "checkbox", "value": key, "checked": key in chosen}),
            f" {words}",
        )
        for key, words in zip(field.choices, field.words, strict=True)
    )
    return element(
        "div",
        {
            "class": "field ticks",
            "data-key": field.key,
            "role": "group",
            "aria-labelledby": f"label-{path}",
            "aria-describedby": f"hint-{path} problem-{path}",
        },
        element("b", {"id": f"label-{path}"}, field.label),
        element("div", {"class": "boxes"}, *boxes),
        element("p", {"class": "hint", "id": f"hint-{path}"}, field.help),
        problem_html(path),
    )


def label_with_units(field: InputField, label: Html, row: Mapping[str, Any]) -> Html:
    """The label; beside it the unit where that goes with another field of the row."""
    by = hint(field, ByChoice)
    if by is None:
        return label
    units = (
        element(
            "span",
            {
                "class": "unit",
                "data-by": by.key,
                "data-choice": choice,
                "data-step": f"{step:g}",
                **own_limits(field, choice),
                "hidden": row.get(by.key) != choice,
            },
            unit,
        )
        for choice, unit, step in zip(by.choices, by.units, by.steps, strict=True)
    )
    return element("div", {"class": "named"}, label, *units)


def own_limits(field: InputField, choice: str) -> dict[str, str]:
    """The limits that go with a choice, where they differ by choice, as attributes."""
    if field.possible_by is None or choice not in field.possible_by.ranges:
        return {}
    low, high = field.possible_by.ranges[choice]
    return {"data-low": f"{low:g}", "data-high": f"{high:g}"}


def hint_html(field: InputField) -> Html:
    """The help and what is allowed. Buttons that move a number stop at its limits by themselves."""
    if hint(field, ByChoice) or hint(field, Step):
        return NOTHING
    return joined(filter(None, [field.help, in_both_systems(field, span_text, "span")]), " ")


def stepped(field: InputField, made: Html) -> Html:
    """An entry between two buttons that move it, where the field declares a step."""
    if not (hint(field, Step) or hint(field, ByChoice)):
        return made
    less, more = (
        element(
            "button",
            {
                "type": "button",
                "class": "step",
                "data-move": move,
                "aria-label": f"{word}: {field.label}",
            },
            sign,
        )
        for move, word, sign in ((-1, "Less", "\u2212"), (1, "More", "+"))
    )
    return joined([less, made, more])


def entry(field: InputField, value: Any, path: str) -> Html:
    """What the person types into or chooses from."""
    spoken = {"aria-label": field.label} if short_label(field) else {}
    common = {"id": f"in-{path}", **spoken, "aria-describedby": f"hint-{path} problem-{path}"}
    if field.kind in (Kind.CHOICE, Kind.FLAG):
        chosen = str(value).lower() if isinstance(value, bool) else value
        return element("select", common, *options(field, chosen))
    text = value_text(field, value)
    if field.is_date:
        return element("input", {**common, "type": "date", "value": text})
    keypad = KEYPADS[field.kind]
    typed = {"type": "text", "inputmode": keypad, "value": text}
    return element("input", {**common, **typed, **ghosts(field), **more(field)})


def ghosts(field: InputField) -> dict[str, str]:
    """What shows through an empty entry, in both systems of units; the page's script changes them over."""
    metric, us = ghost_text(field, "metric"), ghost_text(field, "us")
    if not metric:
        return {}
    both_ways = {"data-ghost": metric, "data-ghost-us": us} if metric != us else {}
    return {"placeholder": metric, **both_ways}


def ghost_text(field: InputField, system: System) -> str:
    """What stands in where the entry is left empty and may, or else the worked example's figure."""
    text = value_text(field, field.default, system)
    if not text:
        return ""
    return f"{text}, assumed" if field.assumed else f"e.g. {text}"


def more(field: InputField) -> dict[str, str]:
    """What the page's script has to know of an entry: step and limits, or where its names come from."""
    step, names = hint(field, Step), hint(field, Suggest)
    if names:
        return {"data-suggest": names.names}
    if not (step or hint(field, ByChoice)):
        return {}
    by = {"data-step": f"{step.by:g}"} if step else {}
    return {**by, "data-low": f"{field.low:g}", "data-high": f"{field.high:g}"}


def options(field: InputField, value: Any) -> list[Html]:
    """The choices of a field, one of them chosen; before them an empty one, which says what it means."""
    stands = dict(zip(field.choices, field.words, strict=True)).get(
        value_text(field, field.default)
    )
    none = (
        "not said"
        if field.nullable
        else f"{stands}, assumed"
        if field.assumed and stands
        else "choose"
    )
    empty = [("", none)] if value is None or field.nullable else []
    return [
        element("option", {"value": choice, "selected": choice == value}, words)
        for choice, words in [*empty, *zip(field.choices, field.words, strict=True)]
    ]


def value_text(field: InputField, value: Any, system: System = "metric") -> str:
    """A value as it stands in the field."""
    if value is None:
        return ""
    if isinstance(value, str):
        return value
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, list):
        return ", ".join(value)
    return show_plain(to_shown(field, value, system), 6 if system == "us" else 12)


def span_text(field: InputField, system: System) -> str:
    """The possible range in words."""
    if field.low is None or field.high is None:
        return "May be left empty." if field.nullable else ""
    low, high = (
        in_threes(show_number(to_shown(field, end, system), 4)) for end in (field.low, field.high)
    )
    return f"{low} to {high}." + (" May be left empty." if field.nullable else "")


def in_both_systems(
    field: InputField, text: Callable[[InputField, System], str], name: str
) -> Html:
    """A text in both systems of units; the style sheet shows the one that is chosen."""
    metric, us = text(field, "metric"), text(field, "us")
    if metric == us:
        return element("span", {"class": name}, metric) if metric else NOTHING
    return joined(
        [
            element("span", {"class": f"{name} in-metric"}, metric),
            element("span", {"class": f"{name} in-us"}, us),
        ]
    )
