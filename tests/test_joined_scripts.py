"""Scripts are served in few files: all that ours do is in them, and what others ask for has its address."""

import json
import os
import re
import shutil
import subprocess

import pytest

from scripts.setup.node import node_environment
from scripts.setup.paths import DOCS
from scripts.setup.say import Missing
from scripts.site import joined_scripts
from scripts.site.joined_scripts import GRAPH, Graph, graph_of, joined, renew_scripts
from tests.effort import long_run
from tests.one_site import RUN, locked

MOST_FILES = 6  # of ours that any page loads at its start; a browser fetches six side by side
PRELOADED = re.compile(r'<link rel="modulepreload" href="([^"]*)">')


@pytest.fixture(scope="module")
def small_tree(tmp_path_factory):
    """The project's scripts, in which some say something else, and the folder in which they were joined.

    Joining takes seconds: whichever process of a run comes first does it for all.
    """
    own = tmp_path_factory.getbasetemp()
    of_run = own.parent if RUN in os.environ else own
    folder = of_run / "small-scripts" / "assets"
    with locked(of_run / "small-scripts.lock"):
        if not folder.exists():
            fresh = folder.with_name("fresh")
            shutil.copytree(joined_scripts.SOURCES, fresh)
            for name, text in changed(fresh).items():
                (fresh / f"{name}.js").write_text(text, encoding="utf-8")
            fresh.rename(folder)
        return folder, joined_beside(folder)


def changed(folder):
    """What some scripts say instead, by name without the ending."""
    twice = 'import { twice } from "./twice.js";\nconsole.log(twice("part"));\n'
    return {
        "twice": "// why\nexport const twice = (text) => text + text;\n",
        "third": twice,
        "place": twice,
        "shelf/words": f"{(folder / 'shelf/words.js').read_text('utf-8')}\nconsole.log(import.meta.url);\n",
        "python-image": 'import { atMost } from "./at-most.js";\nconsole.log(atMost);\n'
        + (folder / "python-image.js").read_text("utf-8"),
    }


def joined_beside(folder):
    """The folder in which scripts were joined, beside them and not among the project's own."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(joined_scripts, "MADE", folder.with_name("made"))
        return joined(folder)


def test_every_module_of_ours_is_in_a_file_that_is_served(site):
    graph = graph_of(joined())
    plain = {"early.js"}
    ours = {
        path.relative_to(DOCS / "assets").as_posix() for path in (DOCS / "assets").rglob("*.js")
    }
    empty = ours - set(graph.modules) - plain
    assert not empty
    served = {
        path.relative_to(site / "assets").as_posix() for path in (site / "assets").rglob("*.js")
    }
    assert served == set(graph.files) | plain
    weight = sum((site / "assets" / name).stat().st_size for name in served)
    written = sum((DOCS / "assets" / name).stat().st_size for name in ours)
    assert weight < written


def test_no_page_loads_more_files_than_come_side_by_side(site):
    pages = list(site.rglob("*.html"))
    assert len(pages) > 300
    for page in pages:
        named = PRELOADED.findall(page.read_text(encoding="utf-8"))
        assert len(named) <= MOST_FILES, page
        assert len(named) == len(set(named)), page


def test_a_door_gives_out_what_its_module_does(site):
    """Asked of Node, which reads a module as a browser does; this one needs no page."""
    program = "import(process.argv[1]).then((all) => console.log(JSON.stringify(Object.keys(all))))"
    address = (site / "assets" / "finder.js").as_uri()
    done = subprocess.run(
        ["node", "--input-type=module", "-e", program, address],
        env=node_environment(), capture_output=True, text=True,
    )  # fmt: skip
    assert {"openIndex", "search"} <= set(json.loads(done.stdout or "[]")), done.stderr


@long_run()
def test_scripts_are_joined_once_without_what_people_read(small_tree):
    folder, made = small_tree
    graph = graph_of(made)
    assert "why" not in (made / graph.modules["twice.js"]).read_text(encoding="utf-8")
    stamp = (made / GRAPH).stat().st_mtime_ns
    assert joined_beside(folder) == made
    assert (made / GRAPH).stat().st_mtime_ns == stamp


@long_run()
def test_a_module_means_its_own_place_whatever_file_it_is_in(small_tree):
    _, made = small_tree
    file = graph_of(made).modules["shelf/words.js"]
    assert file != "shelf/words.js"
    assert '"shelf/words.js",import.meta.url' in (made / file).read_text(encoding="utf-8")


@pytest.mark.parametrize("worker", ["calculator-worker.js", "image-worker.js"])
def test_a_worker_never_loads_what_begins_a_page(worker):
    graph = graph_of(joined())
    assert "page.js" not in graph.closure([worker])


@long_run()
def test_what_a_worker_and_the_pages_share_stands_apart(small_tree):
    graph = graph_of(small_tree[1])
    assert graph.modules["at-most.js"] == "everywhere.js"
    assert "everywhere.js" in graph.closure(["page.js"])
    assert "page.js" not in graph.closure(["calculator-worker.js"])


@long_run()
def test_what_two_parts_share_needs_no_pack(small_tree):
    _, made = small_tree
    graph = graph_of(made)
    assert graph.modules["twice.js"] == "shared/twice.js"
    assert all("shared/twice.js" in graph.files[name] for name in ("third.js", "place.js"))
    assert (made / "shared" / "twice.js").is_file()


def test_a_broken_script_is_said_and_nothing_is_kept(tmp_path, monkeypatch):
    monkeypatch.setattr(joined_scripts, "MADE", tmp_path / "made")
    folder = tmp_path / "assets"
    shutil.copytree(joined_scripts.SOURCES, folder)
    (folder / "page.js").write_text("export const = 1;\n", encoding="utf-8")
    with pytest.raises(Missing, match=r"could not be joined[\s\S]*page\.js"):
        joined(folder)
    assert not list(joined_scripts.MADE.iterdir())


def test_scripts_that_cannot_be_joined_leave_those_that_are_there(tmp_path, monkeypatch):
    def refused():
        raise Missing("the scripts could not be joined")

    monkeypatch.setattr(joined_scripts, "joined", refused)
    script = tmp_path / "assets" / "page.js"
    script.parent.mkdir()
    script.write_text("shown", encoding="utf-8")
    with pytest.raises(Missing):
        renew_scripts(tmp_path)
    assert script.read_text(encoding="utf-8") == "shown"


def test_a_file_brings_what_it_loads_once():
    graph = Graph(
        files={"a.js": ["b.js", "c.js"], "b.js": ["c.js"], "c.js": []},
        modules={"one.js": "a.js", "two.js": "b.js"},
        packages={},
    )
    assert graph.closure(["one.js", "two.js"]) == ["a.js", "b.js", "c.js"]
    with pytest.raises(KeyError):
        graph.closure(["none.js"])
