"""axe on every type of page that the book has, with tanks on the shelf, in light and in dark."""

import re

import pytest
from playwright.sync_api import expect

from scripts.pages.generated import ONE_A_RECORD, OVERVIEWS
from scripts.setup.paths import ROOT
from scripts.site.page_types import DEMO_TANK, PAGE_TYPES, come_to_rest
from tests.browser.conftest import axe_complaints, go
from tests.effort import long_run

# Pages of a folder that are written by hand and look as its generated ones do.
LIKE_ITS_FOLDER = ("guides/",)
LEADS_ON = "my-tanks/"  # to the shelf, before anybody has looked at it


def address(source):
    """The address of a page's source below docs/."""
    return re.sub(r"(^|/)index\.md$", r"\1", source).removesuffix(".md") + (
        "" if re.search(r"(^|/)index\.md$", source) else "/"
    )


def without_words(path):
    """A page's address without what a search or a tank puts behind it."""
    return re.split(r"[?#]", path)[0]


def test_the_list_has_each_type_of_page_that_the_build_makes(library):
    listed = {without_words(path) for path in PAGE_TYPES.values()}
    written = {
        address(str(path.relative_to(ROOT / "docs"))) for path in (ROOT / "docs").rglob("*.md")
    }
    made = {address(name) for name in OVERVIEWS if name.endswith(".md")} | {"calculators/"}
    lacking = {one for one in written | made if not one.startswith(LIKE_ITS_FOLDER)} - listed
    assert lacking == {LEADS_ON}
    for folder in ONE_A_RECORD:
        own = {f"{folder}/{key}/" for key in getattr(library, folder)}
        assert own & listed, f"no page of {folder}/ is in the list"
    assert {f"rules/{key}/" for key in library.places} & listed
    assert len(PAGE_TYPES) == len(set(PAGE_TYPES.values()))


@long_run()
@pytest.mark.python_alive
def test_axe_finds_nothing_on_any_type_of_page_in_light_and_in_dark(page):
    go(page, "shelf/")
    page.get_by_role("button", name="Try it with four demo tanks").tap()
    expect(page.locator(f'.tank-card[data-tank="{DEMO_TANK}"]')).to_be_visible()
    found = {}
    for name, path in PAGE_TYPES.items():
        go(page, path)
        come_to_rest(page)
        found[name] = axe_complaints(page)
    assert {name: complaints for name, complaints in found.items() if complaints} == {}
