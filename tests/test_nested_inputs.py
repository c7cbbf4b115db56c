"""Inputs that are lists of known keys, and objects: read, refused by name, given as their own type."""

import json
from typing import Annotated, NamedTuple

import pytest

from calculators.bridge import answer
from calculators.core.declare import read_spec
from calculators.core.nested import gather, scatter
from calculators.core.quantities import PH, Temperature
from calculators.core.quantity import Keys, Label
from calculators.core.read import read_inputs
from calculators.core.result import BadInput
from calculators.core.run import as_rows
from tests.command_line import command


class Water(NamedTuple):
    ph: PH | None = None
    temperature_c: Temperature | None = None


class Answer(NamedTuple):
    ph: PH | None


def look(
    seen: Annotated[list[str], Label("Seen"), Keys(("moss", "fern"), ("Moss", "Fern"))] = [],  # noqa: B006
    water: Annotated[Water | None, Label("Water")] = None,
) -> Answer:
    """Look."""
    return Answer(water.ph if water else None)


FIELDS = read_spec(look, "Look", ()).inputs


def test_kinds_and_parts_are_declared():
    seen, water = FIELDS
    assert (seen.kind, seen.choices) == ("keys", ("moss", "fern"))
    assert (water.kind, [part.key for part in water.row]) == ("object", ["ph", "temperature_c"])
    assert water.nullable


def test_an_object_reaches_the_formula_as_its_own_type():
    read = read_inputs(FIELDS, {"water": {"ph": 7}}, typed=False)
    assert as_rows(FIELDS[1], read["water"]) == Water(7.0, None)


@pytest.mark.parametrize("given", [{"water": {"ph": "7,5"}}, {"water.ph": "7,5"}])
def test_text_may_come_nested_or_dotted(given):
    assert read_inputs(FIELDS, given, typed=True)["water"]["ph"] == 7.5


def test_keys_come_as_a_list_or_as_text_each_once():
    assert read_inputs(FIELDS, {"seen": "fern, moss,fern"}, typed=True)["seen"] == ["fern", "moss"]
    assert read_inputs(FIELDS, {"seen": ["moss"]}, typed=False)["seen"] == ["moss"]


def test_every_bad_part_is_named():
    with pytest.raises(BadInput) as bad:
        read_inputs(
            FIELDS, {"seen": ["mos", "x"], "water": {"ph": 99, "temperatur": 1}}, typed=False
        )
    said = dict(bad.value.problems)
    assert list(said) == ["seen[1]", "seen[2]", "water.temperatur", "water.ph"]
    assert "did you mean moss?" in said["seen[1]"]
    assert "did you mean temperature_c?" in said["water.temperatur"]


def test_gather_and_scatter_are_each_others_way_back():
    flat = {"seen": ["moss"], "water.ph": 7, "water.temperature_c": 20}
    assert scatter(FIELDS, gather(FIELDS, flat)) == flat
    assert gather(FIELDS, {"seen.ph": 1}) == {"seen.ph": 1}


def test_the_command_line_takes_keys_and_dotted_parts():
    done = command("diagnose", "findings=coat-black-tufts,flow-strong", "readings.ph=7,2", "--json")
    given = json.loads(done.stdout)["inputs"]
    assert given["findings"] == ["coat-black-tufts", "flow-strong"]
    assert given["readings"]["ph"] == 7.2
    done = command("diagnose", "findings=coat-black-tuft", "readings.hp=7")
    assert done.returncode == 2
    assert "findings[1]: " in done.stderr
    assert "readings.hp: " in done.stderr


def test_describe_lists_every_finding_once_by_where_one_looks():
    described = json.loads(command("diagnose", "--describe").stdout)
    groups = {group["where"]: group["findings"] for group in described["findings"]}
    assert {"old-leaves", "new-leaves", "stem", "roots", "surface", "water", "animals"} <= set(
        groups
    )
    keys = [one["key"] for group in groups.values() for one in group]
    assert len(keys) == len(set(keys))
    field = next(one for one in described["inputs"] if one["key"] == "findings")
    assert sorted(keys) == sorted(field["choices"])
    assert all(one["question"].endswith("?") for group in groups.values() for one in group)
    readings = next(one for one in described["inputs"] if one["key"] == "readings")
    assert [part["key"] for part in readings["row"]][:3] == [
        "nitrate_mg_l", "phosphate_mg_l", "ammonia_mg_n_l",
    ]  # fmt: skip


def test_the_page_may_send_dotted_text_change_units_and_get_an_address():
    asked = {
        "calculator": "diagnose",
        "given": {"findings": "water-hot", "readings.temperature_c": "90"},
        "given_in": "us",
        "units": "metric",
    }
    reply = json.loads(answer(json.dumps(asked)))
    assert "problems" not in reply
    assert float(reply["given"]["readings.temperature_c"]) == pytest.approx(32.2222, abs=1e-3)
    assert reply["address"]["findings"] == "water-hot"
    assert reply["address"]["readings.temperature_c"].startswith("32.2")
    again = json.loads(answer(json.dumps({"calculator": "diagnose", "given": reply["address"]})))
    assert again["answer"]["outputs"] == reply["answer"]["outputs"]
