"""A generated file is kept with what it was made of: one text of each, and none that could be another's."""

from pathlib import Path

import pytest

from scripts.pages.write_made import write_made
from scripts.records.kept_files import KIND, KeptFiles
from scripts.setup import kept
from tests.own_records import own_records

FILES = ("lemna-minor", "vallisneria-spiralis")
LIBRARY = own_records()


@pytest.fixture(autouse=True)
def nothing_kept(tmp_path, monkeypatch):
    monkeypatch.setattr(kept, "FOLDER", tmp_path / "kept")


def verdict(library, key):
    return library.plants[key].verdict


def build(library, names=FILES, *, is_stopped=False):
    """The files that say the verdicts of plants, and which of them were made now."""
    known, made = KeptFiles(library, "beside"), []

    def make(key):
        made.append(key)
        return verdict(known.library, key)

    texts = write_made(
        known,
        {name: lambda name=name: make(name) for name in names},
        lambda _name, octets: octets.decode(),
    )
    if not is_stopped:
        known.keep()
    return texts, made


def changed(verdict):
    other = LIBRARY.plants[FILES[0]].model_copy(update={"verdict": verdict})
    return LIBRARY._replace(plants={**LIBRARY.plants, FILES[0]: other})


def texts_kept():
    return sorted(path.read_text() for path in (kept.FOLDER / KIND).iterdir())


def test_a_file_is_made_again_only_where_what_it_reads_has_changed():
    first, made = build(LIBRARY)
    assert made == list(FILES)
    assert build(LIBRARY) == (first, [])
    assert build(changed("Another.")) == ({**first, FILES[0]: "Another."}, [FILES[0]])
    assert build(LIBRARY) == (first, [FILES[0]])  # no text of an earlier state stays


def test_of_each_file_one_text_stays_and_none_of_a_file_that_has_gone():
    first, _ = build(LIBRARY)
    build(changed("Another."))
    assert texts_kept() == sorted(["Another.", first[FILES[1]]])
    build(LIBRARY, FILES[1:])
    assert texts_kept() == [first[FILES[1]]]


def test_a_build_that_was_stopped_leaves_no_text_to_be_taken_for_another():
    first, _ = build(LIBRARY)
    build(changed("Another."), is_stopped=True)
    assert build(LIBRARY) == (first, [])
    assert build(changed("A third.")) == ({**first, FILES[0]: "A third."}, [FILES[0]])


def test_a_text_that_has_gone_is_made_again():
    first, _ = build(LIBRARY)
    for path in (kept.FOLDER / KIND).iterdir():
        path.unlink()
    known = KeptFiles(LIBRARY, "beside")
    assert known.places_of_unchanged(FILES) == {}
    assert build(LIBRARY) == (first, list(FILES))


def test_the_places_of_unchanged_files_hold_their_texts():
    first, _ = build(LIBRARY)
    places = KeptFiles(changed("Another."), "beside").places_of_unchanged([*FILES, "no-file"])
    assert list(places) == [FILES[1]]
    assert Path(places[FILES[1]]).read_text() == first[FILES[1]]
