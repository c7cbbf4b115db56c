"""A source, and a plant of the picture of growth, open in place: nobody loses the line that they read."""

from playwright.sync_api import expect

from tests.effort import long_run

PLANT = "plants/hygrophila-difformis/"
SHEET = "#read-here"


@long_run()
def test_a_source_opens_where_the_thumb_is_and_the_page_stays(page):
    page.goto(PLANT)
    mark = page.locator("main a[href^='#source-']").first
    mark.scroll_into_view_if_needed()
    before = page.evaluate("scrollY")
    mark.tap()
    sheet = page.locator(SHEET)
    expect(sheet).to_be_visible()
    key = mark.get_attribute("href")
    said = page.locator(key).locator("xpath=ancestor::li").inner_text()
    expect(sheet).to_contain_text(said)
    expect(sheet).to_contain_text(f"Source {mark.inner_text().strip()}")
    assert page.evaluate("scrollY") == before
    assert page.locator(f'[id="{key[1:]}"]').count() == 1  # no place of the page stands twice
    expect(sheet.get_by_role("button", name="Close")).to_be_focused()
    page.keyboard.press("Escape")
    expect(sheet).to_have_count(0)
    expect(mark).to_be_focused()
    assert page.evaluate("scrollY") == before


@long_run()
def test_another_mark_takes_the_place_of_the_first_and_a_tap_beside_closes(page):
    page.goto(PLANT)
    marks = page.locator("main a[href^='#source-']")
    numbers = {marks.nth(at).inner_text().strip(): at for at in range(marks.count())}
    first, second = (marks.nth(at) for at in list(numbers.values())[:2])
    first.scroll_into_view_if_needed()
    first.tap()
    expect(page.locator(SHEET)).to_contain_text("Source 1")
    second.evaluate("(one) => one.click()")
    expect(page.locator(SHEET)).to_have_count(1)
    expect(page.locator(SHEET)).to_contain_text("Source 2")
    page.mouse.click(200, 300)
    expect(page.locator(SHEET)).to_have_count(0)


def test_a_number_of_the_picture_names_its_plant_with_the_way_to_it(page):
    page.goto("plants/growth/")
    number = page.locator("svg.growth a").first
    name = number.get_attribute("aria-label")
    number.locator("circle").tap()
    sheet = page.locator(SHEET)
    expect(sheet).to_contain_text(name.split(": ")[1])
    expect(sheet).to_contain_text("doubles in")
    size = number.locator("text").evaluate(
        "(one) => parseFloat(getComputedStyle(one).fontSize) * one.getScreenCTM().a"
    )
    assert size >= 12  # px as shown on a phone
    sheet.get_by_role("link").first.tap()
    expect(page.locator("h1")).to_contain_text(name.split(": ")[1])


def test_without_a_popover_the_link_leads_to_the_source(page):
    page.add_init_script("delete HTMLElement.prototype.popover;")
    page.goto(PLANT)
    mark = page.locator("main a[href^='#source-']").first
    mark.scroll_into_view_if_needed()
    mark.tap()
    page.wait_for_function("() => location.hash.startsWith('#source-')")
    expect(page.locator(SHEET)).to_have_count(0)
