"""The page of the nitrogen model: equations, constants and states, read off the code."""

import re
from itertools import groupby

from markupsafe import Markup

from calculators.core.numbers import show_number
from calculators.science.nitrogen import model, ode, simulate
from scripts.pages.calculators.kept_predictions import held_against_all
from scripts.pages.calculators.nitrogen_equations import (
    CONSTANTS,
    Equation,
    constants_of,
    documentation,
)
from scripts.pages.calculators.nitrogen_limits import LEFT_OUT, SURPRISES
from scripts.pages.calculators.nitrogen_names import DESCRIPTION, TITLE
from scripts.pages.cite import Citations
from scripts.pages.escape import escape
from scripts.pages.template import render
from scripts.records.load import Library

FORECAST = "nitrogen-forecast"
TURNED = re.compile(r"\^(?P<raised>\([^()]*\)|[\w.]+)|(?<=\w)_(?P<lowered>\w+)")


def model_page(library: Library) -> str:
    """The page as Markdown."""
    return render(
        "nitrogen-model.md.j2",
        title=TITLE,
        description=DESCRIPTION,
        sections=sections(),
        states=(*model.OF_TANK, *model.OF_COHORT, *model.ADDED_UP),
        constants={name: constants_of(module) for name, module in CONSTANTS.items()},
        method=paragraphs(ode.__doc__),
        tolerance=show_number(100 * simulate.RELATIVE),
        experiments=held_against_all(FORECAST),
        left_out=LEFT_OUT,
        surprises=SURPRISES,
        formulas=formulas,
        formula=formula,
        shown=show_number,
        cite=Citations(library.sources),
        words=library.vocabulary,
    )


def sections() -> list[tuple[str, list[Equation]]]:
    """The equations under their headings, in the order of the code."""
    return [
        (name, list(equations))
        for name, equations in groupby(documentation(), key=lambda equation: equation.section)
    ]


def paragraphs(docstring: str | None) -> list[str]:
    """The paragraphs of a docstring, each on one line."""
    return [" ".join(part.split()) for part in (docstring or "").split("\n\n")]


def formulas(text: str) -> list[Markup]:
    """The equations of one rate, which a semicolon parts."""
    return [formula(part.strip()) for part in text.split(";")]


def formula(text: str) -> Markup:
    """One equation in plain HTML: powers raised, indices lowered, all else as it is written."""
    html, end = Markup(""), 0
    for power in TURNED.finditer(text):
        tag = "sup" if power["raised"] else "sub"
        inside = power["raised"] or power["lowered"]
        html += escape(text[end : power.start()]) + Markup(f"<{tag}>{escape(inside)}</{tag}>")
        end = power.end()
    return Markup(f"<code>{html}{escape(text[end:])}</code>")
