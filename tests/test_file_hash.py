"""A file is read once a process while it stays as it is, and anew after every write."""

import hashlib
import os
import shutil

import pytest

from scripts.setup import file_hash as room
from scripts.setup.file_hash import digest_of, hash_of_files
from scripts.setup.paths import WINDOWS

LATER_NS = 10 * room.COARSEST_STEP_NS


@pytest.fixture
def file(tmp_path, monkeypatch):
    monkeypatch.setattr(room, "KNOWN", {})
    path = tmp_path / "file.txt"
    path.write_bytes(b"as it was")
    return path


def looked_at_later(monkeypatch):
    """As if the file had been written long ago."""
    now = room.time.time_ns
    monkeypatch.setattr(room.time, "time_ns", lambda: now() + LATER_NS)


def test_a_file_that_stays_is_read_once(file, monkeypatch):
    looked_at_later(monkeypatch)
    digest_of(str(file))
    (state,) = room.KNOWN
    monkeypatch.setitem(room.KNOWN, state, room.KNOWN[state]._replace(digest=b"known"))
    assert digest_of(str(file)) == b"known"
    moved = file.parent.rename(file.parent.with_name("moved"))
    assert digest_of(str(moved / file.name)) == b"known"


def test_a_file_just_written_is_read_again_whatever_its_times_say(file):
    first = digest_of(str(file))
    written = os.stat(file).st_mtime_ns
    file.write_bytes(b"as it is!")  # of the same length
    os.utime(file, ns=(written, written))
    assert digest_of(str(file)) != first


@pytest.mark.skipif(WINDOWS, reason="its second time is that of a file's making")
def test_a_time_that_is_set_back_hides_no_write(file, monkeypatch):
    looked_at_later(monkeypatch)
    first, before = digest_of(str(file)), os.stat(file)
    while os.stat(file).st_ctime_ns == before.st_ctime_ns:  # until the clock has gone on
        file.write_bytes(b"as it is!")
        os.utime(file, ns=(before.st_atime_ns, before.st_mtime_ns))
    assert os.stat(file).st_mtime_ns == before.st_mtime_ns
    assert digest_of(str(file)) != first


def test_another_file_in_its_place_is_read(file, monkeypatch, tmp_path):
    looked_at_later(monkeypatch)
    first, before = digest_of(str(file)), os.stat(file)
    other = tmp_path / "other.txt"
    other.write_bytes(b"as it is!")
    os.utime(other, ns=(before.st_atime_ns, before.st_mtime_ns))
    other.replace(file)
    assert digest_of(str(file)) != first


def test_what_was_written_here_is_known_to_a_note_of_it_alone(file, tmp_path):
    room.write_known(file, b"other")
    copied = shutil.copy2(file, tmp_path / "copied.txt")
    room.note_digest(copied.stat(), hashlib.sha256(b"other").digest())
    for path in (str(file), str(copied)):
        state = room.state_of(os.stat(path))
        assert room.KNOWN[state].digest == hashlib.sha256(b"other").digest()
        room.KNOWN[state] = room.KNOWN[state]._replace(digest=b"known")
        assert digest_of(path, just_made=True) == b"known"
        assert digest_of(path) == hashlib.sha256(b"other").digest()


def test_what_is_written_over_what_was_made_is_seen(file):
    room.write_known(file, b"other")
    file.write_bytes(b"written over")
    assert digest_of(str(file), just_made=True) == hashlib.sha256(b"written over").digest()
    with pytest.raises(FileExistsError):
        room.write_known(file, b"once more", "xb")


def test_the_hash_is_of_names_and_octets(file, tmp_path):
    first = hash_of_files([file])
    assert hash_of_files([str(file)]) == first
    file.write_bytes(b"as it is!")
    assert hash_of_files([file]) != first
    file.write_bytes(b"as it was")
    assert hash_of_files([file, tmp_path / "gone.txt"]) == first
    moved = file.rename(tmp_path / "moved.txt")
    assert hash_of_files([moved]) != first
