"""The built site: every record has its page, every link leads somewhere, nothing breaks the policy."""

import hashlib
import json
import re
from html.parser import HTMLParser
from urllib.parse import unquote, urljoin, urlsplit

import pytest

from calculators.core.listing import load_all
from calculators.core.paint.answered_rows import answered_rows
from calculators.core.run import run
from scripts.setup.paths import ROOT, SOURCE
from scripts.site.addresses import address_of
from scripts.site.offline import is_stored
from scripts.site.watch_page import Renderer
from tests.effort import long_run

# Python runs in a worker, so that no page needs wasm-unsafe-eval; scripts/site/server.py has the worker's.
POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; "
    "connect-src 'self'; worker-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'self'; "
    "require-trusted-types-for 'script'; trusted-types mulmbook"
)
VOID = {
    "area",
    "base",
    "br",
    "col",
    "embed",
    "hr",
    "img",
    "input",
    "link",
    "meta",
    "source",
    "track",
    "wbr",
}


class Page(HTMLParser):
    """Links, ids, tags and attributes of a page; and whether its tags close."""

    def __init__(self, text):
        super().__init__()
        self.links, self.ids, self.problems, self.open, self.forms = [], [], [], [], []
        self.text = ""
        self.feed(text)
        self.close()

    def handle_starttag(self, tag, attributes):
        found = dict(attributes)
        if tag not in VOID:
            self.open.append(tag)
        if "style" in found or any(name.startswith("on") for name in found):
            self.problems.append(f"<{tag}> carries a style or a handler")
        if tag == "style" or (tag == "script" and not found.get("src")):
            self.problems.append(f"inline <{tag}>")
        if found.get("id") is not None:
            self.ids.append(found["id"])
        for name in ("href", "src", "action"):
            if name in found:
                self.links.append(found[name])

    def handle_startendtag(self, tag, attributes):
        self.handle_starttag(tag, attributes)
        if tag not in VOID:
            self.open.pop()

    def handle_endtag(self, tag):
        if tag in VOID:
            return
        while (
            self.open
            and self.open[-1] != tag
            and self.open[-1] in ("p", "li", "dt", "dd", "tr", "td", "th")
        ):
            self.open.pop()  # HTML lets these close by themselves
        if not self.open or self.open.pop() != tag:
            self.problems.append(f"</{tag}> closes nothing")

    def handle_data(self, data):
        self.text += data


@pytest.fixture(scope="module")
def pages(site):
    """Every page by its address below the site's root."""
    found = {}
    for path in sorted(site.rglob("*.html")):
        name = path.relative_to(site).as_posix()
        address = name.removesuffix("index.html") if name.endswith("index.html") else name
        found[address] = Page(path.read_text(encoding="utf-8"))
    return found


def test_every_record_and_calculator_has_its_page(pages, library):
    for kind in ("plants", "animals", "problems", "rules"):
        for slug in getattr(library, kind):
            assert f"{kind}/{slug}/" in pages, f"{kind}/{slug} was dropped"
    for name in load_all():
        assert f"calculators/{name}/" in pages, f"calculators/{name} was dropped"


def test_every_prose_page_is_there(pages):
    for path in (ROOT / "docs").glob("*.md"):
        address = "" if path.stem == "index" else f"{path.stem}/"
        assert address in pages


def test_every_link_leads_to_a_page_or_a_place_in_one(pages, site):
    broken = []
    for address, page in pages.items():
        if address == "404.html":
            continue  # its links start at the host's root, which only publishing knows
        for link in page.links:
            parts = urlsplit(urljoin(f"https://book.example/{address}", link))
            if parts.netloc != "book.example":
                continue
            target = unquote(parts.path.removeprefix("/"))
            if target in pages:
                if parts.fragment and parts.fragment not in pages[target].ids:
                    broken.append(f"{address}: {link} (no such place)")
            elif not (site / target).is_file():
                broken.append(f"{address}: {link}")
    assert not broken, "\n".join(broken)


def test_no_page_asks_another_host_for_anything(pages, library):
    cited = {source.link for source in library.sources.values() if source.link}
    for address, page in pages.items():
        for link in page.links:
            assert not urlsplit(link).netloc or link in cited, f"{address}: {link}"


def test_no_page_carries_inline_script_or_style_or_broken_html(pages):
    problems = [f"{address}: {one}" for address, page in pages.items() for one in page.problems]
    assert not problems, "\n".join(problems)


@pytest.mark.parametrize("mark", ["|---", "](../", "](#", "{ #", "**"])
def test_no_page_shows_markdown_that_was_not_read(pages, mark):
    """A table, link or heading that lost the blank line above it would stand there as text."""
    found = [address for address, page in pages.items() if mark in page.text]
    assert not found


def test_no_id_stands_twice_in_a_page(pages):
    for address, page in pages.items():
        assert len(page.ids) == len(set(page.ids)), f"{address}: {sorted(page.ids)}"


def test_every_page_has_the_policy_and_the_doors(site):
    for path in site.rglob("*.html"):
        text = path.read_text(encoding="utf-8")
        assert re.findall(r'Content-Security-Policy" content="([^"]*)"', text) == [POLICY], path
        assert text.count('aria-label="Doors"') == 1
        assert "Animals in danger" in text


@pytest.mark.parametrize("name", load_all())
def test_a_calculators_page_shows_its_worked_example_with_no_script(name, pages):
    text = " ".join(pages[f"calculators/{name}/"].text.split())
    answer = run(name, {})
    for row in answered_rows(load_all()[name], answer):
        assert " ".join(f"{row['value']} {row['unit']}".split()) in text, row
    for note in answer["notes"]:
        assert " ".join(note["text"].split()) in text


def test_a_plants_page_says_what_is_not_known_and_where_claims_come_from(pages):
    text = pages["plants/limnophila-sessiliflora/"].text
    assert "Not known: tissue nitrogen." in text
    assert "what keepers say" in text
    assert "federal" in text.lower()


def test_a_problems_page_starts_with_the_first_action(pages, library):
    for slug, problem in library.problems.items():
        text = " ".join(pages[f"problems/{slug}/"].text.split())
        action = " ".join(problem.first_action.text.split())
        assert text.index(action) < text.index("What you see")


def test_search_knows_every_page_by_all_its_names(site, library):
    rows = json.loads((site / "assets" / "search.json").read_text(encoding="utf-8"))
    by_address = {address: (title, names) for address, _, title, names, *_ in rows}
    for slug, plant in library.plants.items():
        title, names = by_address[f"plants/{slug}/"]
        assert title == plant.name
        assert set(plant.trade_names) | set(plant.old_names) <= set(names)
    assert all(len(row[4]) <= 161 for row in rows)


def test_the_offline_list_holds_every_file_with_its_hash(site):
    listed = json.loads((site / "offline-list.json").read_text(encoding="utf-8"))
    files = {path.relative_to(site).as_posix() for path in site.rglob("*") if path.is_file()}
    names = {
        (f"{address}index.html" if address.endswith("/") else address).removeprefix("./")
        for address in listed
    }
    assert names == {name for name in files if is_stored(name)}
    assert "data/index.html" in names
    assert "data/plants.json" in files - names
    for address, digest in listed.items():
        path = site / address / "index.html" if address.endswith("/") else site / address
        assert hashlib.sha256(path.read_bytes()).hexdigest() == digest
    worker = (site / "service-worker.js").read_text(encoding="utf-8")
    assert hashlib.sha256((site / "offline-list.json").read_bytes()).hexdigest() in worker


@long_run()
def test_the_tree_of_pages_builds_with_the_plain_markdown_library(site):
    """The pages must not lean on one site builder: another hand makes the same pages, octet by octet."""
    renderer = Renderer()
    files = {path.relative_to(SOURCE).as_posix() for path in SOURCE.rglob("*") if path.is_file()}
    pages = sorted(name for name in files if name.endswith(".md"))
    assert len(pages) > 250
    for name in pages:
        html = renderer.html(name, (SOURCE / name).read_text(encoding="utf-8"))
        built = site / address_of(name) / "index.html"
        assert html == built.read_text(encoding="utf-8"), name
        assert html.count("<h1") == 1, name


def test_the_manifest_names_icons_that_exist(site):
    manifest = json.loads((site / "manifest.webmanifest").read_text(encoding="utf-8"))
    for icon in manifest["icons"]:
        assert (site / icon["src"]).is_file()
    assert manifest["start_url"] == manifest["scope"] == "./"


def test_the_trimmed_library_holds_what_the_calculators_import(site):
    parts = json.loads((site / "runtime" / "parts.json").read_text(encoding="utf-8"))
    assert {"json/__init__.py", "typing.py", "difflib.py"} <= set(parts["modules"])
    library = site / "runtime" / parts["library"]
    assert library.stat().st_size < 800_000  # the stock one has 2.4 MB of source
    assert parts["lock"]["packages"] == {}
