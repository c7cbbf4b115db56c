"""The watching server: only what changed is written, the open page first, and the policy stays."""

import io
import threading
import urllib.request
from types import SimpleNamespace

import pytest

from scripts.records.lines import RecordFault
from scripts.records.load import BadRecords
from scripts.site import watch
from scripts.site.addresses import address_of, relative
from scripts.site.offline import WORKER
from scripts.site.watch import Watcher
from scripts.site.watch_server import SCRIPT_ADDRESS, News, make_watch_server
from tests.effort import long_run, share_of

POLICY = 'http-equiv="Content-Security-Policy"'


@pytest.mark.parametrize(
    ("target", "page", "link"),
    [
        ("sources/", "about/", "../sources/"),
        ("plants/table/", "plants/lemna-minor/", "../table/"),
        (".", "plants/lemna-minor/", "../.."),
        (".", "", "."),
        ("assets/style.css", "", "assets/style.css"),
        ("plants/", "plants/", "./"),
    ],
)
def test_links_are_those_between_folders(target, page, link):
    assert relative(target, page) == link


@pytest.mark.parametrize(
    ("name", "address"),
    [("index.md", ""), ("about.md", "about/"), ("plants/index.md", "plants/")],
)
def test_a_page_has_the_address_of_its_folder(name, address):
    assert address_of(name) == address


@pytest.fixture
def watcher(site, library, tmp_path, monkeypatch):
    """A watcher after a build, which writes into a folder of its own."""
    monkeypatch.setattr(watch, "SITE", tmp_path)
    return Watcher(News(), library)


def turn_all(watcher):
    while watcher.pending:
        watcher.write_next()


def written(folder):
    return {path.relative_to(folder).as_posix() for path in folder.rglob("*") if path.is_file()}


def test_only_what_differs_is_written_and_the_open_page_first(watcher, tmp_path):
    box = watcher.news.join("plants/lemna-minor/")
    watcher.texts["plants/egeria-densa.md"] = watcher.texts["plants/lemna-minor.md"] = "older"
    watcher.line_up()
    differ = {"plants/egeria-densa.md", "plants/lemna-minor.md"}
    some = differ | set(share_of(list(watcher.pending), 23))
    watcher.pending = {name: make for name, make in watcher.pending.items() if name in some}
    assert len(watcher.pending) > 20
    watcher.write_next()
    assert written(tmp_path) == {"plants/lemna-minor/index.html"}
    assert box.get_nowait() == {"pages": ["plants/lemna-minor/"]}
    turn_all(watcher)
    assert written(tmp_path) == {
        "plants/lemna-minor/index.html",
        "plants/egeria-densa/index.html",
    }


@pytest.mark.parametrize(
    ("changed", "page"),
    [
        (watch.SPECIES / "plants" / "lemna-minor.yml", "plants/lemna-minor.md"),
        (watch.SPECIES / "problems" / "green-water.yml", "problems/green-water.md"),
        (watch.DOCS / "guides" / "feeding.md", "guides/feeding.md"),
        (watch.DOCS / "about.md", "about.md"),
    ],
)
def test_the_page_of_what_changed_comes_before_those_that_nobody_looks_at(watcher, changed, page):
    watcher.news.join("plants/egeria-densa/")
    watcher.line_up([watch.TEMPLATES / "plant.md.j2", watch.SPECIES / "vocabulary.yml", changed])
    assert list(watcher.pending)[:2] == ["plants/egeria-densa.md", page]


@long_run()
def test_what_was_written_is_what_the_build_writes(watcher, site, tmp_path):
    watcher.texts["about.md"] = "older"
    watcher.line_up()
    turn_all(watcher)
    page = "about/index.html"
    assert (tmp_path / page).read_bytes() == (site / page).read_bytes()


def test_a_record_that_changed_is_loaded_again_and_a_broken_one_is_told(
    watcher, library, monkeypatch
):
    plant = library.plants["lemna-minor"]
    fresh = plant.model_copy(update={"verdict": "Freshly printed."})
    plants = {**library.plants, "lemna-minor": fresh}
    monkeypatch.setattr(watch, "load", lambda: library._replace(plants=plants))
    path = watch.SPECIES / "plants" / "lemna-minor.yml"
    watcher.read_again([path])
    assert watcher.library.plants["lemna-minor"].verdict == "Freshly printed."

    def broken():
        raise BadRecords([RecordFault(path, 3, "habitt", "unknown key")])

    complaints = []
    monkeypatch.setattr(watch, "load", broken)
    monkeypatch.setattr(watcher, "complain", complaints.append)
    watcher.read_again([path])
    assert "habitt" in complaints[0]
    assert watcher.library.plants["lemna-minor"].verdict == "Freshly printed."


@pytest.mark.parametrize(("code", "shown"), [(0, "new"), (1, "old")])
def test_a_whole_build_takes_the_place_of_what_is_shown_unless_it_stopped(
    watcher, tmp_path, monkeypatch, code, shown
):
    for name, what in {"SITE": "old", "NEXT": "new", "SITE_BEFORE": "older"}.items():
        folder = tmp_path / name
        folder.mkdir()
        (folder / "index.html").write_text(what)
        monkeypatch.setattr(watch, name, folder)
    complaints = []
    monkeypatch.setattr(watcher, "complain", complaints.append)
    watcher.take_build(SimpleNamespace(returncode=code, stderr=io.StringIO("it stopped\n")))
    assert (watch.SITE / "index.html").read_text() == shown
    assert complaints == ([] if shown == "new" else ["it stopped"])


@pytest.fixture
def served(site):
    news = News()
    with make_watch_server(site, 0, news) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield f"http://127.0.0.1:{server.server_address[1]}/", news
        server.shutdown()


def fetched(address):
    with urllib.request.urlopen(address) as reply:
        return reply.read().decode()


def test_the_policy_is_that_of_the_site_and_the_file_has_no_listening_script(served, site):
    text = fetched(f"{served[0]}plants/")
    plain = (site / "plants" / "index.html").read_text(encoding="utf-8")
    assert SCRIPT_ADDRESS in text
    assert SCRIPT_ADDRESS not in plain
    policies = [line for line in plain.splitlines() if POLICY in line]
    assert policies
    assert [line for line in text.splitlines() if POLICY in line] == policies


def test_an_offline_copy_of_earlier_takes_itself_away(served, site):
    assert "unregister" in fetched(served[0] + WORKER)
    assert "unregister" not in (site / WORKER).read_text(encoding="utf-8")
