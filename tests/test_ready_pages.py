"""The site builder gets headings alone; with the contents put in, its site is as if it had made them."""

import shutil

import markdown
import pytest

from scripts.setup import kept
from scripts.setup.paths import ROOT, SOURCE
from scripts.site import ready_pages
from scripts.site.addresses import address_of
from scripts.site.joined_scripts import Graph, graph_of, joined
from scripts.site.page_content import extensions, page_content
from scripts.site.preload import texts_read, with_preloads
from scripts.site.ready_pages import PagesOfSource, heading_lines
from scripts.site.site_builder import run_builder
from tests.effort import long_run

HEADINGS = """# *Ceratopteris* & <small>(L.) Brongn.</small> { #top }

## 1. A sudden change: what now? { #a-1 }

### Under_score_ `code` \\*not strong\\* [a link](two.md) { #b }

## NO₃ #2 – 50 % > 10 < 20 ~ a | b { #c }

## &lt;p&gt; and "quotes" and it’s { #d }
"""
PAGE = f"---\ntitle: T\n---\n{HEADINGS}\nText.\n"


@pytest.fixture
def nothing_kept(tmp_path, monkeypatch):
    monkeypatch.setattr(kept, "FOLDER", tmp_path / "kept")


def test_the_headings_alone_are_read_as_those_of_the_page(nothing_kept):
    headings = page_content("one.md", PAGE).headings
    assert [heading.place for heading in headings[0].below] == ["a-1", "c", "d"]
    alone = page_content("one.md", f"---\ntitle: T\n---\n{heading_lines(headings)}").headings
    assert alone == headings


def test_a_page_is_read_again_only_where_it_or_the_settings_changed(nothing_kept, monkeypatch):
    read = []
    stock = markdown.Markdown

    def counted(**given):
        read.append("read")
        return stock(**given)

    monkeypatch.setattr(markdown, "Markdown", counted)
    first = page_content("one.md", PAGE)
    assert page_content("one.md", PAGE) == first
    assert len(read) == 1
    page_content("two.md", PAGE)  # links count from the page
    page_content("one.md", f"{PAGE}\nMore.\n")
    monkeypatch.setattr("scripts.site.page_content.settings_text", lambda: "other settings")
    page_content("one.md", PAGE)
    assert len(read) == 4


@pytest.fixture
def read(nothing_kept, monkeypatch):
    """The pages that were read rather than known."""
    names = []

    def noted(name, text):
        names.append(name)
        return page_content(name, text)

    monkeypatch.setattr(ready_pages, "page_content", noted)
    return names


def test_a_site_is_read_again_only_where_a_page_or_the_settings_changed(
    tmp_path, read, monkeypatch
):
    for name in ("one.md", "two.md"):
        (tmp_path / name).write_text(PAGE)
    first = PagesOfSource(tmp_path).read()
    assert PagesOfSource(tmp_path).read() == first
    assert read == ["one.md", "two.md"]
    (tmp_path / "one.md").write_text(PAGE.replace("sudden", "slower"))  # of the same length
    changed = PagesOfSource(tmp_path).read()
    assert "slower" in changed["one.md"].headings
    assert changed["one.md"].made_of != first["one.md"].made_of
    assert changed["two.md"] == first["two.md"]
    assert read == ["one.md", "two.md", "one.md"]
    monkeypatch.setattr("scripts.site.page_content.settings_text", lambda: "other settings")
    PagesOfSource(tmp_path).read()
    assert read[3:] == ["one.md", "two.md"]
    (tmp_path / "two.md").unlink()
    assert list(PagesOfSource(tmp_path).read()) == ["one.md"]


@long_run()
def test_the_builder_makes_the_same_of_the_whole_pages(site, tmp_path):
    """Octet by octet, with the settings of the site and nothing of ours between."""
    whole = tmp_path / "whole"
    own = tmp_path / "project"
    own.mkdir()
    shutil.copy(ROOT / "mkdocs.yml", own)
    shutil.copytree(ROOT / "docs" / "theme", own / "docs" / "theme")
    shutil.copytree(SOURCE, own / "build" / "docs")
    run_builder(own / "mkdocs.yml", whole)
    graph = graph_of(joined())
    names = ready_pages.page_names(SOURCE)
    assert len(names) > 400
    for name in names:
        made = (whole / address_of(name) / "index.html").read_text(encoding="utf-8")
        ours = (site / address_of(name) / "index.html").read_text(encoding="utf-8")
        assert with_preloads(made, graph) == ours, name
    assert "toc" in extensions()


@pytest.mark.parametrize("changed", [0, 1], ids=["on every page", "by place"])
def test_a_kept_page_serves_only_while_the_scripts_load_the_same(monkeypatch, tmp_path, changed):
    graph = Graph(files={}, modules={}, packages={})

    def scripts():
        return ready_pages.PageMaker(tmp_path, tmp_path, graph, frames=None, pages={}).scripts

    before = scripts()
    assert scripts() == before
    texts = list(texts_read())
    texts[changed] += " "
    monkeypatch.setattr(ready_pages, "texts_read", lambda: tuple(texts))
    assert scripts() != before
