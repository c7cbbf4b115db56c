"""One rule of rounding: the digits of a quantity decide, in tables, sentences, guides and captions."""

import ast
import re
from typing import Annotated
from zipfile import ZipFile

import pytest

from calculators.core.figures import figure
from calculators.core.listing import load_all
from calculators.core.paint.answer import show_value
from calculators.core.plot.captions import curve_sentence
from calculators.core.quantities import Concentration, Days, Percent
from calculators.core.quantity import Assumed, Digits, Label
from calculators.core.read_fields import read_input
from calculators.core.result import Series
from calculators.core.run import run
from scripts.runtime.wheel import build_wheel
from scripts.setup.paths import ROOT

ROUGH = Annotated[Days, Digits(1)]
OURS = [
    ROOT / "calculators" / "trimmings.py",
    *(path for room in ("trend", "floaters", "light", "surface_cover", "upkeep")
      for path in (ROOT / "calculators" / room).glob("*.py")),
]  # fmt: skip
DECIMALS = re.compile(r"\.\d+[efg%]|^[efg]$")


@pytest.mark.parametrize(
    ("kind", "value", "text"),
    [
        (Days, 8.944, "8.94"), (ROUGH, 8.944, "9"), (ROUGH, 12.4, "12"), (ROUGH, 0.17, "0.2"),
        (Concentration, 0.00002, "under 0.0001"), (Annotated[ROUGH, Digits(2)], 8.944, "8.9"),
    ],
)  # fmt: skip
def test_a_sentence_and_a_table_show_the_same(kind, value, text):
    assert figure(kind, value) == text
    assert show_value(read_input("key", Annotated[kind, Label("Key")]), value) == text
    assert show_value(read_input("key", Annotated[kind | None, Label("Key")]), value) == text


def test_a_kind_without_a_quantity_is_no_figure():
    with pytest.raises(TypeError, match="no quantity"):
        figure(Annotated[float, Label("Days")], 1.0)


def test_a_caption_keeps_to_the_digits_of_its_series():
    rough = Series("Cover", "%", "Day", "days", [0, 8.944], [40, 61.27], digits=2, x_digits=1)
    assert curve_sentence(rough) == (
        "Cover: 40 % at day 0, 61 % at day 9; lowest 40 at day 0, highest 61 at day 9."
    )


@pytest.mark.parametrize("path", OURS, ids=lambda path: f"{path.parent.name}/{path.name}")
def test_no_sentence_brings_a_rounding_of_its_own(path):
    formats = [
        part.value
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.FormattedValue) and node.format_spec
        for part in ast.walk(node.format_spec)
        if isinstance(part, ast.Constant)
    ]
    assert not [one for one in formats if DECIMALS.search(one)]


@pytest.mark.parametrize(
    ("name", "given"),
    [("floaters", {"cover_percent": 95}), ("light", {}), ("trimmings", {"wet_g": 137}), ("trend", {})],
)  # fmt: skip
def test_figures_with_decimals_in_the_first_sentence_stand_in_the_table_too(name, given):
    answer = run(name, given)
    spec = load_all()[name]
    shown = {
        show_value(field, answer["outputs"][field.key]).lstrip("\u2212") for field in spec.outputs
    } | {show_value(field, answer["inputs"][field.key]) for field in spec.inputs}
    first = answer["notes"][0]["text"]
    decimals = re.findall(r"\d+\.\d+", first)
    assert all(one in shown for one in decimals), (first, shown)


# What may stand in where a keeper leaves it empty, and what is asked for


@pytest.mark.parametrize(
    ("name", "assumed", "asked"),
    [
        (
            "floaters",
            "dry_matter_percent tissue_n_percent transmission_percent ring_count low_percent",
            "length_cm width_cm cover_percent thin_every_days",
        ),
        (
            "light",
            "attenuation_per_m floater_transmission_percent utilisation_percent wanted_class",
            "lamp length_cm width_cm depth_cm hours floater_cover_percent",
        ),
        (
            "trimmings",
            "dry_matter_percent tissue_n_percent tissue_p_percent protein_percent",
            "wet_g volume_l",
        ),
        (
            "trend",
            "kit_step next_after_days denitrification_mg_n_m2_day",
            "readings changes",
        ),
        ("surface-cover", "taps more_percent ring_diameter_cm leave_out_cm", "length_cm width_cm"),
        ("upkeep", "", "tanks"),
    ],
)
def test_sizes_cover_and_readings_are_asked_for_and_rough_figures_assumed(name, assumed, asked):
    fields = {field.key: field for field in load_all()[name].inputs}
    assert all(fields[key].assumed and not fields[key].nullable for key in assumed.split())
    assert not any(fields[key].assumed or fields[key].nullable for key in asked.split())


def test_a_row_of_upkeep_assumes_what_was_just_done():
    [tanks] = [field for field in load_all()["upkeep"].inputs if field.key == "tanks"]
    row = {field.key: field for field in tanks.row}
    assert {key for key, field in row.items() if field.assumed} == {
        "plants", "change_minutes", "floaters_minutes_week", "days_since_change",
    }  # fmt: skip
    assert read_input("key", Annotated[Percent, Assumed()]).assumed


def test_the_browsers_wheel_brings_the_table_of_floating_plants(tmp_path):
    with ZipFile(build_wheel(tmp_path)) as wheel:
        names = set(wheel.namelist())
    assert "calculators/data/floating-plants.json" in names
    assert "calculators/floaters/thinning.py" in names
