"""Phrases are parsed once for a text, and anew where it changed; what is no list of phrases is refused."""

import pytest
from pydantic import ValidationError

from scripts.pages import sought
from scripts.pages.sought import read_phrases
from scripts.setup import kept

TEXT = 'plants/a/:\n- "one two"\n- three\nplants/b/: []\n'


@pytest.fixture
def file(tmp_path, monkeypatch):
    monkeypatch.setattr(kept, "FOLDER", tmp_path / "kept")
    path = tmp_path / "phrases.yml"
    path.write_text(TEXT)
    return path


def test_phrases_are_parsed_once_and_anew_where_a_word_changed(file, monkeypatch):
    parsed, phrases_in = [], sought.phrases_in

    def noted(text):
        parsed.append(text)
        return phrases_in(text)

    monkeypatch.setattr(sought, "phrases_in", noted)
    first = read_phrases(file)
    assert first == {"plants/a/": ("one two", "three"), "plants/b/": ()}
    assert read_phrases(file) == first
    assert parsed == [TEXT]
    file.write_text(TEXT.replace("three", "tiger"))
    assert read_phrases(file)["plants/a/"] == ("one two", "tiger")


@pytest.mark.parametrize("text", ["- one\n", "plants/a/: 2026-01-02\n", "plants/a/: [1]\n"])
def test_what_holds_anything_else_is_refused_each_time(file, text):
    file.write_text(text)
    for _ in range(2):
        with pytest.raises(ValidationError):
            read_phrases(file)
