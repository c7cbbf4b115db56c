"""A text with nothing wrong in it is parsed once; whatever is said of it or of others stays the same."""

import pytest

from scripts.records import parsed_texts as room
from scripts.records.lines import Document
from scripts.records.parse import NotARecord
from scripts.records.parsed_texts import ParsedTexts
from scripts.setup import kept

GOOD = 'name: Lemna\nsizes: [1, 2.5, -0.0]\n"true": true\nnone:\nwords: "ü 𝄞"\n'
TWICE = "name: one\nname: two\n"
DATED = "read_on: 2026-01-02\nmany: .inf\n"


@pytest.fixture
def parsed(tmp_path, monkeypatch):
    """The texts that were parsed, in a room of its own."""
    monkeypatch.setattr(kept, "FOLDER", tmp_path / "kept")
    texts = []

    def note(text):
        texts.append(text)
        return Document(text)

    note.known = Document.known
    monkeypatch.setattr(room, "Document", note)
    return texts


def of_one_run(*texts, of="here"):
    known = ParsedTexts.kept(of)
    documents = [known.document(text) for text in texts]
    known.keep()
    return documents


def test_a_sound_text_is_parsed_in_the_first_run_alone(parsed):
    (first,) = of_one_run(GOOD)
    (again,) = of_one_run(GOOD)
    assert parsed == [GOOD]
    assert repr(again.value) == repr(first.value)  # -0.0 too
    assert again.faults == []
    assert again.line(("sizes", 1)) == first.line(("sizes", 1)) == 2
    assert again.has(("none",))
    assert not again.has(("other",))


def test_a_text_with_a_fault_is_parsed_each_time_and_has_it_each_time(parsed):
    said = [of_one_run(TWICE, GOOD)[0].faults for _ in range(2)]
    assert said[0] == said[1] != []
    assert parsed == [TWICE, GOOD, TWICE]
    for _ in range(2):
        with pytest.raises(NotARecord):
            of_one_run("- [")


def test_what_cannot_be_kept_as_it_is_is_parsed_each_time(parsed):
    values = [repr(of_one_run(DATED)[0].value) for _ in range(2)]
    assert values[0] == values[1]
    assert parsed == [DATED, DATED]


def test_only_what_was_asked_for_last_is_kept_and_for_its_folder_alone(parsed):
    of_one_run(GOOD, "name: two")
    of_one_run(GOOD)
    assert list(ParsedTexts.kept("here").values.values()) == [(Document(GOOD).value, {})]
    assert ParsedTexts.kept("there").values == {}


def test_where_the_texts_are_the_same_nothing_is_written_again(parsed, monkeypatch):
    of_one_run(GOOD, DATED, TWICE)
    monkeypatch.setattr(room, "keep_blocks", lambda *_given: pytest.fail("written again"))
    of_one_run(GOOD, DATED, TWICE)


def test_a_word_that_is_said_again_is_held_once():
    text = "grade: common practice\nsure:\n  grade: common practice\n"
    one, other = Document(text).value, Document(text).value
    assert one == {"grade": "common practice", "sure": {"grade": "common practice"}}
    assert one["grade"] is one["sure"]["grade"] is other["grade"]
    (key, _), (inner,) = one, one["sure"]
    assert key is inner
