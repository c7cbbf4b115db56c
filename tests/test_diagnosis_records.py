"""Findings and problem records: they hang together, and the committed table is what they say."""

import shutil

import pytest
import yaml

from scripts.setup.paths import ROOT
from tests.effort import long_run, share_of
from tests.faults_of import all_faults, record_faults
from tests.plain_yaml import read_yaml

MUST_HAVE = {
    "nitrogen-starvation", "phosphorus-starvation", "potassium-starvation", "magnesium-starvation",
    "calcium-shortage", "iron-chlorosis", "carbon-limitation", "low-light-legginess",
    "floater-shading", "emersed-melt", "transplant-check", "old-leaf-senescence",
    "fast-stems-brown-lean", "floater-hunger", "green-dust", "green-spot", "thread-hair-algae",
    "black-brush", "staghorn", "diatoms", "green-water", "cyanobacteria", "bacterial-bloom",
    "surface-film", "soil-gas-sulphide", "new-soil-ammonia", "nitrite-emergency",
    "dawn-low-oxygen", "snail-grazing", "animal-grazing-digging", "planaria", "hydra",
    "snail-boom", "aphids-on-floaters", "heat", "cold-season-slowdown", "fertiliser-overdose",
    "copper-poisoning", "chlorine-after-water-change", "kh-crash",
}  # fmt: skip


def test_every_trouble_that_was_asked_for_has_a_record(library):
    assert len(library.problems) >= 45
    assert set(library.problems) >= MUST_HAVE


def test_every_problem_speaks_both_ways_and_of_animals(library):
    for slug, problem in library.problems.items():
        ways = {row.strength for row in problem.evidence}
        assert ways & {"strong-for", "for"}, slug
        assert ways & {"against", "rules-out"}, slug
        assert problem.mistaken_for, slug
        first = problem.first_action.text.lower()
        words = "animal fish shrimp gasp ammonia air fry anybody somebody nobody snail conditioner"
        assert any(word in first for word in words.split()), f"{slug}: {first}"


def test_urgent_problems_begin_with_an_act_not_with_a_test(library):
    acts = (
        "animals first",
        "add air",
        "stop feeding",
        "change half",
        "make the surface",
        "unplug",
        "put conditioner",
        "move shrimp",
    )
    for slug, problem in library.problems.items():
        if problem.urgency == "now":
            assert problem.first_action.text.lower().startswith(acts), slug


@pytest.fixture
def folder(tmp_path):
    target = tmp_path / "species"
    shutil.copytree(ROOT / "species", target)
    return target


def change(path, spoil, faults=record_faults):
    value = read_yaml(path)
    spoil(value)
    path.write_text(yaml.safe_dump(value, sort_keys=False), encoding="utf-8")
    folder = path.parents[1] if path.parent.name == "problems" else path.parent
    return "\n".join(map(str, faults(folder)))


@long_run()
@pytest.mark.parametrize(
    ("spoil", "part"),
    share_of([
        (lambda v: v["evidence"][0].update(finding="no-such"), "no-such is no key of findings.yml"),
        (lambda v: v["evidence"].append(dict(v["evidence"][0])), "stands twice"),
        (lambda v: v["evidence"][0].update(strength="very"), "must be one of strong-for"),
        (lambda v: v["evidence"][1].update(hallmark=True, strength="for"), "a hallmark speaks strongly"),
        (lambda v: v.pop("prior"), "is missing"),
    ], 3),
)  # fmt: skip
def test_bad_evidence_is_told(folder, spoil, part):
    assert part in change(folder / "problems" / "hydra.yml", spoil)


@pytest.mark.parametrize(
    ("spoil", "part"),
    share_of([
        (lambda v: v["nitrate-low"]["derived_from"].update(above=1), "overlaps"),
        (lambda v: v["fish-gasping"].update(excludes=["no-such"]), "is no other key"),
        (lambda v: v["nitrate-low"]["derived_from"].update(up_to=1), "above must be less than up_to"),
        (lambda v: v["hot-weather"].update(question="Is it hot"), "question"),
        (lambda v: v["hot-weather"].update(source="nobody"), "nobody is no key of sources.yml"),
    ], 3),
)  # fmt: skip
def test_bad_findings_are_told(folder, spoil, part):
    assert part in change(folder / "findings.yml", spoil)


@long_run()
def test_answers_that_are_there_more_often_than_always_are_told(folder):
    def spoil(findings):
        findings["nitrate-high"]["usual"] = "mostly"

    said = change(folder / "findings.yml", spoil, all_faults)
    assert "of the time; at most 1" in said
