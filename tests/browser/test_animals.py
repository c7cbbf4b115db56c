"""A person with a phone looks up an animal and reckons with it."""

import re

from playwright.sync_api import expect

from calculators.core.run import run
from tests.browser.conftest import wait_for_answer
from tests.effort import long_run


@long_run()
def test_from_the_index_to_an_animal_to_the_stocking_calculator(page):
    assert page.viewport_size == {"width": 390, "height": 844}
    page.goto("")
    page.get_by_role("link", name="Fish, shrimp and snails").tap()
    expect(page.get_by_role("heading", level=1)).to_have_text("Animals")
    page.get_by_role("link", name="Cherry barb").tap()
    expect(page.get_by_role("heading", level=1)).to_contain_text("Puntius titteya")
    width = page.evaluate("() => document.documentElement.scrollWidth")
    assert width <= 390  # nothing sticks out to the side
    page.get_by_role("link", name="Work out your own stock").tap()
    wait_for_answer(page)
    expect(page.locator("#in-animals-1-kind")).to_have_value("puntius-titteya")
    expect(page.locator("#in-animals-1-kind option:checked")).to_have_text(
        "Cherry barb (Puntius titteya)"
    )
    expect(page.locator("#in-animals-1-count")).to_have_value("10")
    expect(page.locator("#in-animals-2-kind")).to_have_count(0)
    stock = {"kind": "puntius-titteya", "count": 10, "mean_length_mm": 38}
    water = {"volume_l": 120, "temperature_c": 24}
    found = run("stocking", {"animals": [stock]} | water)["outputs"]
    expect(page.locator("#brief")).to_have_text("Still needed: Water volume, Water temperature")
    expect(page.locator("#rows")).to_be_hidden()  # no answer for animals in nobody's water
    page.locator("#in-volume_l").fill("120")
    page.locator("#in-temperature_c").fill("24")
    expect(page.locator("#rows")).to_contain_text(f"{found['feed_g_week']:.2f} g")


@long_run()
def test_an_animal_is_found_by_a_trade_name_and_leads_to_its_plants(page):
    page.goto("search/?q=mystery snail")
    first = page.locator("#found li a").first
    expect(first).to_contain_text("Pomacea diffusa")
    first.tap()
    expect(page.locator(".banner.law")).to_contain_text("European Union")
    page.locator("#main").get_by_role("link", name="Cabomba caroliniana").tap()
    expect(page.get_by_role("heading", level=1)).to_contain_text("Cabomba caroliniana")
    page.locator("#main").get_by_role("link", name="Apple snail").tap()
    expect(page).to_have_url(re.compile(r"animals/pomacea-diffusa/$"))
