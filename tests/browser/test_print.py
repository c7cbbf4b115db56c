"""A plant on paper: two A4 pages at most, with dark ink, whatever the screen's colours are."""

import re

import pytest

from tests.effort import long_run, share_of

SHEETS = 2
PAGE = re.compile(rb"/Type\s*/Page\b")
MOST = 6  # of the longest pages, which are the ones that could need a third sheet
INK = "() => getComputedStyle(document.querySelector('#main .verdict')).color"


def longest(site):
    """The plants with the longest pages."""
    pages = [
        path
        for path in (site / "plants").glob("*/index.html")
        if 'class="strip"' in path.read_text("utf-8")
    ]
    return sorted(pages, key=lambda path: path.stat().st_size)[-MOST:]


@pytest.mark.parametrize("rank", share_of(range(MOST), 3))
def test_a_plant_is_printed_on_two_sheets(page, site, rank):
    page.goto(f"plants/{longest(site)[rank].parent.name}/")
    assert len(PAGE.findall(page.pdf(format="A4", prefer_css_page_size=True))) <= SHEETS


@long_run()
def test_paper_gets_dark_ink_from_a_dark_screen(chromium, address):
    context = chromium.new_context(base_url=address, color_scheme="dark")
    page = context.new_page()
    page.emulate_media(media="print")
    page.goto("plants/lemna-minor/")
    assert page.evaluate(INK) == "rgb(17, 17, 17)"
    context.close()
