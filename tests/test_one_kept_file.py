"""Values that are kept together: found by their ingredients, and forgotten where nobody asked."""

import pytest

from scripts.setup import kept, one_kept_file
from scripts.setup.one_kept_file import KeptTogether, hash_of


@pytest.fixture(autouse=True)
def nothing_kept(tmp_path, monkeypatch):
    monkeypatch.setattr(kept, "FOLDER", tmp_path / "kept")


def build(*asked, of="here"):
    """What a build finds of these names; what it lacks it puts there."""
    known = KeptTogether("kind", of)
    found = {name: known.get(name) for name in asked}
    for name, value in found.items():
        if value is None:
            known.put(name, [f"made of {name}"])
    known.keep()
    return found


def test_what_a_build_put_there_the_next_one_finds_and_no_other_place():
    assert build("one", "two") == {"one": None, "two": None}
    assert build("one", "three") == {"one": ["made of one"], "three": None}
    assert build("one", of="there") == {"one": None}
    assert build("two") == {"two": None}  # which the build before had not asked for


def test_where_all_was_known_nothing_is_written(monkeypatch):
    build("one")
    monkeypatch.setattr(one_kept_file, "keep", lambda *_given: pytest.fail("written again"))
    build("one")


def test_other_ingredients_or_another_order_are_another_name():
    assert len({hash_of("one", "two"), hash_of("two", "one"), hash_of("onetwo"), hash_of()}) == 4


def test_another_value_under_a_name_is_kept_and_found_at_once():
    build("one")
    known = KeptTogether("kind", "here")
    known.put("one", ["another"])
    assert known.get("one") == ["another"]
    known.keep()
    assert build("one") == {"one": ["another"]}
