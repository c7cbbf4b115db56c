"""A calculator's form as plain HTML, from its declaration. It says what is allowed with no script."""

from html import escape
from typing import Any

from markupsafe import Markup

from calculators.core.declare import Field, Spec
from calculators.core.numbers import show_number, show_plain
from calculators.core.units import System, to_shown, unit_shown

KEYPADS = {"number": "decimal", "integer": "numeric", "text": "text"}


def form(spec: Spec) -> Markup:
    """All fields of a calculator, with its worked example filled in."""
    fields = "".join(field_html(field) for field in spec.inputs)
    return Markup(f'<form class="inputs" id="inputs" autocomplete="off" novalidate>{fields}</form>')


def has_us_units(spec: Spec) -> bool:
    """Whether anything of a calculator is shown differently in US units."""
    return any(field.quantity and field.quantity.us for field in (*spec.inputs, *spec.outputs))


def field_html(field: Field) -> str:
    """One field: label, entry, hint, and the place where a problem is said."""
    key = escape(field.key)
    return (
        f'<div class="field"><label for="in-{key}">{escape(field.label)}</label>'
        f'<div class="entry">{entry(field)}{both(field, unit_shown, "unit")}</div>'
        f'<p class="hint" id="hint-{key}">{escape(field.help)} {both(field, span_text, "span")}</p>'
        f'<p class="problem" id="problem-{key}" hidden></p></div>'
    )


def entry(field: Field) -> str:
    """What the person types into or chooses from."""
    key = escape(field.key)
    common = f'id="in-{key}" name="{key}" aria-describedby="hint-{key} problem-{key}"'
    if field.kind == "choice":
        return f"<select {common}>{options(field)}</select>"
    keypad = KEYPADS[field.kind]
    us = escape(value_text(field, "us"))
    return (
        f'<input {common} type="text" inputmode="{keypad}" '
        f'value="{escape(value_text(field, "metric"))}" data-us="{us}">'
    )


def options(field: Field) -> str:
    """The choices of a field, its default chosen."""
    parts = []
    for choice, words in zip(field.choices, field.words, strict=True):
        chosen = " selected" if choice == field.default else ""
        parts.append(f'<option value="{escape(choice)}"{chosen}>{escape(words)}</option>')
    return "".join(parts)


def value_text(field: Field, system: System) -> str:
    """The default as it stands in the field."""
    value: Any = field.default
    if value is None:
        return ""
    if isinstance(value, str):
        return value
    return show_plain(to_shown(field, value, system), 6 if system == "us" else 12)


def span_text(field: Field, system: System) -> str:
    """The possible range in words."""
    if field.low is None or field.high is None:
        return "May be left empty." if field.nullable else ""
    low, high = (show_number(to_shown(field, end, system), 4) for end in (field.low, field.high))
    return f"{low} to {high}." + (" May be left empty." if field.nullable else "")


def both(field: Field, text: Any, name: str) -> str:
    """A text in both systems of units; the style sheet shows the one that is chosen."""
    metric, us = text(field, "metric"), text(field, "us")
    if metric == us:
        return f'<span class="{name}">{escape(metric)}</span>' if metric else ""
    return (
        f'<span class="{name} in-metric">{escape(metric)}</span>'
        f'<span class="{name} in-us">{escape(us)}</span>'
    )
