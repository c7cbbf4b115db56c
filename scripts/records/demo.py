"""The demo tanks: species/demo-tanks.yml, invented, one entry a tank."""

from typing import Annotated, Any

from pydantic import Field

from scripts.records.claim import Name, Slug, Text
from scripts.records.record import Record

DEMO_FILE = "demo-tanks.yml"


class Filled(Record):
    """What a calculator is filled in with for a tank, and what must come of it."""

    inputs: dict[str, Any]
    expect: dict[
        str, Any
    ] = {}  # outputs by key; such as the verdict that the tank is there to show


DaysAgo = Annotated[str, Field(pattern=r"^\d{1,4}$")]  # the keys of a mapping are texts


class OnShelf(Record):
    """The tank as the shelf has it, and its invented log.

    ``log``: by kind and what, such as ``reading ph``, the value by how many days ago.
    """

    tank: dict[str, Any]
    log: dict[str, dict[DaysAgo, float]]


class DemoTank(Record):
    """An invented tank. ``about`` says in a line what it is there to show."""

    name: Name
    litres: Annotated[float, Field(gt=0)]
    about: Text
    calculators: Annotated[dict[Slug, Filled], Field(min_length=1)]
    shelf: OnShelf
