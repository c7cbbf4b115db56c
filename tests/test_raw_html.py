"""Prose and records bring no HTML of their own into a page: the check tells the line, the page is clean."""

from html.parser import HTMLParser
from pathlib import Path

import markdown
import pytest
import yaml

from scripts.pages.escape import escape
from scripts.pages.guides import guide_page
from scripts.records.characters import unfit
from scripts.records.checks.guide_marks import mark_faults
from scripts.records.guide import Guide, GuideDraft
from scripts.records.load import read_records
from scripts.records.prose import read_prose
from scripts.site.watch_page import Renderer
from tests.effort import long_run, share_of

FOLDER = Path(__file__).parent / "records"
CORPUS = yaml.safe_load((FOLDER / "raw_guides.yml").read_text(encoding="utf-8"))
BODY_LINE = 10
OWN_SCRIPTS = ("assets/early.js", "assets/page.js")
PAGE = "---\ntitle: T\ndescription: D\n---\n{}\n"


class Dangers(HTMLParser):
    """What of a page could run, load or cover something, but for the theme's own scripts and styles."""

    def __init__(self, text):
        super().__init__()
        self.found = []
        self.feed(text)
        self.close()

    def handle_starttag(self, tag, attrs):
        given = dict(attrs)
        if tag == "script" and given.get("src", "").endswith(OWN_SCRIPTS):
            return
        if tag in ("script", "style", "iframe", "object", "embed", "base", "math", "img"):
            self.found.append(tag)
        for name, value in given.items():
            plain = "".join((value or "").split()).lower()
            other = name in ("href", "src", "action") and ":" in plain.split("/")[0]
            if name.startswith("on") or name in ("style", "srcdoc") or "script:" in plain or other:
                self.found.append(f"{tag} {name}={value}")


@pytest.fixture(scope="module")
def records():
    return read_records()


def page_of(body, library):
    guide = Guide(
        title="T", description="D", order=1, first=["Look."], body=body, body_line=BODY_LINE
    )
    text = guide_page("raw", library._replace(guides={"raw": guide}))
    return Renderer().html("guides/raw.md", text)


@pytest.mark.parametrize("case", CORPUS, ids=lambda case: case["body"][:40])
def test_a_guide_with_anything_raw_is_refused_at_its_line(case, records):
    draft = GuideDraft(["Look."], [], case["body"], BODY_LINE)
    faults = [*mark_faults(records._replace(guides={"raw": draft}))]
    assert BODY_LINE + case["line"] - 1 in {fault.line for fault in faults}, faults


@long_run()
@pytest.mark.parametrize("case", share_of(CORPUS, 5), ids=lambda case: case["body"][:40])
def test_nothing_raw_gets_into_the_page_even_past_the_check(case, library):
    assert Dangers(page_of(case["body"], library)).found == []


def test_the_corpus_is_dangerous_without_the_locks():
    """Most of it would run, load or cover something: the test above can fail."""
    raw = [
        Dangers(markdown.markdown(case["body"], extensions=["attr_list", "tables"])).found
        for case in CORPUS
    ]
    assert sum(map(bool, raw)) > 20


def test_the_guides_themselves_hold_nothing_raw(records):
    assert [*mark_faults(records)] == []


@pytest.mark.parametrize(
    ("body", "line", "part"),
    [
        ("One.\n\n<script>x</script>", 7, "<script"),
        ('<p onclick="x">a</p>', 5, "onclick"),
        ('<p\nstyle="x">a</p>', 5, "style"),
        ("<a href=' javascript:x'>a</a>", 5, "links to"),
        ('<a href="&#106;avascript:x">a</a>', 5, "links to"),
        ("<iframe></iframe>", 5, "<iframe"),
        ("a\n<!-- x -->", 6, "<!--"),
        ("[a](javascript:x)", 5, "links to"),
        ("## Head {: onclick=x }", 5, "a brace opens"),
        ("<scr<script>ipt>", 5, "<scr"),
    ],
)
def test_a_page_of_prose_is_refused_at_its_line(body, line, part, tmp_path):
    (tmp_path / "raw.md").write_text(PAGE.format(body), encoding="utf-8")
    faults = read_prose(tmp_path)[1]
    assert any(fault.line == line and part in fault.message for fault in faults), faults


def test_the_pages_of_prose_hold_nothing_they_may_not():
    assert read_prose()[1] == []


@pytest.mark.parametrize(
    "text", ["<b>x</b>", "a <img src=x>", "</p>", "<!--", "JAVASCRIPT: x", "data:text/html,x"]
)
def test_a_records_text_with_markup_is_refused_and_read_as_written(text):
    assert "markup" in unfit(text)
    assert Dangers(markdown.markdown(f"<p>{escape(text)}</p>")).found == []


@pytest.mark.parametrize("text", ["pH < 7", "5 <6", "a: b", "2 < 3 > 1", "data: none"])
def test_a_sign_is_no_markup(text):
    assert unfit(text) is None
