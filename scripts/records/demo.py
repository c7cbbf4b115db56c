"""The demo tanks: species/demo-tanks.yml, invented, one entry a tank."""

from collections.abc import Iterator
from typing import TYPE_CHECKING, Annotated, Any

from pydantic import Field

from calculators.core.listing import load_all
from calculators.core.result import BadInput
from calculators.core.run import run
from scripts.records.claim import Name, Record, Slug, Text
from scripts.records.lines import Finding, Place

if TYPE_CHECKING:
    from scripts.records.check import Checker

FILE = "demo-tanks.yml"


class Filled(Record):
    """What a calculator is filled in with for a tank, and what must come of it."""

    inputs: dict[str, Any]
    expect: dict[
        str, Any
    ] = {}  # outputs by key; such as the verdict that the tank is there to show


class DemoTank(Record):
    """An invented tank. ``about`` says in a line what it is there to show."""

    name: Name
    litres: Annotated[float, Field(gt=0)]
    about: Text
    calculators: Annotated[dict[Slug, Filled], Field(min_length=1)]


def findings(checker: "Checker") -> Iterator[Finding]:
    """Every calculator of every tank is run; what it refuses or answers otherwise is a finding."""
    path = checker.folder / FILE
    for key, tank in checker.library.demo.items():
        for name, filled in tank.calculators.items():
            place = (key, "calculators", name)
            for where, message in tried(name, filled):
                yield checker.finding(path, (*place, *where), message)


def tried(name: str, filled: Filled) -> Iterator[tuple[Place, str]]:
    """What is wrong with one calculator of a tank, by its place below it."""
    if name not in load_all():
        yield (), f"there is no calculator {name}; there are {', '.join(load_all())}"
        return
    try:
        outputs = run(name, filled.inputs)["outputs"]
    except BadInput as bad:
        for key, message in bad.problems:
            yield ("inputs", *steps(key)), message
        return
    for key, wanted in filled.expect.items():
        if key not in outputs:
            yield ("expect", key), f"is no output; there are {', '.join(outputs)}"
        elif outputs[key] != wanted:
            yield ("expect", key), f"comes out as {outputs[key]!r}, not {wanted!r}"


def steps(key: str) -> Place:
    """A field's key, such as ``plants[2].wet_g``, as a place in the file."""
    list_key, bracket, rest = key.partition("[")
    if not bracket:
        return (key,)
    row, _, inside = rest.partition("].")
    return (list_key, int(row.rstrip("]")) - 1, *([inside] if inside else []))
