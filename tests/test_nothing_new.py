"""A site is left as it stands only where neither its sources nor anything that was built have changed."""

import pytest

from scripts.setup import file_hash
from scripts.site import nothing_new as room
from scripts.site.nothing_new import (
    Sources,
    forget,
    only_records_differ,
    said_of_unchanged,
    sources,
    sources_from_octets,
    sources_in_octets,
    stamp_of,
    write_stamp,
)

SOURCES = (
    "calculators/one.py",
    "calculators/data/plants.json",
    "docs/about.md",
    "docs/theme/main.html",
    "docs/assets/icons/icon.png",
    "scripts/pages/plant_page.py",
    "scripts/templates/plant.md.j2",
    "scripts/locks/build.txt",
    "species/plants/lemna-minor.yml",
    "tests/published/light.yml",
    "mkdocs.yml",
    "LICENSE",
)
BUILT = (
    "site/index.html",
    "site/assets/style.css",
    "build/docs/index.md",
    "build/schema/plant.schema.json",
)
SAID = ["  a law list is old"]


@pytest.fixture
def tree(tmp_path, monkeypatch):
    """A small tree that has just been built."""
    places = {
        "ROOT": "",
        "SPECIES": "species",
        "TABLES": "calculators/data",
        "SOURCE": "build/docs",
        "SCHEMAS": "build/schema",
        "STAMPS": "build/whole",
    }
    for name, place in places.items():
        monkeypatch.setattr(room, name, tmp_path / place)
    for name in (*SOURCES, *BUILT, *room.ROOT_FILES):
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(f"{name} as it was")
    write_stamp(tmp_path / "site", now(tmp_path), SAID)
    return tmp_path


def now(tree):
    return sources(tree / "species", tree / "calculators" / "data")


def told(tree):
    return said_of_unchanged(tree / "site", now(tree))


@pytest.fixture
def nothing_known(monkeypatch):
    """A process that has read no file yet."""
    monkeypatch.setattr(file_hash, "KNOWN", {})


def test_what_another_process_has_seen_of_the_sources_need_not_be_read(tree, nothing_known):
    seen, known = sources_in_octets(), dict(file_hash.KNOWN)
    assert known
    file_hash.KNOWN.clear()
    assert sources_from_octets(seen) == now(tree)
    assert known == file_hash.KNOWN
    assert said_of_unchanged(tree / "site", sources_from_octets(seen)) == SAID


def test_a_source_that_changes_after_another_process_has_seen_it_is_met(tree, nothing_known):
    seen = sources_in_octets()
    (tree / SOURCES[0]).write_text("other")
    file_hash.KNOWN.clear()
    assert sources_from_octets(seen) != now(tree)


@pytest.mark.parametrize("share", [0, 0.001, 0.5, 0.999])
def test_where_no_other_process_has_told_of_all_this_one_looks(share):
    whole = sources_in_octets()
    assert sources_from_octets(whole[: int(len(whole) * share)]) == sources()


def test_what_has_not_changed_is_left_and_told_as_it_was(tree):
    assert told(tree) == SAID
    (tree / "scripts" / "__pycache__").mkdir()
    (tree / "scripts" / "__pycache__" / "one.pyc").touch()  # which a look at the sources leaves
    assert told(tree) == SAID


@pytest.mark.parametrize("name", [*SOURCES, *BUILT])
def test_a_file_that_changed_or_went_has_the_site_built(tree, name):
    path = tree / name
    before = path.read_text()
    path.write_text(before.replace("was", "is!"))  # of the same length
    assert told(tree) is None
    path.write_text(before)
    assert told(tree) == SAID
    path.unlink()
    assert told(tree) is None


@pytest.mark.parametrize(
    "room_of", ["species/plants", "docs", "scripts/pages", "site", "build/docs"]
)
def test_a_file_that_came_or_got_another_name_has_the_site_built(tree, room_of):
    fresh = tree / room_of / "fresh.txt"
    fresh.touch()
    assert told(tree) is None
    fresh.unlink()
    assert told(tree) == SAID
    some = next(path for path in sorted((tree / room_of).iterdir()) if path.is_file())
    some.rename(some.with_name("renamed.txt"))
    assert told(tree) is None


def test_another_day_or_package_has_the_site_built(tree, monkeypatch):
    monkeypatch.setattr(room, "surroundings", lambda: "another day")
    assert told(tree) is None


def test_a_site_without_a_stamp_or_with_half_of_one_is_built(tree):
    stamp = stamp_of(tree / "site")
    text = stamp.read_text()
    for part in ("", text[: len(text) // 2], "[]", "{}", "null"):
        stamp.write_text(part)
        assert told(tree) is None
    stamp.write_text(text)
    assert told(tree) == SAID
    forget(tree / "site")
    assert told(tree) is None
    forget(tree / "site")  # which may be done twice


def test_a_stamp_holds_for_its_own_site_alone(tree):
    (tree / "site").rename(tree / "other")
    assert said_of_unchanged(tree / "other", now(tree)) is None


def test_the_tables_are_judged_apart_since_a_build_makes_them(tree):
    before = now(tree)
    (tree / "calculators" / "data" / "plants.json").write_text("made anew")
    after = now(tree)
    assert after == Sources(before.records, before.rest, after.tables)
    assert after.tables != before.tables


def test_it_is_seen_whether_records_alone_are_others(tree):
    assert only_records_differ(tree / "site", now(tree))
    (tree / "species" / "plants" / "fresh.yml").touch()
    assert only_records_differ(tree / "site", now(tree))
    assert told(tree) is None
    for name in ("calculators/data/plants.json", "docs/fresh.md"):
        before = now(tree)
        path = tree / name
        path.write_text("other")
        assert not only_records_differ(tree / "site", now(tree))
        write_stamp(tree / "site", now(tree), SAID)
        assert now(tree) != before
    for text in ("", "[]", "{}", '{"of": []}'):
        stamp_of(tree / "site").write_text(text)
        assert not only_records_differ(tree / "site", now(tree))


def test_other_records_than_the_projects_are_sources_too(tree):
    other = tree / "other-species"
    other.mkdir()
    write_stamp(tree / "site", sources(other, other), SAID)
    assert said_of_unchanged(tree / "site", sources(other, other)) == SAID
    (other / "record.yml").touch()
    assert said_of_unchanged(tree / "site", sources(other, other)) is None
