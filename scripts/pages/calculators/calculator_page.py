"""Pages of calculators: form, worked example, explanation, sources and checks, from one declaration."""

import json
from typing import NamedTuple

from markupsafe import Markup

from calculators.core.address import address
from calculators.core.declare import Spec
from calculators.core.describe import describe
from calculators.core.listing import load_all
from calculators.core.nested import scatter
from calculators.core.numbers import show_number
from calculators.core.paint.answer import show_value
from calculators.core.paint.fragment import fragment
from calculators.core.read import read_inputs
from calculators.core.run import compute
from scripts.pages.calculators import nitrogen_names
from scripts.pages.calculators.form import form, has_us_units
from scripts.pages.calculators.form_fields import value_text
from scripts.pages.calculators.ready.ready_values import ready_values
from scripts.pages.escape import escape
from scripts.pages.template import query, render
from scripts.records.load import Library
from scripts.records.published import cases

# Where a page asks the same more simply: its address from a calculator's page, and its words.
SIMPLER = {
    "diagnose": ("../../problems/", "Start from a drawing instead, with one question at a time.")
}
MODULE_ADDRESS = "python -m calculators"


def calculator_page(name: str, library: Library) -> str:
    """One calculator as Markdown; its worked example is computed here by the same function.

    Raises ``BadInput`` where its own example does not hold.
    """
    spec = load_all()[name]
    checked = cases(name)
    return render(
        "calculator.md.j2",
        spec=spec,
        form=form(spec),
        has_example=not any(field.octets for field in spec.inputs),
        tanks=tries(spec, library),
        simpler=SIMPLER.get(spec.name),
        paragraphs=[linked(text) for text in spec.description.split("\n\n")],
        us_units=has_us_units(spec),
        fed_by=fed_by(spec),
        example=example(spec),
        answer=Markup(fragment(spec, compute(spec.name, {}))),
        ready=Markup(ready_values(spec.name)),
        command=f"{MODULE_ADDRESS} {spec.name} {first_input(spec)}",
        sources=[(key, library.sources[key]) for key in spec.sources],
        published=[case for case in checked if case.origin == "published"],
        by_hand=[case for case in checked if case.origin == "by-hand"],
        library=library,
    )


def fed_by(spec: Spec) -> list[Spec]:
    """The calculators whose answer can be taken over into this one."""
    return [
        other
        for other in load_all().values()
        if any(way.calculator == spec.name for way in other.leads_to)
    ]


class Try(NamedTuple):
    """A demo tank on a calculator's page: a link that fills in the form."""

    name: str
    litres: str
    about: str
    address: str


def tries(spec: Spec, library: Library) -> list[Try]:
    """The demo tanks that this calculator is filled in for. The link works for sharing, too.

    Raises ``BadInput`` where one does not hold.
    """
    return [
        Try(
            tank.name,
            show_number(tank.litres),
            tank.about,
            query(address(spec, read_inputs(spec.inputs, filled.inputs, typed=False), "metric")),
        )
        for tank in library.demo.values()
        if (filled := tank.calculators.get(spec.name))
    ]


def example(spec: Spec) -> list[tuple[str, str, str]]:
    """The worked example's inputs: label, value in words, unit; what is left empty is left out.

    Lists of rows stand in the form already; as one sentence nobody could read them.
    """
    return [
        (field.label, show_value(field, field.default), field.unit)
        for field in spec.inputs
        if field.default is not None and field.kind != "list"
    ]


def linked(text: str) -> Markup:
    """A paragraph of a docstring; where it names the page of the model, that is a link."""
    link = Markup('<a href="../../{}">{}</a>').format(nitrogen_names.ADDRESS, nitrogen_names.TITLE)
    return link.join(escape(part) for part in " ".join(text.split()).split(nitrogen_names.TITLE))


def first_input(spec: Spec) -> str:
    """One input as the command line takes it; a list has to come from a file."""
    simple = [
        field
        for field in spec.inputs
        if field.kind != "list" and field.default is not None and not field.private
    ]
    if not simple:
        return "--input FILE.json"
    if simple[0].kind == "object":  # its first part that has a figure, by its dotted key
        flat = scatter((simple[0],), {simple[0].key: simple[0].default})
        key, value = next((key, value) for key, value in flat.items() if value is not None)
        return f"{key}={value}"
    return f"{simple[0].key}={value_text(simple[0], simple[0].default)}"


def description(name: str) -> str:
    """The calculator's description as JSON, for other programs."""
    return json.dumps(describe(load_all()[name]), ensure_ascii=False, indent=1)


def calculators_page() -> str:
    """The index of calculators."""
    return render("calculators.md.j2", calculators=load_all().values())
