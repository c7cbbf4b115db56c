"""A keeper at the tank chooses plants by tapping, sees a pair, and opens its page, with no signal."""

import re

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import axe_complaints, go, wait_for_answer, wait_for_offline_copy
from tests.effort import long_run

CARDS = "#lists ol.picks > li"


def tick(page, group, words):
    page.get_by_role("group", name=group).get_by_label(words, exact=True).tap()


@long_run()
@pytest.mark.offline_copy
def test_a_pair_for_low_light_by_tapping_and_its_page_offline(page, context):
    go(page, "")
    wait_for_offline_copy(page)
    context.set_offline(True)
    page.get_by_role("link", name="Choose plants for a tank").tap()
    wait_for_answer(page)
    page.get_by_label("Light", exact=True).select_option("low")
    tick(page, "Kinds of plants", "stem plant")
    tick(page, "Kinds of plants", "floating plant")
    page.get_by_text("Finer points", exact=True).tap()
    page.get_by_label("How many plants to list").fill("2")
    expect(page.locator(CARDS)).to_have_count(2)
    expect(page).to_have_url(re.compile(r"habits=stem%2Cfloater"))
    kinds = page.locator(CARDS).all_inner_texts()
    assert any("at the surface" in text or "the surface has" in text for text in kinds)
    link = page.locator(CARDS).first.get_by_role("link")
    name = link.locator("b").inner_text()
    link.tap()
    expect(page.locator("h1")).to_contain_text(name)
    page.go_back()
    wait_for_answer(page)
    expect(page.get_by_label("stem plant", exact=True)).to_be_checked()
    expect(page.locator(CARDS)).to_have_count(2)
    context.set_offline(False)


@long_run()
@pytest.mark.python_alive
def test_a_link_ticks_its_boxes_and_the_example_comes_back(page):
    go(page, "calculators/pick/?habits=moss,carpet&animals=&count=3")
    wait_for_answer(page)
    expect(page.get_by_label("moss or liverwort", exact=True)).to_be_checked()
    expect(page.get_by_label("rosette", exact=True)).not_to_be_checked()
    expect(page.get_by_label("Cherry shrimp", exact=True)).not_to_be_checked()
    expect(page.locator(CARDS)).to_have_count(3)
    page.get_by_role("button", name="Show the whole example").tap()
    expect(page.get_by_label("Cherry shrimp", exact=True)).to_be_checked()
    expect(page.get_by_label("moss or liverwort", exact=True)).not_to_be_checked()
    expect(page.locator(CARDS)).to_have_count(6)


@long_run()
@pytest.mark.python_alive
def test_what_was_left_out_stays_open_while_one_goes_on(page):
    go(page, "calculators/pick/?place=nz")
    wait_for_answer(page)
    gone = page.locator("#list-excluded")
    expect(gone.get_by_text("Egeria densa", exact=True)).to_be_hidden()
    gone.locator("summary").tap()
    expect(gone.get_by_text("Egeria densa", exact=True)).to_be_visible()
    page.get_by_label("Where you live").select_option("us")
    expect(gone.get_by_text("Limnophila sessiliflora", exact=True)).to_be_visible()


@long_run()
@pytest.mark.starts_python
def test_the_plants_are_fetched_for_the_picker_alone(page):
    asked = []
    page.on("request", lambda request: asked.append(request.url))
    go(page, "calculators/units/")
    wait_for_answer(page)
    assert not [url for url in asked if "/plants-" in url]
    go(page, "calculators/pick/")
    wait_for_answer(page)
    page.get_by_text("Finer points", exact=True).tap()
    page.get_by_label("How many plants to list").fill("3")
    expect(page.locator(CARDS)).to_have_count(3)
    assert len([url for url in asked if "/plants-" in url]) == 1


@long_run()
@pytest.mark.python_alive
def test_axe_finds_nothing_and_boxes_are_large_enough(page):
    go(page, "calculators/pick/?place=eu")
    wait_for_answer(page)
    page.locator("#list-excluded summary").tap()
    small = page.evaluate(
        """() => [...document.querySelectorAll('.tick, summary, .picks a, .set a, main button')]
        .filter((one) => one.offsetParent && one.getBoundingClientRect().height < 44)
        .map((one) => one.outerHTML.slice(0, 100))"""
    )
    assert small == []
    assert axe_complaints(page) == []
