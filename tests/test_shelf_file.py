"""The file of the shelf: what is refused and why, and its schema, judged by an outside library."""

import copy
import json

import pytest
from jsonschema import Draft202012Validator, FormatChecker

from calculators.bridge import answer
from calculators.shelf.file_schema import shelf_schema
from calculators.shelf.shelf_file import check_shelf_file, check_shelf_text
from scripts.pages.shelf.shelf_downloads import demo_file, fields_json
from scripts.records.load import read_records
from scripts.setup import paths
from tests.shelf_files import BAD_FILES, GOOD

# What a schema cannot say: sizes, keys given twice, ids that repeat, tanks that are not there, odd letters.
BEYOND_A_SCHEMA = {
    "two tanks of one id", "two entries of one id", "an entry of no tank", "a key twice",
    "a key of a browser's objects", "a constructor deep inside", "nested 30 deep",
    "an unknown key with a megabyte", "a note with a control character", "a name with a line break",
    "half a character", "NaN",
}  # fmt: skip


@pytest.fixture(scope="module")
def library():
    return read_records(paths.SPECIES).library


@pytest.fixture(scope="module")
def judge():
    Draft202012Validator.check_schema(shelf_schema())
    return Draft202012Validator(shelf_schema(), format_checker=FormatChecker())


def test_the_corpus_is_large_and_each_name_says_something():
    assert len(BAD_FILES) >= 60


@pytest.mark.parametrize("name", BAD_FILES)
def test_a_bad_file_is_refused_with_its_field_and_the_limit(name):
    text, field = BAD_FILES[name]
    complaints = check_shelf_text(text)
    assert complaints, "nothing was found wrong"
    assert field in [one.field for one in complaints]
    assert all(one.why and len(one.why) < 400 and "\n" not in one.why for one in complaints)
    limits = ("allowed", "may not be empty", "is not JSON", "must hold", "must have", "needs it",
              "may stand once", "may not stand", "no text of up to")  # fmt: skip
    assert all(any(limit in one.why for limit in limits) for one in complaints), complaints


def test_a_good_file_is_read_and_unknown_keys_are_let_pass():
    before = copy.deepcopy(GOOD)
    assert check_shelf_file(GOOD) == []
    assert before == GOOD


def test_brackets_inside_texts_are_no_levels():
    file = copy.deepcopy(GOOD)
    file["entries"][2]["text"] = '[{"' * 500 + "\\" + '"]' * 20
    assert check_shelf_text(json.dumps(file)) == []


def test_many_mistakes_are_told_at_once_but_not_without_end():
    file = {**GOOD, "entries": [{"id": str(n), "tank": "jar"} for n in range(300)]}
    complaints = check_shelf_file(file)
    assert len(complaints) == 21
    assert complaints[-1].why == "580 more fields are wrong"


def test_the_page_hears_the_same_complaints():
    text, field = BAD_FILES["litres as text"]
    reply = json.loads(answer(json.dumps({"message": "check-shelf-file", "text": text})))
    assert reply == {
        "complaints": [
            {"field": field, "why": "'20 L' is a text; allowed is 0.1 to 100000 L"},
        ]
    }
    good = json.dumps({"message": "check-shelf-file", "text": json.dumps(GOOD)})
    assert json.loads(answer(good)) == {"complaints": []}


def test_the_demo_tanks_hold_by_our_check_and_by_the_schema(library, judge):
    demo = demo_file(library.demo)
    assert check_shelf_file(demo) == []
    assert list(judge.iter_errors(demo)) == []
    assert [tank["demo"] for tank in demo["tanks"]] == [True] * 4
    assert len(demo["entries"]) > 80


def test_the_demo_tanks_hold_only_what_the_records_know(library):
    for tank in demo_file(library.demo)["tanks"]:
        assert all(one["plant"] in library.plants for one in tank["plants"])
        assert all(one["animal"] in library.animals for one in tank["animals"])


@pytest.mark.parametrize("name", [name for name in BAD_FILES if name not in BEYOND_A_SCHEMA])
def test_the_schema_refuses_what_a_schema_can(name, judge):
    text, _ = BAD_FILES[name]
    try:
        data = json.loads(text)
    except (ValueError, RecursionError):
        return
    assert list(judge.iter_errors(data)), "the schema lets it pass"


@pytest.mark.parametrize("name", sorted(BEYOND_A_SCHEMA))
def test_what_the_schema_leaves_to_the_check_is_named_rightly(name, judge):
    text, _ = BAD_FILES[name]
    data = json.loads(text)
    assert list(judge.iter_errors(data)) == [], "the schema can say this; take it off the list"


def test_the_good_file_holds_by_the_schema(judge):
    assert list(judge.iter_errors(GOOD)) == []


def test_the_table_for_the_browser_has_every_field_with_a_label(library):
    table = json.loads(fields_json(library))
    assert {one["key"] for one in table["tank"] if one["first"]} == {
        "name", "net_l", "flooded_on", "plants", "animals",
    }  # fmt: skip
    assert all(one["label"] for one in table["tank"])
    assert all("step" in one for one in table["tank"])
    readings = next(one for one in table["entries"] if one["kind"] == "reading")["whats"]
    assert all(
        one["low"] <= one["last_default"] <= one["high"] and one["steps"] for one in readings
    )
    doses = next(one for one in table["entries"] if one["kind"] == "dose")["whats"]
    assert {"kno3", "nitrate"} <= {one["what"] for one in doses}
