"""A folder made anew holds what was put there and nothing else, whatever the one before it held."""

import os

import pytest

from scripts.setup import file_hash
from scripts.setup import new_folder as room
from scripts.setup.file_hash import names_below
from scripts.setup.new_folder import NewFolder, made_anew, set_aside

PAGE, OTHER = b"<p>as it was", b"<p>as it is!"
FILES = {
    "index.html": PAGE,
    "plants/one/index.html": PAGE,
    "plants/two/index.html": PAGE,
    "assets/a.js": PAGE,
}


@pytest.fixture
def before(tmp_path):
    """A folder that a build left."""
    return filled(tmp_path / "before", FILES)


def filled(folder, files):
    for name, octets in files.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_bytes(octets)
    return folder


def numbers(folder):
    """By name which file of the disk it is."""
    return {name: (folder / name).stat().st_ino for name in read(folder)}


def read(folder):
    return {name: (folder / name).read_bytes() for name in names_below(folder)}


def made(tmp_path, before, files=FILES):
    with made_anew(tmp_path / "new", before) as new:
        for name, octets in files.items():
            new.put(name, octets)
    return new.path


def test_what_is_the_same_is_moved_and_what_is_left_over_goes(tmp_path, before):
    were = numbers(before)
    new = made(tmp_path, before, {name: FILES[name] for name in FILES if "two" not in name})
    assert read(new) == {name: PAGE for name in FILES if "two" not in name}
    assert numbers(new) == {name: were[name] for name in read(new)}
    assert not (new / "plants" / "two").exists()
    assert not before.exists()


def test_what_is_other_is_written_and_what_stood_beside_it_does_not_come_along(tmp_path, before):
    (before / "plants" / "one" / "by hand.txt").write_bytes(b"a hand")
    were = numbers(before)
    files = {**FILES, "plants/two/index.html": OTHER, "new/index.html": OTHER}
    new = made(tmp_path, before, files)
    assert read(new) == files
    assert numbers(new)["plants/one/index.html"] == were["plants/one/index.html"]


@pytest.mark.parametrize("there", [False, True])
def test_with_nothing_before_everything_is_written(tmp_path, there):
    if there:
        (tmp_path / "before").write_bytes(b"a file where a folder was")
    assert read(made(tmp_path, tmp_path / "before")) == FILES


def test_a_link_is_never_followed_into_files_of_somebodys_own(tmp_path, before):
    own = filled(tmp_path / "own", FILES)
    (before / "index.html").unlink()
    (before / "index.html").symlink_to(own / "index.html")
    (before / "plants").rename(tmp_path / "plants")
    (before / "plants").symlink_to(own / "plants")
    new = made(tmp_path, before)
    assert read(new) == FILES
    assert not any(path.is_symlink() for path in new.rglob("*"))
    assert read(own) == FILES


def test_a_linked_folder_is_not_taken_of_and_goes_as_a_link(tmp_path):
    own = filled(tmp_path / "own", FILES)
    (tmp_path / "before").symlink_to(own)
    assert read(made(tmp_path, tmp_path / "before")) == FILES
    assert not (tmp_path / "before").is_symlink()
    assert read(own) == FILES


def test_what_nobody_else_may_read_is_written_anew(tmp_path, before):
    (before / "index.html").chmod(0o600)
    (before / "plants" / "one").chmod(0o700)
    new = made(tmp_path, before)
    assert (new / "index.html").stat().st_mode == (new / "assets" / "a.js").stat().st_mode
    assert (new / "plants" / "one").stat().st_mode == (new / "plants" / "two").stat().st_mode


def test_a_file_that_changes_before_it_is_moved_is_written(tmp_path, before, monkeypatch):
    plain = room.move

    def moved_late(old, new):
        filled(before, {os.path.relpath(old, before): OTHER})  # another build's
        plain(old, new)

    monkeypatch.setattr(room, "move", moved_late)
    assert read(made(tmp_path, before)) == FILES


@pytest.mark.parametrize("empty", [False, True])
def test_a_folder_in_place_of_a_file_goes(tmp_path, before, empty):
    for name in FILES:
        (before / name).unlink()
        filled(before / name, {} if empty else {"deeper.txt": OTHER})
        (before / name).mkdir(exist_ok=True)
    assert read(made(tmp_path, before)) == FILES


def test_a_file_that_has_gone_as_it_is_moved_is_written(tmp_path, before, monkeypatch):
    monkeypatch.setattr(room, "move", lambda old, new: os.rename(f"{old}-gone", new))
    assert read(made(tmp_path, before)) == FILES


def test_no_file_is_put_twice(tmp_path, before):
    new = NewFolder(tmp_path / "new", before)
    new.put("index.html", OTHER)
    with pytest.raises(FileExistsError):
        new.put("index.html", PAGE)
    assert read(new.path) == {"index.html": OTHER}


def test_no_file_is_copied_over_another(tmp_path, before):
    source = filled(tmp_path / "source", {"index.html": OTHER})
    new = NewFolder(tmp_path / "new", before)
    new.put("index.html", PAGE)
    with pytest.raises(FileExistsError, match=r"index\.html stands in new/ already"):
        new.copy_all(source)
    assert read(new.path) == {"index.html": PAGE}


def test_a_copy_is_moved_where_it_is_the_same_and_keeps_its_time_where_it_is_not(tmp_path, before):
    source = filled(tmp_path / "source", {"index.html": PAGE, "assets/a.js": OTHER, "x.md": PAGE})
    filled(source, {"assets/x.md": PAGE, "notes/deeper/b.js": PAGE})
    os.utime(source / "assets" / "a.js", (1e9, 1e9))
    were = numbers(before)
    with made_anew(tmp_path / "new", before) as new:
        new.copy_all(source, ignored=["*.md", "notes/*"])
        new.copy_all(source / "assets", "more")
    copied = {"index.html": PAGE, "assets/a.js": OTHER, "more/a.js": OTHER, "more/x.md": PAGE}
    assert read(new.path) == copied
    assert numbers(new.path)["index.html"] == were["index.html"]
    assert (new.path / "assets" / "a.js").stat().st_mtime == 1e9


def test_the_digests_of_all_that_was_put_are_known(tmp_path, before, monkeypatch):
    source = filled(tmp_path / "source", {"more/b.js": PAGE, "more/c.js": OTHER})
    with made_anew(tmp_path / "new", filled(before, {"more/b.js": PAGE})) as new:
        for name, octets in {**FILES, "index.html": OTHER}.items():
            new.put(name, octets)
        new.copy_all(source)
    truth = {
        name: file_hash.hashlib.sha256(octets).digest() for name, octets in read(new.path).items()
    }
    monkeypatch.setattr("builtins.open", None)  # none is read
    for name, digest in truth.items():
        assert file_hash.digest_of(str(new.path / name), just_made=True) == digest


def test_a_folder_is_set_aside_in_place_of_the_one_that_was(tmp_path, before):
    site = filled(tmp_path / "site", {"index.html": OTHER})
    set_aside(site, before)
    assert not site.exists()
    assert read(before) == {"index.html": OTHER}
    set_aside(site, before)  # where there is none
    assert not before.exists()


def test_a_folder_on_another_disk_goes(tmp_path, before, monkeypatch):
    def refused(old, new):
        raise OSError(18, "Invalid cross-device link")

    monkeypatch.setattr(os, "rename", refused)
    set_aside(filled(tmp_path / "site", FILES), before)
    assert not (tmp_path / "site").exists()
    assert not before.exists()
