"""Names, keys and shapes that other people's scripts rely on."""

import json
import math
import subprocess
import sys

import pytest

from calculators.core.listing import load_all
from calculators.core.run import run
from scripts.setup.paths import ROOT
from tests.command_line import command, process

KEYS = {
    "free-ammonia": (
        "ammonia_mg_l reported_as ph temperature_c",
        "pka unionised_percent unionised_mg_n_l total_mg_n_l acute_limit_mg_n_l "
        "chronic_limit_mg_n_l chronic_ratio rating",
    ),
    "water-change": (
        "now_mg_l tap_mg_l target_mg_l max_change_percent volume_l",
        "single_change_percent changes each_change_percent after_mg_l litres_total",
    ),
    "ammonia-change": (
        "ammonia_mg_l reported_as ph kh_dh temperature_c tap_ph tap_kh_dh tap_ammonia_mg_n_l "
        "volume_l change_percent",
        "now_nh3_mg_n_l at_once_nh3_mg_n_l later_nh3_mg_n_l at_once_ph later_ph later_total_mg_n_l "
        "best_percent way",
    ),
    "trimmings": (
        "wet_g dry_matter_percent tissue_n_percent tissue_p_percent volume_l protein_percent",
        "dry_g n_mg p_mg nitrate_equivalent_mg_l phosphate_equivalent_mg_l feed_equivalent_g",
    ),
    "floaters": (
        "length_cm width_cm ring_diameter_cm cover_percent doubling_days low_percent high_percent "
        "thin_every_days wet_g_m2 dry_matter_percent tissue_n_percent transmission_percent",
        "surface_cm2 allowed_cm2 covered_cm2 days_to_high remove_percent remove_cm2 removed_wet_g "
        "removed_n_mg light_left_percent light_left_percent_at_high",
    ),
    "units": ("value from to", "result factor"),
    "pick": (
        "dli_mol light_class height_cm temperature_c ph gh_dh minutes_week place animals habits "
        "demand_mg_n_day count",
        "ranked excluded together",
    ),
    "diagnose": (
        "plant findings absent readings light_hours feed_g_week volume_l cover_percent "
        "days_since_planting tank_age_days",
        "ranked next_check first_action urgent enough",
    ),
    "identify": ("place traits label count", "ranked ask_next enough"),
    "nitrogen-balance": (
        "volume_l feed_g_week protein_percent plant_uptake_mg_n_day floater_area_cm2 "
        "floater_doubling_days trimmings_g_week soil_area_cm2 denitrification_mg_n_m2_day "
        "change_percent change_every_days tap_nitrate_mg_l nitrate_mg_l",
        "feed_n_mg_day ammonia_n_mg_day plants_n_mg_day denitrified_n_mg_day changed_out_n_mg_day "
        "nitrate_change_mg_l_week settled_nitrate_high_mg_l settled_nitrate_low_mg_l "
        "days_to_shortage feed_to_balance_g_week verdict",
    ),
    "nitrogen-forecast": (
        "volume_l feed_g_week protein_percent plant_uptake_mg_n_day floater_area_cm2 "
        "floater_doubling_days trimmings_g_week soil_area_cm2 denitrification_mg_n_m2_day "
        "change_percent change_every_days tap_nitrate_mg_l nitrate_mg_l days ph temperature_c "
        "start_ammonia_mg_n_l start_nitrite_mg_n_l filter_maturity_percent plants events dli_mol "
        "kh_dh tap_kh_dh soil_age_days readings",
        "peak_unionised_mg_n_l peak_unionised_day peak_nitrite_mg_n_l peak_nitrite_day "
        "final_nitrate_mg_l first_shortage_day recovery_day balance_error_percent final_kh_dh fitted",
    ),
    "dosing": (
        "volume_l source nutrient rise_mg_l bottle_ml dose_ml label_n_percent label_p2o5_percent "
        "label_k2o_percent label_fe_percent label_mg_percent density_g_ml",
        "grams_per_dose grams_per_bottle doses_per_bottle bottle_g_l solubility_g_l dissolves "
        "ml_per_dose adds",
    ),
    "light": (
        "lumens ppfd_surface_umol lamp length_cm width_cm depth_cm hours attenuation_per_m "
        "floater_cover_percent floater_transmission_percent utilisation_percent",
        "ppfd_surface_umol ppfd_substrate_umol dli_surface_mol dli_substrate_mol light_class hours_for_class",
    ),
    "tank": (
        "shape length_cm width_cm height_cm diameter_cm water_level_cm glass_mm soil_depth_cm "
        "cap_depth_cm hardscape_l stand_kg",
        "gross_l net_l surface_cm2 soil_l cap_l cap_kg mass_kg floor_kg_m2",
    ),
    "hardness": (
        "gh_dh kh_dh ph temperature_c mix_gh_dh mix_kh_dh target_gh_dh volume_l",
        "gh_mg_l_caco3 kh_mg_l_caco3 kh_meq_l co2_mg_l mix_litres mixed_kh_dh",
    ),
    "top-up": (
        "volume_l evaporation_l_week top_up_gh_dh top_up_kh_dh top_up_nitrate_mg_l change_percent "
        "change_every_days tap_gh_dh tap_kh_dh gh_dh kh_dh weeks",
        "gh_end_dh kh_end_dh gh_settled_high_dh gh_settled_low_dh kh_settled_high_dh "
        "pure_share_percent",
    ),
    "remineralise": (
        "volume_l start_gh_dh start_kh_dh target_gh_dh target_kh_dh calcium_to_magnesium "
        "calcium_from magnesium_from carbonate_from",
        "calcium_salt_g magnesium_salt_g carbonate_salt_g adds reached_gh_dh reached_kh_dh "
        "dissolved_mg_l",
    ),
    "kh-budget": (
        "volume_l kh_dh nitrified_mg_n_day nitrate_taken_mg_n_day tap_kh_dh change_percent "
        "change_every_days",
        "used_dh_week weeks_to_1_dh settled_high_dh settled_low_dh",
    ),
    "oxygen": (
        "temperature_c pressure_hpa oxygen_mg_l",
        "saturation_mg_l saturation_percent rating",
    ),
    "trend": (
        "readings changes tap_value kit_step",
        "slope_week slope_low_week slope_high_week verdict pairs",
    ),
    "upkeep": ("tanks", "minutes_week per_tank heaviest next_days"),
    "standing": (
        "tank entries today",
        "verdict sentence due trends next_test outlook minutes_week",
    ),
    "round": ("tanks entries today days", "order today minutes_week calendar"),
    "stocking": (
        "animals volume_l protein_percent temperature_c",
        "biomass_g feed_g_week ammonia_n_mg_day load_mg_n_l_day oxygen_mg_h",
    ),
    "conditioner": (
        "water_l chlorine_mg_l kind label_ml label_treats_l",
        "dose_ml ammonia_freed_mg_n_l thiosulfate_g",
    ),
    "chloride": (
        "nitrite_mg_n_l chloride_mg_l ratio volume_l",
        "chloride_wanted_mg_l salt_g sodium_mg_l",
    ),
    "medicine-volume": (
        "gross_l displaced_l label_amount label_for_l change_percent copper_mg_per_unit",
        "net_l dose redose_after_change copper_ug_l",
    ),
    "acclimate": (
        "bag_l tank_share_percent drip_ml_min bag_ph bag_ammonia_mg_n_l bag_gh_dh "
        "bag_temperature_c tank_ph tank_gh_dh tank_temperature_c",
        "minutes vessel_l gh_end_dh temperature_end_c nh3_bag_mg_n_l nh3_at_tank_ph_mg_n_l drip",
    ),
    "warmth": (
        "length_cm width_cm height_cm glass_mm net_l water_c room_c lid price_per_kwh fall_c",
        "loss_w_low loss_w_high heater_w kwh_month cost_month hours_low hours_high",
    ),
    "soil": (
        "length_cm width_cm soil_depth_cm cap_depth_cm soil_bag_l cap_bag_kg cap_dry_g_ml "
        "soil_dry_g_ml soil_n_percent",
        "soil_l soil_bags cap_l cap_kg cap_bags soil_n_g soil_n_g_m2",
    ),
}


@pytest.mark.parametrize("name", KEYS)
def test_has_the_keys_of_the_contract(name):
    inputs, outputs = (set(keys.split()) for keys in KEYS[name])
    answer = run(name, {})
    assert inputs <= answer["inputs"].keys()
    assert outputs <= answer["outputs"].keys()


# The choices and the keys inside rows and answers that the contract names.
CHOICES = {
    (
        "dosing",
        "source",
    ): "kno3 kh2po4 k2so4 mgso4_7h2o caso4_2h2o cacl2_2h2o fe_edta fe_dtpa urea label",
    ("dosing", "nutrient"): "nitrate phosphate potassium magnesium calcium iron nitrogen",
    ("conditioner", "kind"): "chlorine chloramine",
    ("light", "lamp"): "led-white fluorescent halogen daylight",
    ("tank", "shape"): "box cylinder",
    ("free-ammonia", "reported_as"): "nitrogen ammonium ammonia unknown",
    ("ammonia-change", "reported_as"): "nitrogen ammonium ammonia unknown",
    ("remineralise", "calcium_from"): "cacl2_2h2o caso4_2h2o",
    ("remineralise", "magnesium_from"): "mgso4_7h2o mgcl2_6h2o",
    ("remineralise", "carbonate_from"): "nahco3 khco3",
}
ROWS = {
    ("upkeep", "tanks"): "name plants change_every_days change_minutes floaters_minutes_week",
    ("trend", "readings"): "day value",
    ("trend", "changes"): "day percent",
    ("nitrogen-forecast", "readings"): "day what value",
    ("nitrogen-forecast", "events"): "day kind value",
    (
        "standing",
        "tank",
    ): "id name demo place length_cm width_cm water_cm net_l soil_area_cm2 flooded_on "
    "light_hours dli_mol temperature_c ph gh_dh kh_dh tap feed_g_week protein_percent change plants animals",
    ("standing", "entries"): "id tank at kind what value text",
    ("stocking", "animals"): "kind count mean_length_mm",
}


@pytest.mark.parametrize(("place", "choices"), CHOICES.items())
def test_has_the_choices_of_the_contract(place, choices):
    [field] = [one for one in load_all()[place[0]].inputs if one.key == place[1]]
    assert set(choices.split()) <= set(field.choices)


@pytest.mark.parametrize(("place", "keys"), ROWS.items())
def test_has_the_row_keys_of_the_contract(place, keys):
    [field] = [one for one in load_all()[place[0]].inputs if one.key == place[1]]
    assert set(keys.split()) <= {one.key for one in field.row}


def test_the_forecast_has_the_curves_and_the_kinds_that_the_contract_names():
    forecast = load_all()["nitrogen-forecast"]
    rows = {field.key: field.row for field in forecast.inputs}
    kinds = {part.key: set(part.choices) for key in ("events", "readings") for part in rows[key]}
    assert kinds["kind"] >= {"change", "trim", "feed", "dose", "dark", "die-off"}
    assert kinds["what"] == {"nitrate_mg_l", "ammonia_mg_n_l", "nitrite_mg_n_l", "kh_dh"}
    assert run("nitrogen-forecast", {})["series"].keys() >= {
        "ammonia", "nitrite", "nitrate", "plant_nitrogen_percent", "plant_mass", "light_below_floaters",
        "plant_nitrogen_taken",
    }  # fmt: skip
    assert "kh" in run("nitrogen-forecast", {"kh_dh": 5, "tap_kh_dh": 5})["series"]


def test_answers_hold_the_keys_inside_that_the_contract_names():
    adds = run("dosing", {})["outputs"]["adds"]
    assert list(adds) == [
        "nitrate", "phosphate", "potassium", "magnesium", "calcium", "iron", "nitrogen", "sulfate",
        "chloride",
    ]  # fmt: skip
    assert list(run("remineralise", {})["outputs"]["adds"]) == [
        "calcium", "magnesium", "sodium", "potassium", "sulfate", "chloride", "bicarbonate",
    ]  # fmt: skip
    stand = run("standing", {})["outputs"]
    assert {"task", "on", "late_days", "why"} <= stand["due"][0].keys()
    assert {
        "what", "latest", "on", "slope_week", "slope_low_week", "slope_high_week", "verdict",
    } <= stand["trends"][0].keys()  # fmt: skip
    assert {"what", "why"} <= stand["next_test"].keys()
    assert {"days_to_shortage", "nitrate_in_28_days_mg_l", "low", "high"} <= stand["outlook"].keys()
    found = run("round", {})["outputs"]
    assert {"tank", "verdict", "sentence", "minutes"} <= found["order"][0].keys()
    assert {"tank", "task", "minutes"} <= found["today"][0].keys()
    named = run("identify", {})["outputs"]
    assert {"plant", "fit_percent", "for", "against", "law"} <= named["ranked"][0].keys()
    assert {"trait", "question", "why"} <= run("identify", {"traits": None})["outputs"][
        "ask_next"
    ].keys()
    first = run("upkeep", {})["outputs"]["next_days"][0]
    assert {"day", "tank", "task"} <= first.keys()
    assert run("floaters", {})["series"].keys() == {"cover"}


@pytest.mark.parametrize("name", load_all())
def test_runs_with_no_input_and_says_what_the_contract_promises(name):
    answer = run(name, {})
    assert set(answer) - {"series"} == {"calculator", "inputs", "outputs", "notes"}
    assert answer["calculator"] == name
    assert all(note["level"] in ("info", "caution", "danger") for note in answer["notes"])
    for series in answer.get("series", {}).values():
        assert {"unit", "x", "y"} <= series.keys()
        assert len(series["x"]) == len(series["y"]) > 1
    json.dumps(answer, allow_nan=False)


@pytest.mark.parametrize("name", load_all())
def test_keys_end_in_the_unit_they_carry(name):
    spec = load_all()[name]
    endings = {
        "_l": "L", "_cm": "cm", "_cm2": "cm²", "_c": "°C", "_mg_l": "mg/L", "_mg_n_l": "mg N/L",
        "_g": "g", "_mg": "mg", "_kg": "kg", "_days": "days", "_percent": "%",
        "_dh": "°dH", "_meq_l": "meq/L", "_g_l": "g/L", "_umol": "µmol", "_mol": "mol", "_mm": "mm",
        "_ug_l": "µg/L",
    }  # fmt: skip
    for field in (*spec.inputs, *spec.outputs):
        ending = max((e for e in endings if field.key.endswith(e)), key=len, default=None)
        if field.key == "weeks_to_1_dh":  # weeks until a hardness, by the contract
            assert field.unit == "weeks"
        elif ending and field.kind == "number":
            assert field.unit.startswith(endings[ending]), f"{field.key} is in {field.unit}"


def test_lists_all_calculators_one_a_line():
    lines = process().stdout.splitlines()
    assert [line.split()[0] for line in lines] == list(load_all())
    assert all(len(line.split(maxsplit=1)[1]) > 20 for line in lines)


def test_describes_inputs_and_outputs():
    described = json.loads(command("floaters", "--describe").stdout)
    assert {"name", "title", "purpose", "inputs", "outputs", "sources"} <= described.keys()
    first = described["inputs"][0]
    assert {
        "key",
        "label",
        "unit",
        "type",
        "minimum",
        "maximum",
        "default",
        "choices",
        "help",
    } <= first.keys()
    assert first["key"] == "length_cm"
    assert first["unit"] == "cm"
    assert {"key", "label", "unit", "help"} <= described["outputs"][0].keys()


def test_every_default_is_inside_its_own_limits():
    for spec in load_all().values():
        for field in spec.inputs:
            if field.kind in ("number", "integer") and field.default is not None:
                assert field.low <= field.default <= field.high, f"{spec.name} {field.key}"


def test_prints_json_for_values_of_the_command_line():
    answer = json.loads(command("free-ammonia", "ph=8,0", "ammonia_mg_l=1", "--json").stdout)
    assert answer["inputs"]["ph"] == 8.0
    assert math.isclose(answer["outputs"]["pka"], 9.2448, abs_tol=1e-4)


def test_prints_a_table_for_people():
    done = command("water-change")
    assert done.returncode == 0
    assert "single_change_percent" in done.stdout
    assert "info: " in done.stdout


def test_reads_a_json_object_from_standard_input():
    done = process(
        "units", "--input", "-", "--json", given='{"value": 2, "from": "inch", "to": "cm"}'
    )
    assert json.loads(done.stdout)["outputs"]["result"] == pytest.approx(5.08)


def test_names_every_bad_field_at_once_and_exits_with_2():
    done = process(
        "free-ammonia", "ph=20", "temperature_c=x", "reported_as=no", "foo=1", "ammonia_mg_l=nan"
    )
    assert done.returncode == 2
    assert done.stdout == ""
    said = dict(line.split(": ", 1) for line in done.stderr.splitlines())
    assert said.keys() == {"ph", "temperature_c", "reported_as", "foo", "ammonia_mg_l"}
    assert "4 to 11" in said["ph"]
    assert "0 to 40 °C" in said["temperature_c"]
    assert "nitrogen, ammonium, ammonia" in said["reported_as"]


@pytest.mark.parametrize(
    ("text", "key", "part"),
    [
        ('{"ph": NaN}', "ph", "is not a number"),
        ('{"ph": Infinity}', "ph", "is not a number"),
        ('{"ph": "7"}', "ph", "is not a number"),
        ('{"ph": true}', "ph", "is not a number"),
        ('{"ph": null}', "ph", "may not be empty"),
        ('{"ph": [7]}', "ph", "is not a number"),
        ('{"ph": 1e999}', "ph", "is not a number"),
        (f'{{"ph": 1{"0" * 400}}}', "ph", "too large"),
        (f'{{"ph": 1{"0" * 5_000}}}', "ph", "too large"),
        ('{"ph": 1e99}', "ph", "1e99 is out of range"),
        ('{"ph": 123456789012345678901234567890}', "ph", "1.23457e29 is out of range"),
        ('{"ph": 7, "ph": 8}', "ph", "given twice"),
        ('{"tempreature_c": 7}', "tempreature_c", "did you mean temperature_c"),
        ("[1]", "--input", "must hold a JSON object"),
        ("{", "--input", "is not JSON"),
        ("[" * 100_000, "--input", "is not JSON"),
    ],
)  # fmt: skip
def test_refuses_bad_json_by_field(text, key, part):
    done = command("free-ammonia", "--input", "-", given=text)
    assert done.returncode == 2, done.stdout
    assert done.stderr.startswith(f"{key}: ")
    assert part in done.stderr
    assert "Traceback" not in done.stderr


@pytest.mark.parametrize(
    ("words", "part"),
    [
        (["free-amonia"], "did you mean free-ammonia"),
        (["free-ammonia", "ph"], "is not key=value"),
        (["free-ammonia", "ph=7", "ph=8"], "given twice"),
        (["free-ammonia", "--input", "no-such-file.json"], "cannot read no-such-file.json"),
        (["__main__"], "no calculator is called"),
        (["core"], "no calculator is called"),
    ],
)
def test_refuses_a_bad_command_in_one_line(words, part):
    done = command(*words)
    assert done.returncode == 2
    assert part in done.stderr
    assert len(done.stderr.splitlines()) == 1


def test_a_reader_that_closes_the_pipe_sees_no_traceback():
    """As with ``| head``, here before the first line is written."""
    program = [sys.executable, "-m", "calculators", "diagnose", "--describe"]
    with subprocess.Popen(
        program, cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
    ) as process:
        process.stdout.close()
        assert process.stderr.read() == ""
        assert process.wait() == 1
