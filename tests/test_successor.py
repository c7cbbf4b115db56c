"""The successor of our site builder makes the same pages from the same tree, so that we can move to it.

In a thorough run. Where the package index has no successor for this machine, the test is skipped and says so.
"""

import re
from urllib.parse import urljoin

import pytest

from scripts.setup.paths import SOURCE
from scripts.setup.say import Missing
from scripts.site.addresses import address_of
from scripts.site.joined_scripts import graph_of, joined
from scripts.site.preload import with_preloads
from scripts.site.successor import build_with_successor, for_successor, make_successor
from tests.effort import long_run
from tests.test_site import POLICY, Page

OWN_SKIP = re.compile(r'<a href="[^"]*" class="md-skip">.*?</a>', re.DOTALL)


@pytest.mark.parametrize(
    ("name", "link", "counted"),
    [
        ("plants/lemna-minor.md", "../../problems/?plant=x", "../problems/?plant=x"),
        ("plants/lemna-minor.md", "../", "./"),
        ("plants/lemna-minor.md", "#needs", "#needs"),
        ("plants/lemna-minor.md", "?unit=us", "?unit=us"),
        ("plants/lemna-minor.md", "https://book.example/", "https://book.example/"),
        ("plants/index.md", "../names/#a", "../names/#a"),
        ("about.md", "../sources/", "sources/"),
    ],
)
def test_links_in_raw_html_count_from_the_file(name, link, counted):
    made = for_successor(name, f'<p><a class="button" href="{link}">there</a></p>')
    assert made == f'<p><a class="button" href="{counted}">there</a></p>'


def test_what_stands_where_no_script_runs_is_left_as_it_is():
    text = '<noscript><p><a href="../names/">names</a></p></noscript>'
    assert for_successor("compare.md", text) == text


def read(path):
    """A page without the theme's own link to the text, which each builder names anew; no style shows it."""
    text = OWN_SKIP.sub("", path.read_text(encoding="utf-8"))
    known = "modulepreload" in text
    return Page(text if known else with_preloads(text, graph_of(joined())))


def links_of(page, address):
    return [urljoin(f"https://book.example/{address}", link) for link in page.links]


def words_of(page):
    return " ".join(page.text.split())


@pytest.fixture(scope="module")
def successor_site(site, tmp_path_factory):
    """The site of the successor, and which pages of the source it was given."""
    try:
        make_successor()
    except Missing as why:
        pytest.skip(f"the successor of the site builder cannot be had here: {why}")
    names = sorted(path.relative_to(SOURCE).as_posix() for path in SOURCE.rglob("*.md"))
    return build_with_successor(SOURCE, tmp_path_factory.mktemp("successor"), names), names


@long_run()
def test_the_successor_makes_the_same_pages(site, successor_site):
    made, chosen = successor_site
    assert len(chosen) > 25
    for name in chosen:
        address = address_of(name)
        ours, theirs = (read(folder / address / "index.html") for folder in (site, made))
        assert words_of(theirs) == words_of(ours), name
        assert links_of(theirs, address) == links_of(ours, address), name
        assert theirs.problems == [], name
        assert f'content="{POLICY}"' in (made / address / "index.html").read_text(), name


@long_run()
def test_the_successor_drops_no_page(successor_site):
    made, _ = successor_site
    pages = {path.relative_to(SOURCE).as_posix() for path in SOURCE.rglob("*.md")}
    assert all((made / address_of(name) / "index.html").is_file() for name in pages)
