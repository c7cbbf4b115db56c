"""A banned plant at the phone: its name finds its page with a warning, and nothing offers to plant it."""

from playwright.sync_api import expect

from tests.effort import long_run

WARNING = "never planted from this book"


@long_run()
def test_the_shelf_leads_to_the_page_in_place_of_a_button_that_puts_it_in(page):
    page.goto("shelf/new/")
    page.locator("#find-plants").fill("water hyacinth")
    link = page.locator("#find-plants-box a")
    expect(link).to_have_text(f"Pontederia crassipes: {WARNING}")
    expect(page.locator("#find-plants-box .taps button")).to_have_count(0)
    link.tap()
    expect(page.locator("#never")).to_contain_text("Never planted from this book.")
    expect(page.locator("#found")).to_be_visible()


def test_a_plant_that_may_be_put_in_still_has_its_button(page):
    page.goto("shelf/new/")
    page.locator("#find-plants").fill("lemna minor")
    expect(page.locator("#find-plants-box .taps button")).to_have_count(1)
    expect(page.locator("#find-plants-box a")).to_have_count(0)


@long_run()
def test_the_comparison_offers_none_untyped_and_warns_of_one_that_was_asked_for(page):
    page.goto("compare/?plants=egeria-densa")
    offers = page.locator("#offers")
    expect(offers).to_contain_text("Elodea canadensis")
    expect(offers).not_to_contain_text("Hydrilla")
    page.locator("#query").fill("hydrilla")
    expect(offers).to_contain_text(f"Hydrilla verticillata {WARNING}")
    offers.get_by_role("button", name="Add Hydrilla verticillata").tap()
    expect(page.locator("#beside thead th").nth(1)).to_contain_text(WARNING)
