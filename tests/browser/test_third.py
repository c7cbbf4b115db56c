"""Animals in danger: how much a third of the water is, at the tank here and at none."""

from playwright.sync_api import expect

from tests.browser.conftest import go
from tests.browser.shelf_tanks import LOBBY, put
from tests.effort import long_run


def test_with_no_tank_the_size_is_one_field(page):
    go(page, "danger/")
    page.locator("#third-of").select_option("120")
    expect(page.locator("#third output")).to_have_text(
        "about 40 L: 4 buckets of 10 L", use_inner_text=True
    )
    page.evaluate("() => { document.documentElement.dataset.units = 'us'; }")
    expect(page.locator("#third output")).to_have_text(
        "about 11 gal: 2 buckets of 5 gal and 1 gal", use_inner_text=True
    )
    page.locator("#third-of").select_option("")
    expect(page.locator("#third output")).to_be_empty()


def test_the_steps_stay_one_list(page):
    go(page, "danger/")
    expect(page.locator(".step-list > ol")).to_have_count(1)
    expect(page.locator(".step-list > ol > li")).to_have_count(8)


def test_the_tank_here_fills_it(page):
    put(page, {**LOBBY, "net_l": 97}, chosen="mine")
    page.goto("danger/")
    said = page.locator("#third output")
    expect(said).to_have_text(
        f"{LOBBY['name']}: about 33 L: 3 buckets of 10 L and 3 L", use_inner_text=True
    )


def test_with_no_script_the_table_says_it(chromium, address):
    context = chromium.new_context(base_url=address, java_script_enabled=False)
    page = context.new_page()
    page.goto("danger/")
    page.get_by_role("link", name="How much is a third?").click()
    expect(page.locator("#a-third ~ table")).to_contain_text("about 40 L: 4 buckets of 10 L")
    context.close()


@long_run()
def test_a_tank_beyond_the_list_or_with_no_litres_says_nothing(page):
    put(page, {**LOBBY, "net_l": 5_000}, chosen="mine")
    page.goto("danger/")
    page.wait_for_load_state("networkidle")
    expect(page.locator("#third output")).to_be_empty()
