"""A plant on paper: two A4 pages at most, with dark ink, whatever the screen's colours are."""

import re

import pytest

from tests.effort import long_run, share_of

SHEETS = 2
OTHERS = {
    "plants/table/": 11,
    "problems/key/": 12,
}  # sheets, of pages that are long by what they hold
ACROSS = {"width": 1046, "height": 718}  # CSS px: A4 on its side, within its margins
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


@long_run()
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


@long_run()
@pytest.mark.parametrize("path", OTHERS)
def test_the_table_and_the_key_take_few_sheets(page, path):
    page.goto(path)
    assert len(PAGE.findall(page.pdf(prefer_css_page_size=True))) <= OTHERS[path]


@long_run()
def test_the_printed_table_holds_each_plants_name_and_every_column(context):
    page = context.new_page()
    page.set_viewport_size(ACROSS)
    page.emulate_media(media="print")
    page.goto("plants/table/")
    left, right, shown = page.evaluate(
        """() => {
        const table = document.querySelector("table.plants");
        const { left, right } = table.getBoundingClientRect();
        return [left, right, table.querySelector("tbody th a").getBoundingClientRect().width];
        }"""
    )
    assert left >= 0
    assert right <= ACROSS["width"]
    assert shown > 0
    page.close()
