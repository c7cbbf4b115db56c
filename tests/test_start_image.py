"""The image that a first visit starts from: the same on every machine, and never of other tables."""

import gzip
import json
import os
import shutil

import pytest

from scripts.runtime import start_image
from scripts.runtime.make_runtime import MADE
from scripts.setup.node import node
from scripts.setup.paths import SITE, TABLES
from scripts.site.offline import is_stored
from tests.effort import long_run


@pytest.fixture
def parts(site):
    return json.loads((site / "runtime" / "parts.json").read_text(encoding="utf-8"))


def test_the_copy_of_the_book_goes_without_it(site, parts):
    name = f"runtime/{parts['start']['file']}"
    assert (site / name).stat().st_size == parts["start"]["bytes"]
    assert not is_stored(name)
    assert name not in json.loads((site / "offline-list.json").read_text(encoding="utf-8"))


@long_run()
def test_it_is_the_same_from_another_folder_zone_and_language(parts, tmp_path, monkeypatch):
    folder = tmp_path / "another folder"
    shutil.copytree(MADE, folder)
    monkeypatch.setattr(
        "scripts.setup.node.node_environment",
        lambda: {**os.environ, "TZ": "Asia/Tokyo", "LANG": "de_DE.UTF-8", "HOME": str(tmp_path)},
    )
    image = tmp_path / "image.bin"
    done = node(str(start_image.MAKER), str(folder), str(image))
    assert done.returncode == 0, done.stderr
    octets = image.read_bytes()
    assert octets == gzip.decompress((MADE / parts["start"]["file"]).read_bytes())
    for place in (folder, SITE.parent):
        assert str(place).encode() not in octets


def test_a_table_that_is_in_it_makes_it_anew_and_another_does_not(tmp_path, monkeypatch, site):
    made = json.loads((start_image.MADE / "made-from.json").read_text(encoding="utf-8"))
    assert made["tables"], "the first calculators read none any more: what this tests is gone"
    monkeypatch.setattr(start_image, "MADE", tmp_path / "made")
    monkeypatch.setattr(start_image, "IMAGE", tmp_path / "made" / "image.pack")
    monkeypatch.setattr(start_image, "TABLES", tmp_path / "tables")
    monkeypatch.setattr(start_image, "code_state", lambda: "the same code")
    shutil.copytree(TABLES, tmp_path / "tables")
    runs = []

    def make(_runtime, target):
        runs.append(target)
        target.write_bytes(b"image %d" % len(runs))
        return {"tables": made["tables"], "words": 3}

    monkeypatch.setattr(start_image, "make", make)
    other = next(path for path in TABLES.glob("*.json") if path.stem not in made["tables"])
    for changed, number in ((None, 1), (other.stem, 1), (made["tables"][0], 2), (None, 2)):
        if changed:
            with (tmp_path / "tables" / f"{changed}.json").open("a") as file:
                file.write(" ")
        assert start_image.start_image(MADE) == (b"image %d" % number, 3)
    (tmp_path / "made" / "made-from.json").write_text(
        '{"tables"'
    )  # as after a build that was killed
    assert start_image.start_image(MADE) == (b"image 3", 3)
