"""A keeper's own figures at the tank: fields start empty, nothing is mixed unsaid, no old answer stands."""

import re

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import example_address, show_example, wait_for_answer
from tests.effort import long_run, share_of

CHANGE = "calculators/water-change/"


def open_page(page, path=CHANGE):
    page.goto(path)
    return wait_for_answer(page)


def overlap(page, one, other):
    first, second = page.locator(one).bounding_box(), page.locator(other).bounding_box()
    return first["y"] + first["height"] > second["y"] + 1


def test_a_nitrite_of_1_gets_no_answer_from_the_examples_target(page):
    open_page(page)
    expect(page.locator("#result-title")).to_have_text("Worked example")
    expect(page.locator("#in-target_mg_l")).to_have_value("")
    page.locator("#in-now_mg_l").fill("1")
    expect(page.locator("#still")).to_contain_text("Still needed: What is measured")
    expect(page.locator("#answer")).to_be_hidden()
    expect(page.locator("[aria-invalid]")).to_have_count(0)
    expect(page.locator("#brief")).to_contain_text("Still needed")
    page.locator("#brief").tap()
    expect(page.locator("#in-what")).to_be_focused()
    page.locator("#in-what").select_option("nitrite")
    expect(page.locator("#answer")).to_be_visible()
    expect(page.locator("#lead")).to_contain_text(
        "0.06"
    )  # nitrite's own line, not the example's 20


@long_run()
@pytest.mark.parametrize("typed", share_of(["90", "1"], 2))
def test_a_tap_selects_what_stands_there(page, typed):
    open_page(page)
    show_example(page)
    page.locator("#in-volume_l").tap()
    page.keyboard.type(typed)
    expect(page.locator("#in-volume_l")).to_have_value(typed)


@long_run()
def test_the_examples_figures_are_named_until_they_are_changed_or_emptied(page):
    open_page(page)
    show_example(page)
    expect(page.locator("#result-title")).to_have_text("Worked example")
    page.locator("#in-now_mg_l").fill("90")
    said = page.locator("#borrowed")
    expect(said).to_contain_text("Water volume 120 L")
    expect(said).not_to_contain_text("Reading now")
    expect(page.locator("#result-title")).to_contain_text("not yours")
    expect(page.locator("#brief")).to_contain_text("Not all your figures")
    page.reload()
    wait_for_answer(page)
    expect(said).to_contain_text("Water volume 120 L")
    page.get_by_role("button", name="Empty these").tap()
    expect(page.locator("#in-now_mg_l")).to_have_value("90")
    expect(page.locator("#in-volume_l")).to_have_value("")
    expect(page.locator("#answer")).to_be_hidden()
    assert "now_mg_l=90" in page.url
    assert "volume_l" not in page.url


@long_run()
def test_figures_put_aside_for_the_example_come_back(page):
    open_page(page)
    page.locator("#in-now_mg_l").fill("7")
    expect(page.locator("#still")).to_be_visible()
    show_example(page)
    page.get_by_role("button", name="Back to my figures").tap()
    expect(page.locator("#in-now_mg_l")).to_have_value("7")
    expect(page.locator("#in-volume_l")).to_have_value("")


@long_run()
def test_a_link_with_some_figures_fills_those_and_says_what_is_the_examples(page, context):
    open_page(page)
    show_example(page)
    page.locator("#in-now_mg_l").fill("90")
    expect(page).to_have_url(re.compile("now_mg_l=90"))
    other = context.new_page()
    open_page(other, page.url)
    expect(other.locator("#borrowed")).to_contain_text("Water volume 120 L")
    open_page(other, f"{CHANGE}?now_mg_l=2&fbclid=abc")
    expect(other.locator("#in-now_mg_l")).to_have_value("2")
    expect(other.locator("#in-tap_mg_l")).to_have_value("")


def test_a_refused_calculation_shows_no_old_answer(page):
    open_page(page, example_address("water-change"))
    expect(page.locator("#rows")).to_be_visible()
    page.locator("#in-volume_l").fill("-5")
    expect(page.locator("#still")).to_contain_text("Not computed")
    expect(page.locator("#answer")).to_be_hidden()
    expect(page.locator("#result-title")).to_have_text("No answer yet")
    page.get_by_role("button", name="Keep on the shelf").tap()
    expect(page.locator("#done")).to_contain_text("no answer to keep")


def test_the_verdict_line_is_there_whenever_the_verdict_is_not(page):
    open_page(page, example_address("water-change"))
    line, verdict = page.locator("#brief"), page.locator("#lead li").first
    page.evaluate("scrollTo(0, 0)")
    expect(line).to_be_visible()
    assert not overlap(page, "#brief", ".doors-below")
    # The verdict's edge looks out above the doors, where nobody can read it.
    page.evaluate(
        "() => { const { top } = document.querySelector('#lead li').getBoundingClientRect();"
        " scrollBy(0, top - innerHeight + 80); }"
    )
    expect(line).to_be_visible()
    verdict.scroll_into_view_if_needed()
    page.evaluate("() => document.querySelector('#lead li').scrollIntoView({ block: 'center' })")
    expect(line).to_be_hidden()
    page.evaluate("scrollTo(0, document.body.scrollHeight)")
    expect(line).to_be_visible()


@long_run()
def test_no_field_that_is_typed_into_lies_under_the_line(page):
    open_page(page)
    page.locator("form summary", has_text="Finer points").tap()
    calculator = page.locator("#calculator")
    for key in ("now_mg_l", "tap_mg_l", "target_mg_l", "volume_l", "max_change_percent"):
        page.locator(f"#in-{key}").tap()
        before = calculator.get_attribute("data-answered")
        page.keyboard.type("3")
        expect(calculator).not_to_have_attribute("data-answered", before)
        if page.locator("#brief").is_visible():
            assert not overlap(page, f"#in-{key}", "#brief"), key


@long_run()
def test_act_today_stands_in_no_green_box(page):
    address = (
        "calculators/free-ammonia/?ammonia_mg_l=5&reported_as=nitrogen&ph=8.5&temperature_c=25"
    )
    open_page(page, address)
    expect(page.locator("#brief")).to_have_class(re.compile("danger"))
    expect(page.locator("#lead li").first).to_have_class(re.compile("danger"))


@long_run()
def test_a_unit_written_out_is_shown_as_understood(page):
    open_page(page)
    page.locator("#in-volume_l").fill("5 gal")
    expect(page.locator(".remark")).to_have_text("Read as 18.93 L")
    page.locator("#in-volume_l").fill("5 lb")
    expect(page.locator("#problem-volume_l")).to_contain_text("write L, mL, US gal")
    page.goto("calculators/oxygen/?temperature_c=78")
    expect(page.locator("#problem-temperature_c")).to_contain_text("write 78 °F")


@long_run()
def test_a_misspelt_plant_is_said_beside_its_field_and_keeps_no_growth_of_another(page):
    open_page(page, "calculators/nitrogen-forecast/")
    page.get_by_role("button", name="Add to: Plants").tap()
    row = page.locator("fieldset[data-key=plants] .row").last
    name, doubling = (row.locator(f"[data-key={key}] input") for key in ("name", "doubling_days"))
    name.fill("Lemna minor")
    expect(doubling).to_have_value("6")
    name.fill("Lemna minr")
    expect(doubling).to_have_value("")
    expect(row.locator(".remark")).to_contain_text("Meant: Lemna minor")


@long_run()
@pytest.mark.starts_python
def test_a_strange_value_in_a_link_stops_nothing(page):
    rows = '[{"kind":{"toString":1},"count":5}]'
    open_page(page, f"calculators/stocking/?animals={rows}&volume_l=60")
    expect(page.locator("#still")).to_be_visible()
    open_page(page, "calculators/surface-cover/?pixels=AAAA&width_px=20000&height_px=20000")
    expect(page.locator("#in-pixels")).to_have_value("")


def from_page(page, path, words):
    page.goto(path)
    page.locator("#main a[href*='calculators/']", has_text=words).first.tap()
    wait_for_answer(page)


def test_figures_of_a_page_of_the_book_never_pass_for_a_keepers(page):
    from_page(page, "problems/high-nitrate/", "Water change")
    said = page.locator("#borrowed")
    expect(said).to_contain_text("From this book, not yours:")
    expect(page.locator("#result-title")).to_have_text("Worked example")
    page.reload()
    wait_for_answer(page)
    expect(said).to_contain_text("From this book, not yours:")
    expect(page.locator("#result-title")).to_have_text("Worked example")


@long_run()
def test_animals_that_a_page_counts_are_named_beside_a_keepers_volume(page):
    from_page(page, "animals/ancistrus/", "Work out your own stock")
    expect(page.locator("#answer")).to_be_hidden()
    page.locator("#in-volume_l").fill("200")
    page.locator("#in-temperature_c").fill("25")
    expect(page.locator("#borrowed")).to_contain_text("From this book, not yours: Animals (1 row)")


@long_run()
def test_a_figure_of_the_book_that_is_changed_is_the_keepers(page):
    from_page(page, "problems/high-nitrate/", "Water change")
    page.locator("#in-now_mg_l").fill("77")
    expect(page.locator("#result-title")).to_contain_text("not yours")
    said = page.locator("#borrowed")
    expect(said).to_contain_text("Water volume 60 L")
    expect(said).not_to_contain_text("Reading now")
    page.get_by_role("button", name="Empty these").tap()
    expect(page.locator("#in-volume_l")).to_have_value("")
    expect(page.locator("#in-now_mg_l")).to_have_value("77")


@long_run()
def test_a_link_of_a_guide_fills_in_a_part_that_is_named_once_an_answer_stands(page):
    from_page(page, "guides/feeding/", "With your floaters")
    expect(page.locator("#answer")).to_be_hidden()
    show_example(page)
    expect(page.locator("#borrowed")).to_be_visible()
    page.goto("guides/feeding/")
    assert "from-book=" in page.locator("a", has_text="With your floaters").get_attribute("href")
