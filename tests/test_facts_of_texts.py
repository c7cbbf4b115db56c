"""What a build has found in a text it finds again; what hangs on other files too is judged anew each time."""

import shutil

import pytest

from scripts.records.cell_digests import CellDigests, cells_of_texts
from scripts.records.checks.all import record_faults
from scripts.records.lines import Document
from scripts.records.load import read_records
from scripts.records.parsed_texts import ParsedTexts
from scripts.records.with_calculators import sources
from scripts.setup import kept
from scripts.setup.paths import SPECIES

PLANT = "plants/lemna-minor.yml"
PROBLEM = "problems/thread-hair-algae.yml"
NAMES_IT = "plants/lemna-trisulca.yml"  # that problem, under a key that no other check looks at
CITED = "fna-lemna-minor"


def no_such_habit(folder):
    """What the plant's own model does not take."""
    replace(folder / PLANT, "\nhabit: floater\n", "\nhabit: flouter\n")


def no_such_source_kind(folder):
    """One entry of a file of many that its model does not take."""
    path = folder / "sources.yml"
    text = path.read_text(encoding="utf-8")
    path.write_text(text.replace("\n  kind: ", "\n  kind: never-", 1), encoding="utf-8")


def renamed_source(folder):
    replace(folder / "sources.yml", f"\n{CITED}:", "\nfna-lemna-other:")


def no_problem(folder):
    (folder / PROBLEM).unlink()


def source_twice(folder):
    replace(folder / PLANT, f"[{CITED}, foc-lemna-minuta]", f"[{CITED}, {CITED}]")


def too_sure(folder):
    replace(folder / PLANT, f"source: {CITED}\n", "source: common-practice\n")


def replace(path, old, new):
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new), encoding="utf-8")


@pytest.fixture
def folder(tmp_path, monkeypatch):
    """A copy of the records of which a build has kept all that it found."""
    monkeypatch.setattr(kept, "FOLDER", tmp_path / "kept")
    shutil.copytree(SPECIES, tmp_path / "species")
    assert said(tmp_path / "species") == []
    return tmp_path / "species"


def said(folder):
    """What is wrong with the records, with what earlier builds found of their texts."""
    texts = ParsedTexts.kept("here")
    reading = read_records(folder, texts.document)
    found = [*reading.faults, *record_faults(reading), *sources.unused(reading)]
    texts.keep()
    return found


def said_by_a_first_build(folder):
    reading = read_records(folder, Document)
    return [*reading.faults, *record_faults(reading), *sources.unused(reading)]


SPOILED = (
    (renamed_source, PLANT, f"{CITED} is no key of sources.yml"),
    (no_problem, NAMES_IT, "thread-hair-algae has no record in species/problems/"),
    (source_twice, PLANT, f"{CITED} stands twice"),
    (too_sure, PLANT, "well-documented needs a named source"),
    (no_such_habit, PLANT, "flouter"),
    (no_such_source_kind, "sources.yml", "never-"),
)


@pytest.mark.parametrize(("spoil", "file", "message"), SPOILED)
def test_a_build_that_knows_the_texts_says_what_a_first_one_says(folder, spoil, file, message):
    """The message stands at the file whose own text did not change, where that of another did."""
    spoil(folder)
    expected = said_by_a_first_build(folder)
    assert [fault for fault in expected if fault.path == folder / file and message in fault.message]
    assert said(folder) == expected
    assert said(folder) == expected  # once more, of texts that are known with their faults


def test_a_fact_is_found_once_for_a_text(folder, monkeypatch):
    walked = []

    def noted(drafts):
        walked.append(drafts[0].path)
        return [[], []]

    monkeypatch.setattr("scripts.records.mentions.mentioned", noted)
    said(folder)
    known = set(walked)  # texts with dates, which are not kept
    assert folder / PLANT not in known
    replace(folder / PLANT, "\nverdict: ", "\nverdict: Changed. ")
    said(folder)
    assert set(walked) - known == {folder / PLANT}


def test_cells_of_known_texts_are_those_of_the_records(folder):
    texts = ParsedTexts.kept("here")
    before = cells_of_texts(read_records(folder, texts.document))
    texts.keep()
    shutil.copy(folder / PLANT, folder / "plants" / "lemna-other.yml")
    replace(folder / PLANT, "\nverdict: ", "\nverdict: Changed. ")
    replace(folder / "sources.yml", 'title: "', 'title: "Changed ')
    reading = read_records(folder, ParsedTexts.kept("here").document)
    after = cells_of_texts(reading)
    assert after == CellDigests(reading.library).cells
    assert after["plants"]["lemna-other"] == before["plants"]["lemna-minor"]
    assert after["plants"]["lemna-minor"] != before["plants"]["lemna-minor"]
    assert after["sources"] != before["sources"]
