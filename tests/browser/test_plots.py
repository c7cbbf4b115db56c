"""Pictures under a finger, the pointer and the arrow keys: letters large enough, values, a table."""

import csv
import io
import re

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import axe_complaints, example_address, go, wait_for_answer
from tests.effort import long_run, share_of

DRAWN = ["nitrogen-forecast", "floaters", "acclimate", "warmth", "light", "top-up"]
LEAST_LETTERS = 12  # CSS px as shown
PHONES = ({"width": 390, "height": 844}, {"width": 360, "height": 740})
SIZES = """() => [...document.querySelectorAll('.plot svg[viewBox^="0 0 3"] text')].map((one) =>
    parseFloat(getComputedStyle(one).fontSize) * one.ownerSVGElement.getScreenCTM().a)"""
OUTSIDE = """() => [...document.querySelectorAll('.plot > svg text')].filter((one) => {
    const box = one.getBoundingClientRect(), whole = one.ownerSVGElement.getBoundingClientRect();
    return box.left < whole.left - 1 || box.right > whole.right + 1;
}).map((one) => one.textContent)"""


def first_figure(page):
    return page.locator("#plots figure").first


@long_run()
@pytest.mark.python_alive
@pytest.mark.parametrize("name", share_of([*DRAWN], 3))
def test_letters_are_large_enough_on_a_phone_and_within_their_picture(page, name):
    go(page, f"calculators/{name}/")
    for phone in PHONES:
        page.set_viewport_size(phone)
        sizes = page.evaluate(SIZES)
        assert sizes
        assert min(sizes) >= LEAST_LETTERS
        assert page.evaluate(OUTSIDE) == []


@long_run()
@pytest.mark.python_alive
def test_arrows_a_finger_and_the_pointer_read_the_values(page):
    go(page, example_address("nitrogen-forecast"))
    wait_for_answer(page)
    figure = first_figure(page)
    values, slider = figure.locator(".values"), figure.get_by_role("slider")
    expect(values).to_contain_text("Day 90: ammonia")
    expect(figure.locator(".cursor")).to_have_css("visibility", "hidden")
    slider.press("Home")
    expect(values).to_contain_text("Day 0: ammonia 0 mg N/L; nitrite 0 mg N/L")
    spoken = re.compile(r"Day 0: ammonia 0\smg\sN/L; nitrite 0\smg\sN/L")
    expect(slider).to_have_attribute("aria-valuetext", spoken)
    slider.press("ArrowRight")
    expect(values).not_to_contain_text("Day 0:")
    expect(figure.locator(".cursor")).to_have_css("visibility", "visible")
    picture = figure.get_by_role("img")
    box = picture.bounding_box()
    picture.tap(position={"x": box["width"] * 0.1, "y": box["height"] / 2})
    expect(values).to_contain_text("Day 0:")
    picture.hover(position={"x": box["width"] * 0.99, "y": box["height"] / 2})
    expect(values).to_contain_text("Day 90")
    assert axe_complaints(page) == []


@long_run()
@pytest.mark.python_alive
def test_the_table_holds_what_the_answer_holds(page):
    go(page, example_address("nitrogen-forecast", spread="band"))
    wait_for_answer(page)
    expect(page.locator("#plots figure").nth(1).locator("polygon.band")).to_be_attached()
    with page.expect_download() as saving:
        page.locator("#plots .as-table").nth(1).tap()
    assert saving.value.suggested_filename == "nitrate-as-no3.csv"
    with open(saving.value.path(), encoding="utf-8", newline="") as file:
        head, *rows = list(csv.reader(io.StringIO(file.read(), newline="")))
    assert head[:2] == ["Day", "Nitrate, mg/L"]
    assert len(head) == 4  # with the edges of its band
    assert [float(cell) for cell in (rows[0][0], rows[-1][0], rows[0][1])] == [0, 90, 15]


@long_run()
@pytest.mark.starts_python
def test_a_worked_example_is_read_before_python_has_answered(page):
    held = []
    page.route("**/pyodide.asm.wasm", lambda route: held.append(route))  # it answers no sooner
    page.goto("calculators/oxygen/")
    figure = first_figure(page)
    expect(figure.locator("figcaption")).to_have_text(
        "Oxygen at saturation falls with rising water temperature."
    )
    figure.get_by_role("slider").press("Home")
    expect(figure.locator(".values")).to_have_text("Water temperature 10 °C: 11.3 mg/L")
    expect(page.locator("#calculator[data-answered]")).to_have_count(0)
    for route in held:
        route.continue_()


@long_run()
def test_without_a_script_the_picture_has_its_caption_and_no_dead_control(chromium, address):
    plain = chromium.new_context(base_url=address, java_script_enabled=False).new_page()
    plain.goto("calculators/oxygen/")
    expect(first_figure(plain).locator("figcaption")).to_be_visible()
    expect(first_figure(plain).locator(".along")).to_be_hidden()
    expect(first_figure(plain).locator(".as-table")).to_be_hidden()
    plain.context.close()
