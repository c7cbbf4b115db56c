"""The records: every mistake is told at its line, and ours hold and agree with common practice."""

import shutil
from pathlib import Path

import pytest
import yaml

from scripts.records.law_matches import listings
from scripts.records.schema import KINDS, write_schemas
from scripts.setup.paths import ROOT
from tests.effort import long_run, share_of
from tests.faults_of import all_faults, lines, record_faults
from tests.plain_yaml import read_yaml

HERE = Path(__file__).parent


@pytest.fixture
def folder(tmp_path):
    """A copy of all records, to spoil."""
    target = tmp_path / "species"
    shutil.copytree(ROOT / "species", target)
    return target


def messages(folder):
    """What the build says of the records alone."""
    return lines(record_faults(folder))


def test_one_bad_record_gives_every_message_at_its_line(folder):
    shutil.copyfile(HERE / "records" / "bad-plant.yml", folder / "plants" / "bad-plant.yml")
    said = messages(folder)
    for expected in [
        "4: family: must be a text; got 7",
        "6: trade_names: must be a list; got 'example weed'",
        "7: habit: must be one of stem, rosette, epiphyte, carpet, floater, moss or marginal; got 'tree'",
        "9: roots: stands twice; the first is on line 8",
        "10: verdict: must have at least 20 characters; got 'Too short.'",
        "13: needs.temperature_f: unknown key; did you mean temperature_c? Allowed here: "
        "dli_mol, temperature_c, ph, gh_dh",
        "14: needs.temperature_c: low 68 °C cannot be; Water temperature must be 0 to 45 °C",
        "15: needs.ph: low end 8 is above high end 6; low must not be above high",
        "16: needs.gh_dh.low: must be a number without a unit or quotes, the unit is in the key; got '2 dGH'",
        "17: needs.dli_mol.low: must be a finite number; got nan",
        "17: needs.dli_mol.sure: must be one of well-documented, reported or uncertain; got 'maybe'",
        "18: size.height_cm.source: is missing; it is required here",
        "21: nitrogen.role.source: must be lower-case words joined by hyphens, such as "
        "salvinia-auriculata; got 'Common Practice'",
        "22: nitrogen.uptake.source: must have at least 1 entry; got 0",
        "25: care.planting.text: must have at least 1 characters; got ''",
        "5: name_check.source: no-such-source is no key of sources.yml",
        "11: looks.sure: well-documented needs a named source; allowed here: reported, uncertain",
        "29: troubles.0.problem: no-such-problem has no record in species/problems/",
        "30: disposal.sorce: unknown key; did you mean source? Allowed here: source, sure, text",
    ]:  # fmt: skip
        assert any(line.startswith(f"bad-plant.yml:{expected}") for line in said), "\n".join(said)
    assert all(line.startswith("bad-plant.yml:") for line in said), "\n".join(said)


def rewrite(path, **changes):
    """Change top-level keys of a record."""
    value = read_yaml(path) | changes
    path.write_text(yaml.safe_dump(value, sort_keys=False), encoding="utf-8")


def test_dangling_references_are_told(folder):
    path = folder / "plants" / "lemna-minor.yml"
    claim = {
        "text": "Browns.",
        "source": "no-such-source",
        "sure": "reported",
        "problem": "no-such-problem",
    }
    rewrite(path, troubles=[claim])
    said = "\n".join(messages(folder))
    assert "troubles.0.source: no-such-source is no key of sources.yml" in said
    assert "troubles.0.problem: no-such-problem has no record in species/problems/" in said


def test_an_unknown_eater_of_plants_is_told(folder):
    eaten = {"text": "Cows.", "source": "common-practice", "sure": "reported", "eaters": ["cows"]}
    rewrite(folder / "plants" / "lemna-minor.yml", eaten_by=[eaten])
    assert "eaten_by.0.eaters: cows is no grazer; allowed here: goldfish, barbs" in "\n".join(
        messages(folder)
    )


def test_common_practice_alone_is_never_well_documented(folder):
    claim = {"text": "Green all over.", "source": "common-practice", "sure": "well-documented"}
    rewrite(folder / "plants" / "lemna-minor.yml", looks=claim)
    assert any(
        "looks.sure: well-documented needs a named source" in line for line in messages(folder)
    )


@long_run()
def test_a_calculator_filled_with_nonsense_is_told(folder):
    path = folder / "problems" / "new-soil-ammonia.yml"
    filled = [
        {"calculator": "free-ammonia", "inputs": {"ph": 40.0}, "why": "To see how toxic it is."},
        {"calculator": "free-amonia", "inputs": {}, "why": "To see how toxic it is."},
    ]
    rewrite(path, calculators=filled)
    said = "\n".join(lines(all_faults(folder)))
    assert "calculators.0.inputs.ph: 40 is out of range; allowed is 4 to 11" in said
    assert "calculators.1.calculator: there is no calculator free-amonia" in said


@long_run()
def test_an_unused_source_and_a_double_name_are_told(folder):
    with (folder / "sources.yml").open("a", encoding="utf-8") as file:
        file.write("\nnobody-cites-me: {title: A, by: B, kind: book, seen: memory}\n")
    assert "nobody-cites-me: is used nowhere" in "\n".join(lines(all_faults(folder)))
    shutil.copyfile(folder / "plants" / "lemna-minor.yml", folder / "plants" / "lemna-other.yml")
    said = "\n".join(messages(folder))
    assert "lemna-other.yml" in said
    assert "is the name of lemna-minor.yml too" in said


@pytest.mark.parametrize(
    ("text", "part"),
    share_of(
        [
            ("name: [unclosed", "is not YAML"),
            ("name: \t{", "is not YAML"),
            ("\x00", "is not YAML"),
            ("", "is empty; it must hold keys of its own"),
            ("read_on: 2026-02-30\n", "holds a value that cannot be"),
        ],
        3,
    ),
)
def test_a_file_that_is_no_record_is_told_not_thrown(folder, text, part):
    (folder / "plants" / "broken-one.yml").write_text(text, encoding="utf-8")
    said = messages(folder)
    assert all(line.startswith("broken-one.yml:1:") for line in said), said
    assert any(part in line for line in said)


def test_a_file_that_is_not_utf8_or_badly_named_is_told(folder):
    (folder / "plants" / "latin.yml").write_bytes(b"name: caf\xe9")
    (folder / "plants" / "Lemna Minor.yml").write_text("name: x", encoding="utf-8")
    said = "\n".join(messages(folder))
    assert "latin.yml:1: : is not UTF-8 text" in said
    assert "must be named in lower case with hyphens: lemna-minor.yml" in said


def test_errors_of_many_files_come_in_one_run(folder):
    for slug in ("lemna-minor", "rotala-rotundifolia"):
        rewrite(folder / "plants" / f"{slug}.yml", habit="tree", family=3)
    assert len(messages(folder)) == 4


def test_our_records_hold(library):
    assert len(library.plants) >= 12
    assert len(library.problems) >= 2
    assert library.rules.keys() >= {"us-federal-noxious-weeds", "eu-union-list"}


def test_the_vocabulary_explains_every_word_that_a_record_may_use(library):
    from scripts.records.animal import Animal, Body, Harm
    from scripts.records.plant import Plant
    from scripts.records.problem import Problem

    for kind, model, field in (
        ("animal_group", Animal, "group"),
        ("measured", Body, "measured"),
        ("plant_harm", Harm, "does"),
        ("habit", Plant, "habit"),
        ("roots", Plant, "roots"),
        ("urgency", Problem, "urgency"),
    ):
        allowed = model.model_fields[field].annotation.__args__
        assert set(allowed) == set(library.vocabulary[kind]), kind


def test_a_schema_for_editors_names_units_and_limits(tmp_path):
    write_schemas(tmp_path)
    assert {path.name for path in tmp_path.iterdir()} == {f"{kind}.schema.json" for kind in KINDS}
    text = (tmp_path / "plant.schema.json").read_text(encoding="utf-8")
    assert "Water temperature, °C" in text
    assert '"additionalProperties": false' in text


def test_the_united_states_list_three_of_the_twelve(library):
    """7 CFR 360.200(a), read in the text."""
    named = {
        slug
        for slug, plant in library.plants.items()
        for one in listings(plant, library.rules)
        if one.slug == "us-federal-noxious-weeds"
    }
    assert named >= {"limnophila-sessiliflora", "hygrophila-polysperma", "salvinia-auriculata"}
