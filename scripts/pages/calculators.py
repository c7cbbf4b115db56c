"""Pages of calculators: form, worked example, explanation, sources and checks, from one declaration."""

import json

from markupsafe import Markup

from calculators.core.declare import Spec
from calculators.core.describe import describe
from calculators.core.listing import load_all
from calculators.core.paint import rows, show_value
from calculators.core.plot import plot
from calculators.core.run import run
from scripts.pages.form import form, has_us_units, value_text
from scripts.pages.template import render
from scripts.records.load import Library
from scripts.records.published import cases

MODULE_ADDRESS = "python -m calculators"


def calculator_page(spec: Spec, library: Library) -> str:
    """One calculator as Markdown; its worked example is computed here by the same function."""
    answer = run(spec.name, {})
    return render(
        "calculator.md.j2",
        spec=spec,
        form=form(spec),
        paragraphs=spec.description.split("\n\n"),
        us_units=has_us_units(spec),
        fed_by=fed_by(spec),
        example=example(spec),
        rows=rows(spec, answer["outputs"]),
        notes=answer["notes"],
        plots=[Markup(plot(series)) for series in answer.get("series", {}).values()],
        command=f"{MODULE_ADDRESS} {spec.name} {first_input(spec)}",
        sources=[(key, library.sources[key]) for key in spec.sources],
        cases=cases(spec.name),
        library=library,
    )


def fed_by(spec: Spec) -> list[Spec]:
    """The calculators whose answer can be taken over into this one."""
    return [
        other
        for other in load_all().values()
        if any(field.onward and field.onward.calculator == spec.name for field in other.outputs)
    ]


def example(spec: Spec) -> list[tuple[str, str, str]]:
    """The worked example's inputs: label, value in words, unit; what is left empty is left out."""
    return [
        (field.label, show_value(field, field.default), field.unit)
        for field in spec.inputs
        if field.default is not None
    ]


def first_input(spec: Spec) -> str:
    """One input as the command line takes it; a list has to come from a file."""
    simple = [
        field
        for field in spec.inputs
        if field.kind != "list" and field.default is not None and not field.private
    ]
    if not simple:
        return "--input FILE.json"
    return f"{simple[0].key}={value_text(simple[0], simple[0].default)}"


def description(spec: Spec) -> str:
    """The calculator's description as JSON, for other programs."""
    return json.dumps(describe(spec), ensure_ascii=False, indent=1)


def calculators_page() -> str:
    """The index of calculators."""
    return render("calculators.md.j2", calculators=load_all().values())
