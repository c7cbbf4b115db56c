"""What a page reads of the records is noted, whatever way it reads; and a kept page is the one made anew."""

import pickle
from collections.abc import Mapping
from operator import eq

import pytest
from pydantic import TypeAdapter

from scripts.pages.generated import makers
from scripts.pages.open_data.data_files import open_data_makers
from scripts.pages.search_file import search_maker
from scripts.records.cell_digests import MOST_CELLS, CellDigests, gathered
from scripts.records.followed import FOLLOWED
from scripts.records.kept_files import KeptFiles
from scripts.records.lines import Document
from scripts.records.load import read_records
from scripts.records.noted_reads import LIST, THERE, WHOLE, Noted, noted_library
from scripts.records.plant import Plant
from scripts.setup import kept
from scripts.setup.paths import SPECIES
from tests.effort import long_run
from tests.own_records import own_records

LIBRARY = own_records()
SLUG = "lemna-minor"
PLANT = LIBRARY.plants[SLUG]
READ_WHOLE = {
    "as a dict": lambda plant: plant.model_dump(),
    "as JSON": lambda plant: plant.model_dump_json(),
    "by an adapter": lambda plant: TypeAdapter(dict[str, Plant]).dump_python({SLUG: plant}),
    "by an adapter as JSON": lambda plant: TypeAdapter(dict[str, Plant]).dump_json({SLUG: plant}),
    "compared": lambda plant: eq(plant, plant),
    "written": repr,
    "gone through": list,
    "by vars": vars,
    "copied": lambda plant: plant.model_copy(),
}


@pytest.fixture
def noted():
    return Noted()


@pytest.fixture(params=["put together", "as written"])
def plants(noted, request):
    """Plants as they are read, and as a build has them that knows that their texts hold."""
    library = LIBRARY if request.param == "put together" else as_written()
    return noted_library(library, noted).plants


def as_written():
    """Our records, each known to hold and not put together yet."""
    texts = {}

    def known(text):
        if text not in texts:
            texts[text] = Document(text)
        return texts[text]

    read_records(SPECIES, known)
    return read_records(SPECIES, known).library


def test_a_field_is_noted_and_is_what_it_was(noted, plants):
    plant = plants[SLUG]
    assert isinstance(plant, Plant)
    assert (plant.name, plant.needs) == (PLANT.name, PLANT.needs)
    assert noted == {("plants", SLUG): {THERE, "name", "needs"}}


@pytest.mark.parametrize("kind", FOLLOWED)
def test_a_record_as_written_is_the_one_put_together(noted, kind):
    records, written = getattr(LIBRARY, kind), getattr(as_written(), kind)
    of_kind = getattr(noted_library(as_written(), noted), kind)
    assert list(of_kind) == list(written) == list(records)
    for key, record in records.items():
        part = written.plain_part(key)
        assert part, key
        assert part == {name: getattr(record, name) for name in part}
        one = of_kind[key]
        assert [getattr(one, name) for name in part] == list(part.values())
        assert written.plain_part(key) is not None  # nobody has asked for more
        assert {name: getattr(one, name) for name in type(record).model_fields} == dict(record)
        assert written[key] == record
        assert written.plain_part(key) is None


def test_a_property_notes_the_fields_that_it_reads(noted, plants):
    assert plants[SLUG].offered == PLANT.offered
    assert noted["plants", SLUG] == {THERE, "never_offered"}


@pytest.mark.parametrize("way", READ_WHOLE)
def test_whatever_reads_a_whole_record_notes_that(noted, plants, way):
    READ_WHOLE[way](plants[SLUG])
    assert WHOLE in noted["plants", SLUG]


def test_a_noted_record_says_the_same_and_never_leaves_its_process(plants):
    assert plants[SLUG].model_dump() == PLANT.model_dump()
    with pytest.raises(pickle.PicklingError):
        pickle.dumps(plants[SLUG])
    with pytest.raises(TypeError, match="reads alike"):
        plants[SLUG].model_fields_set  # noqa: B018


def test_which_records_there_are_is_noted(noted, plants):
    assert not isinstance(plants, dict)  # whose insides could be read past it
    assert isinstance(plants, Mapping)
    assert "no-such-plant" not in plants
    assert noted == {("plants", "no-such-plant"): {THERE}}
    assert len(plants) == len(LIBRARY.plants)
    assert list(plants) == list(LIBRARY.plants)
    assert noted["plants", LIST] == {THERE}


def changed(kind, key, field, value):
    """The library with another value in one field."""
    records = dict(getattr(LIBRARY, kind))
    records[key] = records[key].model_copy(update={field: value})
    return LIBRARY._replace(**{kind: records})


def test_a_digest_changes_with_what_was_read_alone(noted, plants):
    _ = plants[SLUG].verdict, plants["egeria-densa"].name
    reads = gathered(noted)
    before = CellDigests(LIBRARY).of_reads(reads)
    other = changed("plants", SLUG, "verdict", "Other words.")
    assert CellDigests(other).of_reads(reads) != before
    for same in (
        changed("plants", SLUG, "family", "Other"),
        changed("plants", "egeria-densa", "verdict", "Other words."),
    ):
        assert CellDigests(same).of_reads(reads) == before


def test_a_field_that_was_read_of_many_records_is_read_of_every_one(noted, plants):
    for slug in list(LIBRARY.plants)[: MOST_CELLS + 1]:
        _ = plants[slug].name
    reads = gathered(noted)
    last = list(LIBRARY.plants)[-1]
    before = CellDigests(LIBRARY).of_reads(reads)
    assert CellDigests(changed("plants", last, "name", "Other")).of_reads(reads) != before
    assert CellDigests(changed("plants", last, "verdict", "Other")).of_reads(reads) == before
    fewer = LIBRARY._replace(
        plants={key: LIBRARY.plants[key] for key in LIBRARY.plants if key != last}
    )
    assert CellDigests(fewer).of_reads(reads) != before


def test_a_record_that_was_asked_for_and_was_not_there_is_seen_when_it_comes(noted, plants):
    assert plants.get("new-plant") is None
    reads = gathered(noted)
    more = LIBRARY._replace(plants={**LIBRARY.plants, "new-plant": PLANT})
    assert CellDigests(more).of_reads(reads) != CellDigests(LIBRARY).of_reads(reads)


@pytest.fixture(scope="module")
def as_kept(tmp_path_factory):
    """Every generated file of our records, kept."""
    before, kept.FOLDER = kept.FOLDER, tmp_path_factory.mktemp("kept")
    known = KeptFiles(LIBRARY, "the rest")
    for name, make in source_makers(known.library).items():
        known.made(name, make)
    known.keep()
    yield
    kept.FOLDER = before


def source_makers(library):
    """What makes each generated file of the source, but the package of the open data."""
    return {**makers(library), **search_maker(library), **open_data_makers(library)}


CHANGES = {
    "plants": {"verdict": "Other words.", "name": "Lemna altera", "trade_names": ["other name"]},
    "animals": {"verdict": "Other words.", "trade_names": ["other name"]},
    "problems": {"summary": "Other words.", "name": "Another name"},
    "names": {"summary": "Other words."},
    "sources": {"title": "Another title"},
    "findings": {"label": "another sign"},
}


def test_changes_are_tried_of_every_kind_that_is_followed():
    assert CHANGES.keys() == set(FOLLOWED)
    for kind, fields in CHANGES.items():
        assert (
            fields.keys() <= type(next(iter(getattr(LIBRARY, kind).values()))).model_fields.keys()
        )


@long_run()
@pytest.mark.parametrize("kind", CHANGES)
def test_a_file_that_is_taken_as_kept_is_the_one_that_would_be_made(as_kept, kind):
    key = next(iter(getattr(LIBRARY, kind)))
    for field, value in CHANGES[kind].items():
        library = changed(kind, key, field, value)
        known = KeptFiles(library, "the rest")
        taken = {name: text for name in source_makers(library) if (text := known.unchanged(name))}
        made = source_makers(library)
        assert 0 < len(taken) < len(made)
        for name, text in taken.items():
            assert kept.octets_of(made[name]()) == text, f"{name} after {field} of {key}"
