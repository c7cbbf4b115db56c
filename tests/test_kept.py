"""Texts that are kept from one build to the next: made once, made anew where anything changed."""

import os
import time

import pytest

from scripts.setup import kept as room
from scripts.setup.kept import (
    LONGEST_UNUSED_S,
    LOOK_EVERY_S,
    LOOKED,
    is_kept,
    keep,
    kept,
    place_of,
    throw_away_unused,
)


@pytest.fixture
def made(tmp_path, monkeypatch):
    """A room of its own, and a maker that counts."""
    monkeypatch.setattr(room, "FOLDER", tmp_path / "kept")
    times = []

    def make():
        times.append("made")
        return f"text {len(times)} with °dH\r\nand a line"

    return make, times


def test_a_text_is_made_once(made):
    make, times = made
    first = kept("kind", "ingredients", make)
    assert kept("kind", "ingredients", make) == first
    assert len(times) == 1


def test_other_ingredients_another_kind_or_other_code_make_it_anew(made, monkeypatch):
    make, times = made
    texts = [kept("kind", "one", make), kept("kind", "two", make), kept("other", "one", make)]
    monkeypatch.setattr(room, "code", lambda: "another version")
    texts.append(kept("kind", "one", make))
    assert len(set(texts)) == len(times) == 4


def test_a_maker_that_stops_leaves_nothing(made):
    make, _ = made

    def stopped():
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        kept("kind", "ingredients", stopped)
    assert kept("kind", "ingredients", make).startswith("text 1")


def test_only_what_no_build_asked_for_is_thrown_away(made):
    make, times = made
    kept("kind", "asked", make)
    kept("kind", "forgotten", make)
    long_ago = time.time() - LONGEST_UNUSED_S - 1
    for path in room.FOLDER.glob("*/*"):
        os.utime(path, (long_ago, long_ago))
    kept("kind", "asked", make)
    throw_away_unused()
    assert len(list(room.FOLDER.glob("*/*"))) == 1
    kept("kind", "asked", make)
    assert len(times) == 2


def test_the_code_is_every_file_that_a_text_can_follow_from(tmp_path, monkeypatch):
    monkeypatch.setattr(room, "ROOT", tmp_path)
    (tmp_path / "scripts" / "deep").mkdir(parents=True)
    file = tmp_path / "scripts" / "deep" / "template.j2"
    seen = set()
    for text in ("one", "two"):
        file.write_text(text)
        seen.add(room.code.__wrapped__())
    file.rename(file.with_name("renamed.j2"))
    seen.add(room.code.__wrapped__())
    assert len(seen) == 3


def test_what_was_made_together_with_others_is_found(made):
    make, times = made
    assert not is_kept("kind", "ingredients")
    keep("kind", "ingredients", "a text")
    assert is_kept("kind", "ingredients")
    assert not is_kept("kind", "others")
    assert kept("kind", "ingredients", make) == "a text"
    assert times == []


def test_what_is_asked_for_is_not_thrown_away(made):
    keep("kind", "ingredients", "a text")
    long_ago = time.time() - LONGEST_UNUSED_S - 1
    for path in room.FOLDER.glob("*/*"):
        os.utime(path, (long_ago, long_ago))
    assert is_kept("kind", "ingredients")
    throw_away_unused()
    assert is_kept("kind", "ingredients")


def test_a_file_beside_the_kinds_stops_no_build(made):
    keep("kind", "ingredients", "a text")
    stray = room.FOLDER / "stray.txt"
    stray.write_text("of somebody's file manager", encoding="utf-8")
    throw_away_unused()
    assert stray.exists()
    assert is_kept("kind", "ingredients")


def test_what_is_kept_is_looked_through_once_a_day_whatever_the_clock_says(made):
    def left(now):
        keep("kind", "forgotten", "a text")
        os.utime(place_of("kind", "forgotten"), (1e9, 1e9))
        throw_away_unused(now)
        return is_kept("kind", "forgotten")

    now = time.time()
    assert not left(now)
    assert left(now)
    assert left(now + LOOK_EVERY_S - 60)
    assert not left(now + LOOK_EVERY_S + 60)
    os.utime(room.FOLDER / LOOKED, (4e9, 4e9))  # by a clock that was set back since
    assert not left(now)
