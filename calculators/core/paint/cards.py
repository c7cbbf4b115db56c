"""Outputs that are lists of rows, as cards, a table, or a list that opens; used at build time and live."""

from html import escape
from typing import Any

from calculators.core.declare import Field, Spec
from calculators.core.numbers import show_number
from calculators.core.paint.answer import show_value
from calculators.core.quantity import AsRows
from calculators.core.units import System, unit_shown

UP = "../../"  # from a calculator's page to the site's root


def lists(spec: Spec, outputs: dict[str, Any], system: System = "metric") -> list[str]:
    """HTML for each output that is declared ``AsRows``, all texts escaped; nothing for an empty one."""
    return [
        STYLES[field.as_rows.style](field, field.as_rows, outputs[field.key], system)
        for field in spec.outputs
        if field.as_rows and outputs[field.key]
    ]


def cards(field: Field, shape: AsRows, rows: list[dict[str, Any]], system: System) -> str:
    """An ordered list of cards: title with link, bar, sentences."""
    made = "".join(
        f"<li>{heading(shape, row)}{bar(shape, row)}{sentences(shape, row, 'ul')}</li>"
        for row in rows
    )
    return f'<h3>{escape(field.label)}</h3>{hint(field)}<ol class="picks">{made}</ol>'


def closed(field: Field, shape: AsRows, rows: list[dict[str, Any]], system: System) -> str:
    """A list that opens when tapped; the page's script keeps it open by its id."""
    made = "".join(f"<li>{heading(shape, row)}{sentences(shape, row, 'ul')}</li>" for row in rows)
    return (
        f'<details id="list-{escape(field.key)}"><summary>{escape(field.label)}: {len(rows)}</summary>'
        f'{hint(field)}<ul class="picks">{made}</ul></details>'
    )


def table(field: Field, shape: AsRows, rows: list[dict[str, Any]], system: System) -> str:
    """A small table: the title, then the columns named in the declaration."""
    parts = [next(one for one in field.row if one.key == key) for key in shape.columns]
    heads = "".join(f'<th scope="col">{head(part, system)}</th>' for part in parts)
    title = next(one for one in field.row if one.key == shape.title)
    made = "".join(
        f'<tr><th scope="row">{heading(shape, row)}</th>'
        + "".join(f"<td>{escape(show_value(part, row[part.key], system))}</td>" for part in parts)
        + "</tr>"
        for row in rows
    )
    return (
        f'<h3>{escape(field.label)}</h3>{hint(field)}<table class="set"><thead><tr>'
        f'<th scope="col">{escape(title.label)}</th>{heads}</tr></thead><tbody>{made}</tbody></table>'
    )


def head(part: Field, system: System) -> str:
    """A column's head with its unit."""
    unit = unit_shown(part, system)
    return escape(f"{part.label}, {unit}" if unit else part.label)


def heading(shape: AsRows, row: dict[str, Any]) -> str:
    """A row's title, linked to its page, and its subtitle."""
    name = f"<b>{escape(str(row[shape.title]))}</b>"
    if shape.subtitle and row[shape.subtitle]:
        name += f" <span>{escape(str(row[shape.subtitle]))}</span>"
    return f'<a href="{escape(UP + shape.page.format(**row))}">{name}</a>' if shape.page else name


def bar(shape: AsRows, row: dict[str, Any]) -> str:
    """A figure from 0 to 100 as a bar with its words."""
    if not shape.bar:
        return ""
    value = row[shape.bar]
    label = escape(f"{row[shape.title]}: {show_number(value)} of 100")
    return (
        f'<p class="score"><meter min="0" max="100" value="{value:.1f}" aria-label="{label}"></meter> '
        f"{show_number(value, 2)} of 100</p>"
    )


def sentences(shape: AsRows, row: dict[str, Any], tag: str) -> str:
    """A row's sentences."""
    made = "".join(f"<li>{escape(text)}</li>" for text in row[shape.lines]) if shape.lines else ""
    return f"<{tag}>{made}</{tag}>" if made else ""


def hint(field: Field) -> str:
    """The output's help, where it has one."""
    return f'<p class="hint">{escape(field.help)}</p>' if field.help else ""


STYLES = {"cards": cards, "closed": closed, "table": table}
