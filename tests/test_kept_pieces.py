"""Of a file that all records have a part in, only the parts of changed records are made again."""

import pytest

from scripts.records.kept_files import KeptFiles
from scripts.records.kept_pieces import KeptPieces, PiecesByRecord
from scripts.records.noted_reads import THERE
from scripts.setup import kept
from tests.own_records import own_records


@pytest.fixture
def nothing_kept(tmp_path, monkeypatch):
    monkeypatch.setattr(kept, "FOLDER", tmp_path / "kept")


def written(library, file="file.csv", beside="beside"):
    """The text of a file with each plant's verdict, and whose part was made now."""
    known, makes = KeptFiles(library, beside), []

    def made(key):
        makes.append(key)
        return f"{key}: {known.library.plants[key].verdict}"

    def whole():
        pieces = KeptPieces(known, file)
        parts = [
            pieces.of("plants", key, lambda key=key: made(key)) for key in known.library.plants
        ]
        pieces.keep()
        return "\n".join(parts)

    text = known.text(file, whole)
    known.keep()
    return text, makes


def changed(library, key):
    """A library in which a plant has another verdict."""
    other = library.plants[key].model_copy(update={"verdict": "Another word."})
    return library._replace(plants={**library.plants, key: other})


def test_only_the_piece_of_a_changed_record_is_made_again(nothing_kept):
    library = own_records()
    first, makes = written(library)
    assert makes == list(library.plants)
    assert written(library) == (first, [])  # the file as a whole is the same
    other = changed(library, "lemna-minor")
    text, makes = written(other)
    assert makes == ["lemna-minor"]
    assert text == "\n".join(f"{key}: {one.verdict}" for key, one in other.plants.items())
    assert written(library) == (first, ["lemna-minor"])


def test_a_piece_holds_for_what_is_named_beside_its_record(nothing_kept):
    known = KeptFiles(own_records(), "beside")
    made = []

    def piece(beside):
        pieces = KeptPieces(known, "file.csv")
        pieces.of("plants", "lemna-minor", lambda: made.append(beside) or beside, beside=beside)
        pieces.keep()

    for beside in ("two columns", "two columns", "three columns"):
        piece(beside)
    assert made == ["two columns", "three columns"]


def test_a_piece_of_some_fields_stays_while_others_change(nothing_kept):
    library, made = own_records(), []

    def piece(library):
        known = KeptFiles(library, "beside")
        pieces = KeptPieces(known, "file.json")
        plant = known.library.plants["lemna-minor"]
        found = pieces.of(
            "plants", "lemna-minor", lambda: made.append(1) or plant.name, fields=("name",)
        )
        pieces.keep()
        return found, known.noted["plants", "lemna-minor"]

    assert piece(library) == ("Lemna minor", {THERE, "name"})
    assert piece(changed(library, "lemna-minor")) == ("Lemna minor", {THERE, "name"})
    assert made == [1]


def test_a_piece_that_reads_more_than_it_says_is_refused(nothing_kept):
    known = KeptFiles(own_records(), "beside")
    pieces = KeptPieces(known, "file.json")
    plant = known.library.plants["lemna-minor"]
    assert plant.habit == "floater"  # what the file reads by itself is nothing of the piece's
    assert pieces.of("plants", "lemna-minor", lambda: plant.name, fields=("name",))
    assert known.noted["plants", "lemna-minor"] == {THERE, "habit", "name"}
    with pytest.raises(ValueError, match="plants lemna-minor reads verdict too"):
        pieces.of("plants", "lemna-minor", lambda: plant.verdict, fields=("family",))


def test_pieces_hold_for_their_file_and_for_what_stands_beside_it(nothing_kept):
    library = own_records()
    written(library)
    assert written(library, file="other.csv")[1] == list(library.plants)
    assert written(library, beside="other code")[1] == list(library.plants)


def test_where_none_is_kept_each_is_made():
    pieces = PiecesByRecord()
    assert [pieces.of("plants", "lemna-minor", lambda: "made") for _ in range(2)] == ["made"] * 2
    pieces.keep()
