"""What a form is told beside its inputs: parts, buttons that add rows, units by choice, names offered."""

import json
from html.parser import HTMLParser
from typing import Annotated

import pytest

from calculators.core.declare import read_spec
from calculators.core.form_hints import (
    FINER,
    ByChoice,
    InOrder,
    InRow,
    Part,
    Presets,
    Suggest,
)
from calculators.core.listing import load_all
from calculators.core.quantities import Days, Percent
from calculators.core.quantity import Label
from calculators.core.read import read_inputs
from calculators.science.nitrogen.forecast_tank import Event
from scripts.pages.calculators.form import form, in_parts
from scripts.pages.calculators.form_fields import hint
from scripts.pages.calculators.suggest import plants

LISTS = [
    (spec.name, field)
    for spec in load_all().values()
    for field in spec.inputs
    if field.kind == "list"
]


class Tags(HTMLParser):
    """Every tag with its attributes and the tags around it."""

    def __init__(self, text):
        super().__init__()
        self.found, self.open = [], []
        self.feed(text)

    def handle_starttag(self, tag, attributes):
        self.found.append((tag, dict(attributes), [one for one, _ in self.open]))
        if tag not in ("input", "br"):
            self.open.append((tag, dict(attributes)))

    def handle_endtag(self, tag):
        assert self.open.pop()[0] == tag

    def of(self, tag, **wanted):
        return [
            (attributes, around)
            for name, attributes, around in self.found
            if name == tag and wanted.items() <= attributes.items()
        ]


class Answer(Event):
    pass


def plan(
    first: Annotated[Percent, Label("First")] = 1.0,
    rare: Annotated[Percent, Label("Rare"), FINER] = 1.0,
    second: Annotated[Days, Label("Second"), Part("Later")] = 1.0,
    last: Annotated[Days, Label("Last"), Part("Later")] = 1.0,
) -> Event:
    """Plan."""
    return Event(first, "trim", rare)


SPEC = read_spec(plan, "Plan", ())


def test_parts_come_in_order_and_closed_ones_last():
    grouped = in_parts(SPEC.inputs)
    assert [part and part.heading for part, _ in grouped] == [None, "Later", "Finer points"]
    assert [[field.key for field in fields] for _, fields in grouped] == [
        ["first"],
        ["second", "last"],
        ["rare"],
    ]


def test_a_closed_part_is_behind_a_tap_and_an_open_one_has_a_heading():
    tags = Tags(form(SPEC))
    (entry, around) = tags.of("input", id="in-rare")[0]
    assert "details" in around
    assert entry["value"] == ""
    assert entry["placeholder"] == "e.g. 1"
    assert "details" not in tags.of("input", id="in-last")[0][1]
    named = tags.of("div", role="group")[0][0]["aria-labelledby"]
    assert tags.of("h2", id=named)


def spread(
    length: Annotated[Percent, Label("Length, inside"), InRow("Inside size", "Length")] = 1.0,
    other: Annotated[Days, Label("Other")] = 1.0,
    width: Annotated[Percent, Label("Width, inside"), InRow("Inside size", "Width")] = 1.0,
    whole: Annotated[Days, Label("Whole name"), InRow("Inside size")] = 1.0,
) -> Event:
    """Spread."""
    return Event(length, "trim", width)


def test_fields_of_one_legend_stand_in_one_row_where_the_first_stands():
    tags = Tags(form(read_spec(spread, "Spread", ())))
    assert [entry["id"] for entry, _ in tags.of("input")] == [
        "in-length",
        "in-width",
        "in-whole",
        "in-other",
    ]
    assert len(tags.of("fieldset", **{"class": "together"})) == len(tags.of("legend")) == 1
    inside = ["fieldset" in around for _, around in tags.of("input")]
    assert inside == [True, True, True, False]


def test_a_short_label_is_spoken_in_full():
    made = form(read_spec(spread, "Spread", ()))
    entries = {entry["id"]: entry for entry, _ in Tags(made).of("input")}
    assert entries["in-length"]["aria-label"] == "Length, inside"
    assert '<label for="in-length">Length</label>' in made
    assert "aria-label" not in entries["in-whole"]
    assert '<label for="in-whole">Whole name</label>' in made


def test_what_a_keeper_knows_first_is_open_in_the_forecast():
    spec = load_all()["nitrogen-forecast"]
    closed = {
        field.key for part, fields in in_parts(spec.inputs) if part.closed for field in fields
    }
    assert not closed & {
        "volume_l", "feed_g_week", "plants", "events", "change_percent", "ph",
        "nitrate_mg_l", "start_ammonia_mg_n_l", "start_nitrite_mg_n_l", "filter_maturity_percent",
    }  # fmt: skip
    assert {"retained_percent", "denitrification_mg_n_m2_day", "surface_cm2"} <= closed


def test_hints_change_nothing_for_a_program(tmp_path):
    from calculators.core.describe import describe

    described = json.dumps(describe(load_all()["nitrogen-forecast"]))
    assert "Finer points" not in described


@pytest.mark.parametrize(("name", "field"), LISTS, ids=[f"{n}-{f.key}" for n, f in LISTS])
def test_buttons_and_units_of_a_list_go_with_its_choices(name, field):
    by_key = {one.key: one for one in field.row}
    order, presets = hint(field, InOrder), hint(field, Presets)
    assert order is None or by_key[order.key].kind == "number"
    for button in presets.buttons if presets else ():
        row = button.values | ({order.key: order.step} if order else {})
        read_inputs(field.row, row, typed=False)  # raises where a button adds what will not do
    for one in field.row:
        by = hint(one, ByChoice)
        if by:
            assert by.choices == by_key[by.key].choices
            assert len(by.units) == len(by.steps) == len(by.choices)


def test_every_kind_of_event_has_its_button_unit_and_mould():
    tags = Tags(form(load_all()["nitrogen-forecast"]))
    events = next(f for f in load_all()["nitrogen-forecast"].inputs if f.key == "events")
    buttons = hint(events, Presets).buttons
    kind = next(one for one in events.row if one.key == "kind")
    assert {button.values["kind"] for button in buttons} == set(kind.choices)
    moulds = [a for a, around in tags.of("template") if a["data-mould"] != "0"]
    adds = [a for a, _ in tags.of("button", **{"class": "add"}) if a["data-mould"] != "0"]
    assert [a["data-mould"] for a in adds] == [a["data-mould"] for a in moulds]
    assert [a["aria-label"] for a in adds] == [f"Add: {button.label}" for button in buttons]
    shown = [a for a, _ in tags.of("span", **{"class": "unit", "data-choice": "trim"})]
    assert any("hidden" in a for a in shown)
    assert any("hidden" not in a for a in shown)


def test_names_that_are_offered_fill_fields_of_their_row(library):
    found = json.loads(plants(library))
    row = next(f for f in load_all()["nitrogen-forecast"].inputs if f.key == "plants").row
    names = next(hint(one, Suggest) for one in row if hint(one, Suggest))
    assert names.names == "plants"
    for number in found["names"].values():
        read_inputs(row, {"name": "x", "wet_g": "1", **found["rows"][number]}, typed=True)
    assert {p.name for p in library.offered().values() if p.growth.doubling_days} == {
        plant.name for plant in library.plants.values()
    } & found["names"].keys()
    duckweed = found["rows"][found["names"]["Lemna minor"]]
    assert duckweed == {"doubling_days": "6", "floating": "true"}  # the record says 3 to 12
    assert len(json.dumps(found)) < 30_000  # fetched over a weak signal
