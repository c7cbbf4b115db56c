"""Something looks wrong, on a phone: from the home door to the cause, in at most six taps."""

import re

import pytest
import yaml
from playwright.sync_api import expect

from calculators.diagnose.case_read import in_band
from calculators.diagnose.problem_table import CAUSES, FINDINGS, question_of
from scripts.setup.paths import ROOT
from tests.browser.conftest import axe_complaints, go, wait_for_offline_copy
from tests.effort import long_run, share_of

TANKS = yaml.safe_load((ROOT / "tests" / "diagnosis_tanks.yml").read_text(encoding="utf-8"))
BY_CAUSE = {tank["expect"]: tank for tank in TANKS}
FOUR = ["dawn-low-oxygen", "potassium-starvation", "floater-hunger", "buried-crown-or-rhizome"]
MOST_TAPS = 6


def wait(page):
    """Until the ranking stands there and the answers can be tapped."""
    expect(page.locator("#diagnosis-result")).to_be_visible()
    expect(page.locator("#diagnosis-chips button").first).to_be_enabled()


def tap_place(page, place):
    """Tap a place in the drawing, once the page's script runs; before that it is a plain link."""
    expect(page.locator("#diagnosis-more")).to_be_visible()
    page.locator(f'a.place[data-place="{place}"]').tap()


def first_cause(page):
    return page.locator("#diagnosis-causes details").first.get_attribute("data-problem")


def is_true(key, tank):
    value = tank.get("figures", {}).get(question_of(key))
    return key in tank["signs"] or (value is not None and in_band(key, value))


def right_chip(page, tank):
    """The answer that is true of a tank: the one with a true finding, else no, else not known."""
    chips = page.locator("#diagnosis-chips button")
    keys = [chip.get_attribute("data-present") for chip in chips.all()]
    for number, key in enumerate(keys):
        if key and is_true(key, tank):
            return chips.nth(number)
    no = page.locator('#diagnosis-chips button[data-absent]:not([data-absent=""])')
    asked = no.first.get_attribute("data-absent") if no.count() else ""
    return no.first if asked and "," not in asked and FINDINGS[asked].input is None else chips.last


def tap_to_the_end(page, tank):
    """From the home page; the number of taps after the place."""
    go(page, "")
    page.get_by_role("link", name="Something looks wrong").tap()
    tap_place(page, tank["place"])
    page.locator(f'#diagnosis-chips button[data-present="{tank["tap"]}"]').tap()
    taps = 1
    while True:
        wait(page)
        if page.locator("#diagnosis-question").inner_text().startswith("Here is what"):
            return taps
        before = page.url
        right_chip(page, tank).tap()
        taps += 1
        assert taps <= MOST_TAPS
        expect(page).not_to_have_url(before)


@pytest.mark.parametrize("cause", share_of(FOUR, 4))
@pytest.mark.python_alive
def test_from_the_home_door_to_the_cause_in_six_taps(page, cause):
    tank = BY_CAUSE[cause]
    assert tap_to_the_end(page, tank) <= MOST_TAPS
    assert first_cause(page) == cause
    top = page.locator("#diagnosis-causes > li").first
    expect(top).to_contain_text(CAUSES[cause].first_action)
    expect(top).to_contain_text("What to expect")
    danger = page.locator("#diagnosis-danger")
    if tank.get("urgent"):
        expect(danger).to_be_visible()
        assert danger.bounding_box()["y"] < page.locator("#diagnosis-ask").bounding_box()["y"]
        expect(danger).to_contain_text(CAUSES[cause].first_action)
    else:
        expect(danger).to_be_hidden()


@long_run()
def test_the_address_holds_it_all(page, context):
    tap_to_the_end(page, BY_CAUSE["potassium-starvation"])
    shown, address = page.locator("#diagnosis-causes").inner_text(), page.url
    assert re.search(r"findings=old-leaves-pinholes,", address)
    page.reload()
    wait(page)
    assert page.locator("#diagnosis-causes").inner_text() == shown
    other = context.new_page()
    other.goto(address)
    wait(other)
    assert other.locator("#diagnosis-causes").inner_text() == shown
    other.locator("#diagnosis-back").tap()  # nothing stands before it in the history
    wait(other)
    assert other.url != address
    expect(other.locator("#diagnosis-question")).not_to_have_text("Here is what it may be.")


@long_run()
@pytest.mark.python_alive
def test_answers_can_be_taken_back(page):
    go(page, "problems/?place=stem&findings=stem-bare-below&asked=stem-bare-below")
    wait(page)
    question = page.locator("#diagnosis-question").inner_text()
    plain = page.locator("#diagnosis-causes").inner_text()
    for undo in (page.locator("#diagnosis-back").tap, page.go_back):
        page.locator("#diagnosis-chips button").first.tap()
        expect(page.locator("#diagnosis-question")).not_to_have_text(question)
        wait(page)
        undo()
        expect(page.locator("#diagnosis-question")).to_have_text(question)
        wait(page)
        assert page.locator("#diagnosis-causes").inner_text() == plain
    page.locator("#diagnosis-chips button").first.tap()
    expect(page.locator("#diagnosis-question")).not_to_have_text(question)
    page.locator("#diagnosis-given summary").tap()
    page.locator("#diagnosis-answers .drop").last.tap()
    expect(page.locator("#diagnosis-question")).to_have_text(question)


@long_run()
@pytest.mark.python_alive
def test_another_place_keeps_what_was_said(page):
    go(page, "problems/?place=stem&findings=stem-bare-below&asked=stem-bare-below")
    wait(page)
    page.locator("#diagnosis-place").tap()
    expect(page.locator(".places")).to_be_visible()
    tap_place(page, "surface")
    page.locator('#diagnosis-chips button[data-present="cover-above-60"]').tap()
    expect(page.locator("#diagnosis-answers li")).to_have_count(2)
    assert "findings=stem-bare-below,cover-above-60" in page.url


@long_run()
@pytest.mark.python_alive
def test_choosing_another_band_of_a_figure_takes_the_first_back(page):
    go(page, "problems/?place=recently&listing=1")
    for band in ("tank-under-4-weeks", "tank-over-a-year"):
        page.locator(f'#diagnosis-chips button[data-present="{band}"]').tap()
        wait(page)
        expect(page).to_have_url(re.compile(f"findings={band}&asked={band}$"))
        page.locator("#diagnosis-place").tap()
        page.locator('details[data-place="recently"] summary').tap()
    page.locator('#diagnosis-chips button[data-present="hot-weather"]').tap()
    expect(page).to_have_url(re.compile("findings=tank-over-a-year,hot-weather"))


@long_run()
@pytest.mark.python_alive
def test_after_a_slip_in_a_plants_name_the_one_meant_is_offered(page):
    go(page, "problems/?place=old-leaves&findings=holes-bitten&asked=holes-bitten")
    wait(page)
    page.locator("#diagnosis-more summary").tap()
    page.locator("#diagnosis-plant").fill("anubias bartri")
    page.locator("#diagnosis-plant").blur()
    page.locator("#diagnosis-meant button").first.tap()
    expect(page).to_have_url(re.compile("plant=anubias-barteri&"))
    expect(page.locator("#diagnosis-meant")).to_be_hidden()


@long_run()
def test_plant_and_readings_sharpen_it_and_stand_in_the_address(page):
    page.goto("problems/?place=whole-plant&findings=melt-within-days&asked=melt-within-days")
    wait(page)
    page.locator("#diagnosis-more summary").tap()
    page.locator("#diagnosis-plant").fill("Cryptocoryne wendtii")
    page.locator("#diagnosis-plant").blur()
    expect(page).to_have_url(re.compile("plant=cryptocoryne-wendtii"))
    wait(page)
    expect(page.locator("#diagnosis-causes details").first).to_have_attribute(
        "data-problem", "crypt-melt"
    )
    page.get_by_label("Nitrate", exact=True).fill("abc")
    expect(page.locator("#diagnosis-fields .problem:visible")).to_have_count(1)
    page.get_by_label("Nitrate", exact=True).fill("0")
    expect(page).to_have_url(re.compile("readings.nitrate_mg_l=0"))
    go(page, "problems/")
    page.locator("#diagnosis-more summary").tap()
    expect(page.locator("#diagnosis-mine button")).to_have_text("Cryptocoryne wendtii")


@long_run()
@pytest.mark.offline_copy
def test_it_works_with_no_signal(page, context):
    go(page, "problems/")
    wait_for_offline_copy(page)
    context.set_offline(True)
    page.reload()
    tap_place(page, "coating")
    page.locator('#diagnosis-chips button[data-present="coat-slimy-sheet"]').tap()
    wait(page)
    assert first_cause(page) == "cyanobacteria"
    context.set_offline(False)


@long_run()
@pytest.mark.python_alive
def test_it_works_from_the_keyboard(page):
    go(page, "problems/")
    expect(page.locator("#diagnosis-more")).to_be_visible()
    page.locator('a.place[data-place="stem"]').focus()
    page.keyboard.press("Enter")
    expect(page.locator("#diagnosis-question")).to_be_focused()
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    wait(page)
    expect(page.locator("#diagnosis-question")).to_be_focused()
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    expect(page.locator("#diagnosis-answers li")).to_have_count(2)


@long_run()
def test_it_asks_before_python_is_there(chromium, address):
    context = chromium.new_context(base_url=address, has_touch=True, service_workers="block")
    page, held = context.new_page(), []
    context.route("**/runtime/parts.json", lambda route: held.append(route))
    go(page, "problems/")
    tap_place(page, "old-leaves")
    page.locator('#diagnosis-chips button[data-present="old-leaves-pinholes"]').tap()
    expect(page.locator("#diagnosis-question")).to_have_text(re.compile(r"\?$"))
    expect(page.locator("#diagnosis-result")).to_be_hidden()
    question, taps = page.locator("#diagnosis-question"), 1
    while "Your answers are noted" not in question.inner_text():
        before = question.inner_text()
        page.locator("#diagnosis-chips button").first.tap()
        expect(question).not_to_have_text(before)
        taps += 1
    assert 3 <= taps <= MOST_TAPS
    assert held
    for route in held:
        route.continue_()
    expect(page.locator("#diagnosis-result")).to_be_visible()
    expect(page.locator("#diagnosis-answers li")).to_have_count(taps)
    context.close()


@pytest.mark.python_alive
def test_a_diagnosis_is_kept_and_opened_again(page):
    go(page, "problems/?place=coating&findings=coat-black-tufts&asked=coat-black-tufts")
    wait(page)
    page.locator("#diagnosis-tank").fill("Foyer")
    page.locator("#diagnosis-keep").tap()
    expect(page.locator("#diagnosis-done")).to_have_text("Kept for Foyer, on this device.")
    go(page, "shelf/")
    page.locator(".kept a").last.tap()
    wait(page)
    assert first_cause(page) == "black-brush"


GASPING = "place=animals&findings=fish-gasping&asked=fish-gasping"
# Words and keys that this book does not know (any more), as shared links and old notes carry them.
UNKNOWN = {
    "fbclid=abc": "fbclid",
    "utm_source=x&utm_medium=y": "utm_source",
    "__proto__=x&constructor=y": "__proto__",
    "plant=a-plant-that-was-retired": "a-plant-that-was-retired",
    "readings.old=3": "readings.old",
}


def still_helps(page):
    """The danger banner stands, the ranking too, and a question can be answered."""
    wait(page)
    expect(page.locator("#diagnosis-danger")).to_be_visible()
    expect(page.locator("#diagnosis-danger")).to_contain_text("Animals first")
    before = page.locator("#diagnosis-question").inner_text()
    page.locator("#diagnosis-chips button").first.tap()
    expect(page.locator("#diagnosis-question")).not_to_have_text(before)
    wait(page)
    expect(page.locator("#diagnosis-danger")).to_be_visible()


@long_run()
@pytest.mark.parametrize("words", share_of([*UNKNOWN], 5))
def test_unknown_words_in_an_address_are_said_and_the_rest_is_answered(page, words):
    page.goto(f"problems/?{words}&{GASPING}")
    expect(page.locator("#diagnosis-said")).to_contain_text(
        "Left out, as this book does not know it"
    )
    expect(page.locator("#diagnosis-said")).to_contain_text(UNKNOWN[words])
    assert "describe" not in page.locator("main").inner_text()
    still_helps(page)
    assert UNKNOWN[words] not in page.url
    assert "fish-gasping" in page.url


@long_run()
def test_an_unknown_word_alone_leaves_the_page_as_it_opens(page):
    page.goto("problems/?fbclid=abc")
    expect(page.locator("#diagnosis-said")).to_contain_text("fbclid")
    tap_place(page, "animals")
    page.locator('#diagnosis-chips button[data-present="fish-gasping"]').tap()
    still_helps(page)


def test_retired_keys_in_a_kept_diagnosis_are_said_and_the_rest_is_answered(page):
    page.goto("shelf/")
    signs = "findings=a-retired-sign,fish-gasping,constructor&asked=a-retired-sign,fish-gasping"
    one = {
        "id": "1", "tank": "Foyer", "calculator": "diagnose", "page": "problems/",
        "address": f"?place=animals&{signs}",
        "title": "Something looks wrong", "when": "2026-01-01T00:00:00Z", "lines": ["a line"],
    }  # fmt: skip
    page.evaluate("(one) => localStorage.setItem('mulmbook-kept', JSON.stringify([one]))", one)
    page.reload()
    page.locator(".kept a").tap()
    expect(page.locator("#diagnosis-said")).to_contain_text("a-retired-sign")
    expect(page.locator("#diagnosis-answers li")).to_have_count(1)
    still_helps(page)


def test_a_place_that_is_none_and_a_figure_that_is_none_do_not_stop_it(page):
    page.goto("problems/?place=toString&findings=fish-gasping&readings.ph=abc")
    expect(page.locator("#diagnosis-said")).to_contain_text("toString")
    expect(page.locator("#diagnosis-said")).to_contain_text("cannot be read: pH")
    expect(page.locator("#diagnosis-danger")).to_be_visible()
    expect(page.locator(".places")).to_be_visible()


def test_a_reading_that_kills_is_urgent_on_the_page(page):
    page.goto("problems/?place=animals&listing=1&readings.temperature_c=8")
    expect(page.locator("#diagnosis-danger")).to_contain_text("Check the heater")
    expect(page.locator("#diagnosis-enough")).not_to_contain_text("Change nothing")


@long_run()
def test_with_no_script_the_drawing_leads_to_the_index(chromium, address):
    context = chromium.new_context(java_script_enabled=False, base_url=address)
    page = context.new_page()
    go(page, "problems/")
    page.locator("details.signs summary").first.click()
    expect(page.locator("details.signs a").first).to_be_visible()
    page.locator('a.place[data-place="roots"]').click()
    expect(page).to_have_url(re.compile(r"symptoms/#roots$"))
    context.close()


@long_run()
@pytest.mark.parametrize(
    "query",
    share_of(
        [
            "?place=animals&findings=fish-gasping&asked=fish-gasping", "", "?place=old-leaves&listing=1",
            "all/", "key/", "symptoms/", "crypt-melt/",
        ],
        7,
    ),
)  # fmt: skip
@pytest.mark.python_alive
def test_each_step_is_fit_for_thumbs_and_readers(page, query):
    go(page, f"problems/{query}")
    if "findings" in query:
        wait(page)
    assert axe_complaints(page) == []
    small = page.evaluate(
        """() => [...document.querySelectorAll('.look button, .look summary, a.place .reach, .look input')]
        .filter((one) => one.checkVisibility() && one.getBoundingClientRect().height < 44)
        .map((one) => one.outerHTML.slice(0, 100))"""
    )
    assert small == []
    assert page.evaluate("() => document.documentElement.scrollWidth") <= 390
