"""A build after another: what changed reaches the site, and the site is that of a build from nothing.

In a copy of the tree, by the command that people type, in a thorough run.
"""

import hashlib
import os
import random
import shutil
import signal
import subprocess
import sys
import time
from datetime import date

import pytest

from scripts.setup.paths import BUILD, ROOT
from scripts.site.nothing_new import ROOMS, ROOT_FILES
from tests.effort import long_run

MADE_BY_NODE = (
    "bundles",
    "bytecode",
    "interpreter",
    "runtime",
    "wheel",
)  # long to make, not tried here
KEPT = ("kept", "templates", "whole", "docs", "headings", "framed", "docs-before", "site-before")
KILLS, LATEST_S = 6, 0.5  # seconds after a stage began, which is all that it takes
NOTHING_NEW = "nothing has changed since the last build"
RECORD, PROSE, TEMPLATE, CODE = (
    "species/plants/lemna-minor.yml",
    "docs/about.md",
    "scripts/templates/plant.md.j2",
    "scripts/pages/guides.py",
)
SMALL_CHANGES = (  # a figure that stands in tables, a word of the vocabulary, of an animal, of a source
    (RECORD, "high: 33", "high: 32"),
    ("species/vocabulary.yml", "floating plant", "plant that floats"),
    ("species/animals/neocaridina-davidi.yml", '\nverdict: "', '\nverdict: "Changedanimal. '),
    ("species/sources.yml", 'title: "', 'title: "Changedsource '),
    ("species/findings.yml", 'label: "', 'label: "changed '),
)
FRAME = "docs/theme/main.html"
STYLE = "docs/assets/style.css"


class Tree:
    """A copy of the project in which files are changed and the site is built."""

    def __init__(self, folder):
        self.folder, self.site = folder, folder / "site"
        self.day = None  # of the last build
        for name in ROOMS:
            shutil.copytree(
                ROOT / name, folder / name, ignore=shutil.ignore_patterns("__pycache__")
            )
        for name in ROOT_FILES:
            shutil.copy(ROOT / name, folder / name)
        for name in MADE_BY_NODE:
            shutil.copytree(BUILD / name, folder / "build" / name)
        (folder / "build" / "npm").symlink_to(BUILD / "npm")

    def start(self):
        environment = {
            **os.environ,
            "MULMBOOK_INSIDE": str(self.folder / ".venv"),
            "PYTHONPATH": str(self.folder),
        }
        command = [sys.executable, "-m", "scripts.serve", "--build-only"]
        return subprocess.Popen(
            command,
            cwd=self.folder,
            env=environment,
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            text=True,
            start_new_session=True,
        )

    def build(self):
        """What the command says; it has to end well."""
        self.day = date.today()
        process = self.start()
        said, _ = process.communicate()
        assert process.returncode == 0, said
        return said

    def stands(self):
        """Whether the command says that nothing has changed; once more where midnight came between."""
        before = self.day
        return NOTHING_NEW in self.build() or (self.day != before and NOTHING_NEW in self.build())

    def refused(self):
        """What the command says of a tree that does not hold."""
        process = self.start()
        said, _ = process.communicate()
        assert process.returncode == 1, said
        return said

    def replace(self, name, old, new):
        path = self.folder / name
        text = path.read_text(encoding="utf-8")
        assert old in text, name
        path.write_text(text.replace(old, new, 1), encoding="utf-8")

    def page(self, address):
        return (self.site / address / "index.html").read_text(encoding="utf-8")

    def files(self):
        return {
            path.relative_to(self.site).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest()
            for path in self.site.rglob("*")
            if path.is_file() and path.name != "sitemap.xml.gz"  # which its maker dates
        }

    def files_from_nothing(self):
        for name in KEPT:
            shutil.rmtree(self.folder / "build" / name, ignore_errors=True)
        shutil.rmtree(self.site)
        self.build()
        return self.files()


@pytest.fixture(scope="module")
def tree(tmp_path_factory, site):
    """A copy of the tree after a build; the ``site`` has made what Node makes."""
    made = Tree(tmp_path_factory.mktemp("warm") / "tree")
    made.build()
    return made


@long_run()
def test_what_changed_reaches_the_site_which_is_that_of_a_build_from_nothing(tree):
    gone = tree.folder / "docs" / "gone.md"
    gone.write_text("---\ntitle: Gone\ndescription: Soon.\n---\n# Soon gone { #top }\n")
    tree.build()
    assert "Soon gone" in tree.page("gone")
    assert tree.stands()
    tree.replace(RECORD, "\nverdict: ", "\nverdict: Changedrecord. ")
    tree.replace(PROSE, "\n# ", "\nChangedprose.\n\n# ")
    gone.unlink()
    assert NOTHING_NEW not in tree.build()
    assert "Changedrecord." in tree.page("plants/lemna-minor")
    assert "Changedprose." in tree.page("about")
    assert not (tree.site / "gone").exists()
    warm = tree.files()
    assert warm == tree.files_from_nothing()
    assert tree.stands()


@long_run()
def test_what_the_pages_are_made_with_reaches_the_site_too(tree):
    tree.replace(FRAME, "To the text", "Changedframe")
    tree.build()
    assert all("Changedframe" in tree.page(name) for name in ("", "plants/lemna-minor", "about"))
    tree.replace(STYLE, "\n", "\n.changedstyle { color: red; }\n")
    tree.replace(TEMPLATE, '<p class="verdict">', '<p class="verdict">Changedtemplate. ')
    tree.replace(CODE, "    return kept_together(", '    return "Changedcode. " + kept_together(')
    tree.build()
    assert "Changedtemplate." in tree.page("plants/egeria-densa")
    assert "Changedcode." in tree.page("guides/heat-waves")
    assert "changedstyle" in (tree.site / "assets" / "style.css").read_text(encoding="utf-8")
    warm = tree.files()
    assert warm == tree.files_from_nothing()


@long_run()
def test_records_that_change_come_and_go_reach_all_that_is_made_of_them(tree):
    new = tree.folder / "species" / "plants" / "lemna-nova.yml"
    text = (tree.folder / RECORD).read_text(encoding="utf-8")
    new.write_text(text.replace("Lemna minor", "Lemna nova"), encoding="utf-8")
    tree.build()
    assert "Lemna nova" in tree.page("plants/lemna-nova")
    assert "Lemna nova" in tree.page("plants")
    came = tree.files()
    assert came == tree.files_from_nothing()
    new.unlink()
    for name, old, other in SMALL_CHANGES:
        tree.replace(name, old, other)
    tree.build()
    assert not (tree.site / "plants" / "lemna-nova").exists()
    assert "Lemna nova" not in tree.page("plants")
    warm = tree.files()
    assert warm == tree.files_from_nothing()


@long_run()
def test_broken_records_are_told_each_time_and_leave_the_site(tree):
    before = tree.files()
    tree.replace(RECORD, "\nhabit: floater\n", "\nhabit: flaoter\n")
    first = tree.refused()
    assert f"{RECORD}:" in first
    assert "flaoter" in first
    assert tree.refused() == first
    shutil.rmtree(tree.folder / "build" / "kept")
    assert tree.refused() == first
    assert tree.files() == before
    tree.replace(RECORD, "\nhabit: flaoter\n", "\nhabit: floater\n")
    assert tree.stands()


@long_run()
@pytest.mark.parametrize("stage", ["writing the pages", "building the site"])
def test_a_build_that_was_killed_half_way_is_not_taken_for_a_whole_one(tree, stage):
    before = tree.files()
    draw = random.Random(stage)
    words = "\nverdict: "
    for kill in range(KILLS):  # the last ones may come after a whole build
        tree.replace(RECORD, words, words := f"\nverdict: Half way {kill}. ")
        process = tree.start()
        while stage not in process.stdout.readline():
            assert process.poll() is None
        time.sleep(draw.uniform(0, LATEST_S) if kill else 0)
        os.killpg(process.pid, signal.SIGKILL)  # those that share its work too
        process.communicate()
        assert (tree.site / "index.html").exists()
    tree.replace(RECORD, words, "\nverdict: ")
    assert NOTHING_NEW not in tree.build()
    assert tree.files() == before
