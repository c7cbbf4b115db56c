"""One field of a form as plain HTML: label, entry, unit, what is allowed, and room for a problem."""

from collections.abc import Mapping, Sequence
from html import escape
from typing import Any, TypeVar

from calculators.core.fields import InputField, Kind
from calculators.core.form_hints import ByChoice, Step, Suggest
from calculators.core.numbers import show_number, show_plain
from calculators.core.units import System, to_shown, unit_shown

MOST_TICKS = 60  # more keys than that are typed, or need a page of their own
KEYPADS = {Kind.NUMBER: "decimal", Kind.INTEGER: "numeric", Kind.TEXT: "text", Kind.KEYS: "text"}

Hint = TypeVar("Hint")


def hint(field: InputField, kind: type[Hint]) -> Hint | None:
    """What a field says about its place in a form, of one kind; None where it says nothing."""
    return next((one for one in field.hints if isinstance(one, kind)), None)


def field_html(
    field: InputField, value: Any, within: str, row: Mapping[str, Any] | None = None
) -> str:
    """One field. ``row`` holds the values of the row around it, if it stands in one."""
    path = escape(f"{within}{field.key}")
    if is_ticked(field):
        return ticks_html(field, value or [], path)
    label = f'<label for="in-{path}">{escape(field.label)}</label>'
    return (
        f'<div class="field" data-key="{escape(field.key)}">{named(field, label, row or {})}'
        f'<div class="entry">{stepped(field, entry(field, value, path))}'
        f"{both(field, unit_shown, 'unit')}</div>"
        f'<p class="hint" id="hint-{path}">{hint_html(field)}</p>'
        f'<p class="problem" id="problem-{path}" hidden></p></div>'
    )


def is_ticked(field: InputField) -> bool:
    """Whether keys are chosen by tapping: few enough to be looked through."""
    return field.kind == Kind.KEYS and len(field.choices) <= MOST_TICKS


def ticks_html(field: InputField, chosen: Sequence[str], path: str) -> str:
    """Keys as boxes to tap, in a group that is read out by its label."""
    boxes = "".join(
        f'<label class="tick"><input type="checkbox" value="{escape(key)}"'
        f"{' checked' if key in chosen else ''}> {escape(words)}</label>"
        for key, words in zip(field.choices, field.words, strict=True)
    )
    return (
        f'<div class="field ticks" data-key="{escape(field.key)}" role="group" '
        f'aria-labelledby="label-{path}" aria-describedby="hint-{path} problem-{path}">'
        f'<b id="label-{path}">{escape(field.label)}</b><div class="boxes">{boxes}</div>'
        f'<p class="hint" id="hint-{path}">{escape(field.help)}</p>'
        f'<p class="problem" id="problem-{path}" hidden></p></div>'
    )


def named(field: InputField, label: str, row: Mapping[str, Any]) -> str:
    """The label; beside it the unit where that goes with another field of the row."""
    by = hint(field, ByChoice)
    if by is None:
        return label
    units = "".join(
        f'<span class="unit" data-by="{escape(by.key)}" data-choice="{escape(choice)}" '
        f'data-step="{step:g}"{own_limits(field, choice)}'
        f"{'' if row.get(by.key) == choice else ' hidden'}>{escape(unit)}</span>"
        for choice, unit, step in zip(by.choices, by.units, by.steps, strict=True)
    )
    return f'<div class="named">{label}{units}</div>'


def own_limits(field: InputField, choice: str) -> str:
    """The limits that go with a choice, where they differ by choice."""
    if field.possible_by is None or choice not in field.possible_by.ranges:
        return ""
    low, high = field.possible_by.ranges[choice]
    return f' data-low="{low:g}" data-high="{high:g}"'


def hint_html(field: InputField) -> str:
    """The help and what is allowed. Buttons that move a number stop at its limits by themselves."""
    if hint(field, ByChoice) or hint(field, Step):
        return ""
    return f"{escape(field.help)} {both(field, span_text, 'span')}".strip()


def stepped(field: InputField, made: str) -> str:
    """An entry between two buttons that move it, where the field declares a step."""
    if not (hint(field, Step) or hint(field, ByChoice)):
        return made
    less, more = (
        f'<button type="button" class="step" data-move="{move}" '
        f'aria-label="{word}: {escape(field.label)}">{sign}</button>'
        for move, word, sign in ((-1, "Less", "\u2212"), (1, "More", "+"))
    )
    return f"{less}{made}{more}"


def entry(field: InputField, value: Any, path: str) -> str:
    """What the person types into or chooses from."""
    common = f'id="in-{path}" aria-describedby="hint-{path} problem-{path}"'
    if field.kind == Kind.CHOICE:
        return f"<select {common}>{options(field, value)}</select>"
    if field.kind == Kind.FLAG:
        chosen = value if value is None else str(value).lower()
        return f"<select {common}>{options(field, chosen)}</select>"
    text = escape(value_text(field, value))
    if field.is_date:
        return f'<input {common} type="date" value="{text}">'
    return (
        f'<input {common} type="text" inputmode="{KEYPADS[field.kind]}" value="{text}"'
        f"{ghosts(field)}{more(field)}>"
    )


def ghosts(field: InputField) -> str:
    """What shows through an empty entry, in both systems of units; the page's script changes them over."""
    metric, us = (escape(ghost_text(field, system)) for system in ("metric", "us"))
    if not metric:
        return ""
    both_ways = f' data-ghost="{metric}" data-ghost-us="{us}"' if metric != us else ""
    return f' placeholder="{metric}"{both_ways}'


def ghost_text(field: InputField, system: System) -> str:
    """What stands in where the entry is left empty and may, or else the worked example's figure."""
    text = value_text(field, field.default, system)
    if not text:
        return ""
    return f"{text}, assumed" if field.assumed else f"e.g. {text}"


def more(field: InputField) -> str:
    """What the page's script has to know of an entry: step and limits, or where its names come from."""
    step, names = hint(field, Step), hint(field, Suggest)
    if names:
        return f' data-suggest="{escape(names.names)}"'
    if not (step or hint(field, ByChoice)):
        return ""
    by = f' data-step="{step.by:g}"' if step else ""
    return f'{by} data-low="{field.low:g}" data-high="{field.high:g}"'


def options(field: InputField, value: Any) -> str:
    """The choices of a field, one of them chosen; before them an empty one, which says what it means."""
    stands = dict(zip(field.choices, field.words, strict=True)).get(
        value_text(field, field.default)
    )
    none = "" if field.nullable else f"{stands}, assumed" if field.assumed and stands else "choose"
    parts = [] if value is not None else [f'<option value="">{escape(none)}</option>']
    if field.nullable and value is not None:
        parts = ['<option value=""></option>']
    for choice, words in zip(field.choices, field.words, strict=True):
        chosen = " selected" if choice == value else ""
        parts.append(f'<option value="{escape(choice)}"{chosen}>{escape(words)}</option>')
    return "".join(parts)


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
    low, high = (show_number(to_shown(field, end, system), 4) for end in (field.low, field.high))
    return f"{low} to {high}." + (" May be left empty." if field.nullable else "")


def both(field: InputField, text: Any, name: str) -> str:
    """A text in both systems of units; the style sheet shows the one that is chosen."""
    metric, us = text(field, "metric"), text(field, "us")
    if metric == us:
        return f'<span class="{name}">{escape(metric)}</span>' if metric else ""
    return (
        f'<span class="{name} in-metric">{escape(metric)}</span>'
        f'<span class="{name} in-us">{escape(us)}</span>'
    )
