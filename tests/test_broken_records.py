"""Every kind of broken record gives its line: one file of records/broken a kind, with what must be said."""

import shutil
from pathlib import Path

import pytest

from scripts.records import lines as reading_lines
from scripts.records.checks.all import record_faults
from scripts.records.lines import MOST_SHOWN, shown_first
from scripts.records.load import BadRecords, read_records
from scripts.records.plant import Plant
from scripts.records.reader import Reader
from scripts.records.source import Source
from scripts.setup.paths import ROOT
from tests.effort import how_many, long_run
from tests.plain_yaml import read_yaml

SPECIES = ROOT / "species"
CASES = {
    path.stem: read_yaml(path)
    for path in sorted((Path(__file__).parent / "records" / "broken").glob("*.yml"))
}
OF_A_RECORD = [name for name, case in CASES.items() if "file" not in case]
OF_A_SHARED_FILE = [name for name, case in CASES.items() if "file" in case]


def put(folder, name):
    """Put the broken file of a case into a copy of the records; its path."""
    case = CASES[name]
    if "file" in case:
        target, like = folder / case["file"], SPECIES / case["file"]
    else:
        target = folder / case.get("in", "plants") / case.get("name", f"{name}.yml")
        like = SPECIES / case.get("like", "plants/lemna-minor.yml")
    target.unlink(missing_ok=True)
    make = case.get("make")
    if make == "folder":
        target.mkdir()
    elif make == "dead-link":
        target.symlink_to(folder / "nowhere")
    elif "hex" in case:
        target.write_bytes(bytes.fromhex(case["hex"]))
    elif make != "nothing":
        target.write_text(case.get("content", spoiled(like, name)), encoding="utf-8")
    return target


def spoiled(like, name):
    """The text of a good record with the replacements of a case, under a name of its own."""
    text = like.read_text(encoding="utf-8")
    if "file" not in CASES[name]:
        text = "name: Examplea " + name + text[text.index("\n") :]
    for old, new in CASES[name].get("replace", {}).items():
        assert text.count(old), f"{name}: {old} stands nowhere"
        text = text.replace(old, new, 1)
    return text


def said_of(reading):
    """What is said of each file, in order."""
    said = {}
    for one in shown_first([*reading.faults, *record_faults(reading)]):
        said.setdefault(one.path, []).append(f"{one.line}: {one.key}: {one.message}")
    return said


def refuse(path):
    """Stands for a system that refuses to read: the tests may run as one whom no file refuses."""
    if path.name == "unreadable.yml":
        raise PermissionError(13, "Permission denied")
    return path.open("rb").read()


@pytest.fixture(scope="module")
def in_one_run(tmp_path_factory):
    """All broken records in one copy: what is said of each, and in how many seconds."""
    folder = tmp_path_factory.mktemp("broken") / "species"
    shutil.copytree(SPECIES, folder)
    paths = {name: put(folder, name) for name in OF_A_RECORD}
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(reading_lines.Path, "read_bytes", refuse)
        said = said_of(read_records(folder))
    return {name: said.pop(path, []) for name, path in paths.items()}, said


@pytest.mark.parametrize("name", OF_A_RECORD)
def test_a_broken_record_gives_its_lines_and_no_other(name, in_one_run):
    agree(in_one_run[0][name], CASES[name]["says"])


def test_broken_records_say_nothing_of_whole_ones(in_one_run):
    assert in_one_run[1] == {}


@pytest.mark.parametrize("state", ["missing", "empty", "a-list"])
def test_shared_files_of_which_nothing_can_be_used_give_one_line_each(state, tmp_path):
    """All of them at once: what refers to them is not judged, or there would be thousands of lines."""
    folder = tmp_path / "species"
    shutil.copytree(SPECIES, folder)
    names = [name for name in OF_A_SHARED_FILE if name.endswith(f"-{state}")]
    assert len(names) == 5
    paths = {name: put(folder, name) for name in names}
    said = said_of(read_records(folder))
    for name, path in paths.items():
        agree(said.pop(path), CASES[name]["says"])
    assert said == {}


@pytest.mark.parametrize("name", [name for name in OF_A_SHARED_FILE if "replace" in CASES[name]])
def test_a_broken_entry_gives_its_lines_and_no_other(name, tmp_path):
    put(tmp_path, name)
    reader = Reader(tmp_path)
    if CASES[name]["file"] == "sources.yml":
        reader.entries("sources.yml", Source)
    else:
        reader.vocabulary()
    said = [f"{one.line}: {one.key}: {one.message}" for one in shown_first(reader.findings)]
    agree(said, CASES[name]["says"])


def agree(said, expected):
    """Each line starts as one that is expected, and there are as many."""
    for start in expected:
        assert any(line.startswith(start) for line in said), f"{start} not in\n" + "\n".join(said)
    assert len(said) == len(expected), "\n".join(said)


def test_two_hundred_thousand_unknown_keys_give_the_first_fifty_and_a_count(tmp_path):
    many = how_many(200_000)
    good = (SPECIES / "plants" / "lemna-minor.yml").read_text(encoding="utf-8")
    keys = "".join(f"key-{number}: 1\n" for number in range(many))
    (tmp_path / "plants").mkdir()
    (tmp_path / "plants" / "many.yml").write_text(good + keys, encoding="utf-8")
    reader = Reader(tmp_path)
    reader.folder("plants", Plant)
    bad = BadRecords(reader.findings)
    assert len(bad.findings) == MOST_SHOWN + 1
    assert bad.findings[-1].message == f"and {many - MOST_SHOWN:,} more in this file"
    assert str(bad).endswith(f"{many:,} errors in the records")


@long_run()
def test_a_missing_folder_is_told(tmp_path):
    folder = tmp_path / "species"
    shutil.copytree(SPECIES, folder)
    shutil.rmtree(folder / "rules")
    (said,) = said_of(read_records(folder)).values()
    assert said == ["1: : is missing; it is the folder of these records"]
