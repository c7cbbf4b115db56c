"""The forecast on a phone: demo tanks, events by thumb, the answer in view, problems found again."""

import json
import re
from urllib.parse import parse_qsl, urlencode, urlsplit

import pytest
from playwright.sync_api import expect

from calculators.core import form_hints
from calculators.core.listing import load_all
from tests.browser.conftest import (
    axe_complaints,
    example_address,
    go,
    wait_for_answer,
    wait_for_offline_copy,
)
from tests.effort import long_run, share_of

PAGE = "calculators/nitrogen-forecast/"
EXAMPLE = example_address("nitrogen-forecast")
FINER_POINTS = {
    field.key for field in load_all()["nitrogen-forecast"].inputs if form_hints.FINER in field.hints
}
DANGER = example_address("nitrogen-forecast", start_nitrite_mg_n_l=2.0)


def open_page(page, path=EXAMPLE):
    go(page, path)
    return wait_for_answer(page)


def closed_part():
    """An address with the example in every field but those of the closed part, which stays closed."""
    address = urlsplit(EXAMPLE)
    own = [(key, value) for key, value in parse_qsl(address.query) if key not in FINER_POINTS]
    return f"{address.path}?{urlencode(own)}"


def events(page):
    return page.locator("fieldset[data-key=events]")


def days(page):
    return [entry.input_value() for entry in events(page).locator("[data-key=day] input").all()]


def in_address(page):
    """The events that the address carries."""
    found = page.evaluate("() => new URLSearchParams(location.search).get('events')")
    return json.loads(found) if found else []


@long_run()
def test_events_are_added_moved_and_taken_back_by_thumb(page):
    open_page(page)
    assert days(page) == []
    events(page).get_by_role("button", name="Change water").tap()
    events(page).get_by_role("button", name="Dose nitrate").tap()
    assert days(page) == ["7", "14"]
    row = events(page).locator(".row").last
    expect(row.locator(".named .unit:visible")).to_have_text("mg/L NO₃")
    row.get_by_role("button", name="More: How much").tap()
    expect(row.locator("[data-key=value] input")).to_have_value("6")
    for _ in range(10):
        row.get_by_role("button", name="Less: Day").tap()
    assert days(page) == ["7", "4"]  # it stays under the thumb
    page.locator("#in-change_percent").focus()
    assert days(page) == ["4", "7"]
    events(page).get_by_role("button", name="Trim").tap()
    assert days(page) == ["4", "7", "14"]
    expect(page).to_have_url(re.compile("%22trim%22"))  # not the field of a like name
    assert [(one["day"], one["kind"], one["value"]) for one in in_address(page)] == [
        (4, "dose", 6),
        (7, "change", 30),
        (14, "trim", 50),
    ]
    events(page).locator(".row").nth(1).get_by_role("button", name="Remove").tap()
    assert days(page) == ["4", "14"]
    events(page).get_by_role("button", name="Put it back").tap()
    assert days(page) == ["4", "7", "14"]
    page.reload()
    wait_for_answer(page)
    assert days(page) == ["4", "7", "14"]


@long_run()
@pytest.mark.python_alive
def test_the_unit_goes_with_the_kind_of_event(page):
    open_page(page)
    events(page).get_by_role("button", name="Trim").tap()
    row = events(page).locator(".row").last
    expect(row.locator(".named .unit:visible")).to_have_text("g, wet")
    row.locator("select").select_option("change")
    expect(row.locator(".named .unit:visible")).to_have_text("%")
    row.get_by_role("button", name="Less: How much").tap()
    expect(row.locator("[data-key=value] input")).to_have_value("45")  # a step of 5 %, not of 10 g
    row.locator("[data-key=value] input").fill("98")
    row.get_by_role("button", name="More: How much").tap()
    expect(row.locator("[data-key=value] input")).to_have_value("100")  # no more than all of it


@long_run()
@pytest.mark.python_alive
def test_a_number_stops_at_its_limits(page):
    open_page(page)
    events(page).get_by_role("button", name="New feed").tap()
    row = events(page).locator(".row").last
    row.locator("[data-key=day] input").fill("0,5")
    row.get_by_role("button", name="Less: Day").tap()
    expect(row.locator("[data-key=day] input")).to_have_value("0")


@long_run()
@pytest.mark.python_alive
def test_what_is_tapped_is_large_enough_for_a_wet_thumb(page):
    open_page(page)
    events(page).get_by_role("button", name="Dose nitrate").tap()
    page.locator("form summary", has_text="Finer points").tap()
    page.locator("#in-surface_cm2").scroll_into_view_if_needed()
    small = page.evaluate(
        """() => [...document.querySelectorAll('main button, main input:not([type=file]), main select, '
        + 'summary, .tries a, .notes a')].filter((one) => one.offsetParent)
        .map((one) => [one.getBoundingClientRect(), one.outerHTML.slice(0, 100)])
        .filter(([box]) => box.height < 44 || box.width < 44).map(([, text]) => text)"""
    )
    assert small == []


@long_run()
@pytest.mark.python_alive
def test_the_answer_stays_in_view_and_leads_to_the_result(page):
    open_page(page)
    line = page.locator("#brief")
    expect(line).to_have_text("Verdict: nitrate falls")
    page.evaluate("() => scrollTo(0, 0)")  # the test before may have left the page at its verdict
    expect(line).to_be_in_viewport()
    line.tap()
    expect(page.locator("#result-title")).to_be_in_viewport()
    expect(page.locator("#result-title")).to_be_focused()
    expect(line).to_be_hidden()
    page.locator("#in-feed_g_week").fill("0.3")
    expect(line).to_be_visible()
    expect(line).to_have_text("Verdict: plants run short")
    page.locator("#in-feed_g_week").fill("40")
    expect(line).to_have_class("brief danger")
    expect(line).to_contain_text(
        "Animals first: this tank is heading for nitrate and nitrite that can kill"
    )


@pytest.mark.python_alive
def test_the_line_serves_every_calculator_and_hides_beside_its_result(page):
    open_page(page, example_address("trimmings"))
    expect(page.locator("#brief")).to_contain_text("About 200 mg of nitrogen left the tank")
    page.set_viewport_size({"width": 390, "height": 4000})
    expect(page.locator("#brief")).to_be_hidden()


@long_run()
@pytest.mark.python_alive
def test_a_field_that_is_typed_into_is_never_under_the_line(page):
    open_page(page)
    for entry in page.locator("#inputs input:visible").all():
        entry.focus()
        box, line = entry.bounding_box(), page.locator("#brief").bounding_box()
        if line:
            assert box["y"] + box["height"] <= line["y"] + 1, entry.get_attribute("id")


@long_run()
@pytest.mark.python_alive
def test_the_problem_of_the_field_in_hand_is_not_under_the_line(page):
    open_page(page)
    page.locator("#in-ph").scroll_into_view_if_needed()
    page.locator("#in-ph").fill("99")
    expect(page.locator("#problem-ph")).to_be_visible()
    expect(page.locator("#brief")).to_contain_text("Not computed")
    said, line = page.locator("#problem-ph").bounding_box(), page.locator("#brief").bounding_box()
    assert said["y"] + said["height"] <= line["y"] + 1


@long_run()
@pytest.mark.parametrize("width", share_of([320, 390, 1280], 3))
@pytest.mark.python_alive
def test_event_rows_fit_any_width(page, width):
    page.set_viewport_size({"width": width, "height": 844})
    open_page(page)
    events(page).get_by_role("button", name="Dose nitrate").tap()
    boxes = [
        one.bounding_box()
        for one in events(page).locator(".row button, .row input, .row select").all()
    ]
    for at, one in enumerate(boxes):
        assert one["width"] >= 40
        for other in boxes[at + 1 :]:
            beside = (
                one["x"] + one["width"] <= other["x"] or other["x"] + other["width"] <= one["x"]
            )
            below = (
                one["y"] + one["height"] <= other["y"] or other["y"] + other["height"] <= one["y"]
            )
            assert beside or below


@long_run()
def test_a_problem_in_a_closed_part_opens_it_and_the_line_leads_there(page):
    open_page(page, closed_part())
    part = page.locator("details.part", has_text="Finer points")
    expect(part).not_to_have_attribute("open", re.compile(""))
    page.locator("form summary", has_text="Finer points").tap()
    page.locator("#in-retained_percent").fill("99")
    expect(page.locator("#problem-retained_percent")).to_contain_text("out of range")
    page.reload()  # what was typed is kept, and what is wrong is not hidden
    expect(page.locator("#in-retained_percent")).to_be_visible()
    expect(page.locator("#problem-retained_percent")).to_be_visible()
    page.evaluate("scrollTo(0, 0)")
    expect(page.locator("#brief")).to_contain_text("one field needs another value")
    page.locator("#brief").tap()
    expect(page.locator("#in-retained_percent")).to_be_focused()
    expect(page.locator("#in-retained_percent")).to_be_in_viewport()
    page.locator("form summary", has_text="Finer points").tap()  # closed again by hand
    expect(page.locator("#in-retained_percent")).to_be_hidden()
    page.evaluate("scrollTo(0, 0)")
    page.locator("#brief").tap()
    expect(page.locator("#in-retained_percent")).to_be_focused()


@long_run()
@pytest.mark.python_alive
def test_a_problem_found_later_opens_the_closed_part(page):
    open_page(page, closed_part())
    expect(page.locator("#in-surface_cm2")).to_be_hidden()
    page.evaluate(
        """() => { const entry = document.querySelector('#in-surface_cm2'); entry.value = '-1';
        entry.dispatchEvent(new Event('input', { bubbles: true })); }"""
    )
    expect(page.locator("#in-surface_cm2")).to_be_visible()


@long_run()
@pytest.mark.parametrize(
    ("tank", "verdict"),
    share_of(
        [
            ("Reading Room 120 L", "Level: nitrate stays at about"),
            ("Foyer 240 L", "Building"),
            ("Children's Corner 54 L", "Running short"),
            ("Propagation Jar 20 L", "ran short about day"),
        ],
        4,
    ),
)
@pytest.mark.python_alive
def test_a_demo_tank_fills_the_form_and_says_what_it_shows(page, tank, verdict):
    open_page(page)
    page.get_by_role("link", name=tank).tap()
    wait_for_answer(page)
    expect(page.locator("#in-volume_l")).to_have_value(tank.split()[-2])
    expect(page.locator("#lead")).to_contain_text(verdict)
    expect(page.get_by_role("link", name=tank)).to_have_attribute("aria-current", "true")
    expect(page.locator("[data-tank]:visible")).to_have_count(1)
    page.locator("#in-volume_l").fill("99")
    expect(page.locator("[data-tank]:visible")).to_have_count(0)


@long_run()
@pytest.mark.python_alive
def test_a_demo_link_works_when_shared_and_with_no_script(chromium, address, page, context):
    open_page(page)
    link = page.get_by_role("link", name="Foyer").get_attribute("href")
    open_page(page, PAGE + link)
    expect(page.locator("#lead")).to_contain_text("Building")
    plain = chromium.new_context(base_url=address, java_script_enabled=False).new_page()
    plain.goto(PAGE)
    assert plain.get_by_role("link", name="Foyer").get_attribute("href") == link
    plain.get_by_role("link", name="Foyer").click()
    expect(plain.locator("#lead")).to_contain_text("Falling: nitrate")  # the worked example stands
    plain.context.close()


@long_run()
@pytest.mark.python_alive
def test_the_pictures_show_species_store_and_cover_with_line_and_band(page):
    open_page(page, example_address("nitrogen-forecast", spread="band"))
    figures = page.locator("#plots figure")
    expect(figures.nth(0).get_by_role("img")).to_have_attribute(
        "aria-label", re.compile("Total ammonia nitrogen: .* Nitrite nitrogen: ")
    )
    expect(figures.nth(1).locator(".band").first).to_be_visible()
    expect(figures.nth(2).locator(".level-name")).to_have_text("leaves brown below this")
    expect(page.locator("#plots .name", has_text="cover")).to_be_visible()
    dashes = page.evaluate(
        """() => [...document.querySelectorAll('#plots figure:first-child polyline.curve')]
        .map((one) => getComputedStyle(one).strokeDasharray)"""
    )
    assert len(set(dashes)) == 2


@pytest.mark.python_alive
def test_harmful_water_comes_first_and_leads_on(page):
    open_page(page, DANGER)
    expect(page.locator("#brief")).to_have_class("brief danger")
    first = page.locator("#lead li")
    expect(first.nth(0)).to_contain_text("Animals first")
    expect(first.nth(1)).to_contain_text("Now, within the hour")
    before = page.evaluate(
        "() => document.querySelector('#lead').compareDocumentPosition(document.querySelector('#rows'))"
    )
    assert before & 4  # the figures follow
    first.get_by_role("link", name="How large a change").tap()
    expect(page.get_by_role("heading", level=1)).to_have_text("Water change")
    wait_for_answer(page)
    expect(page.locator("#in-now_mg_l")).to_have_value("2")


@long_run()
@pytest.mark.python_alive
def test_a_plants_name_fills_in_how_it_grows(page):
    open_page(page)
    row = page.locator("fieldset[data-key=plants] .row").first
    name = row.locator("[data-key=name] input")
    name.tap()
    expect(name).to_have_attribute("list", "suggest-plants")
    expect(page.locator("#suggest-plants option").first).to_be_attached()
    name.fill("Lemna minor")
    expect(row.locator("[data-key=doubling_days] input")).to_have_value("6")
    expect(row.locator("[data-key=floating] select")).to_have_value("true")
    expect(page).to_have_url(re.compile("Lemna"))


@long_run()
@pytest.mark.offline_copy
def test_all_of_it_works_with_the_network_off(page, context):
    open_page(page)
    wait_for_offline_copy(page)
    context.set_offline(True)
    try:
        page.get_by_role("link", name="Children's Corner").tap()
        wait_for_answer(page)
        expect(page.locator("#lead")).to_contain_text("Running short")
        name = page.locator("fieldset[data-key=plants] .row").first.locator("[data-key=name] input")
        name.tap()
        expect(name).to_have_attribute("list", "suggest-plants")
        events(page).get_by_role("button", name="Dose nitrate").tap()
        expect(page).to_have_url(re.compile("dose"))
        expect(page.locator("#status")).to_have_text("Result updated.")
    finally:
        context.set_offline(False)


@long_run()
@pytest.mark.python_alive
def test_axe_finds_nothing_in_the_filled_page(page):
    open_page(page, DANGER.replace("spread=none", "spread=band"))
    page.locator("form summary", has_text="Finer points").tap()
    events(page).get_by_role("button", name="Trim").tap()
    events(page).get_by_role("button", name="Remove").tap()
    expect(page.locator("#status")).to_have_text("Result updated.")
    assert axe_complaints(page) == []
