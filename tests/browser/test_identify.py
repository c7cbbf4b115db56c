"""What have I got, on a phone: by taps alone from the home page to a plant, with the law first."""

import re

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import axe_complaints, go
from tests.effort import long_run, share_of

LEAST_TARGET = 56  # px


def wait(page):
    """Until Python has answered on this page."""
    expect(page.locator("#identify-at-tank[data-answered]")).to_be_attached()
    return page


def tap_answer(page, answer):
    """Tap one answer, wherever it stands, and wait for the next question."""
    button = page.locator(f'#naming-ask [data-set="{answer}"]')
    if not button.is_visible():
        page.locator("#naming-others summary").tap()
    before = page.locator("#naming-question").inner_text()
    button.tap()
    expect(page).to_have_url(re.compile(re.escape(answer)))
    expect(page.locator("#naming-question")).not_to_have_text(before)


@long_run()
@pytest.mark.python_alive
def test_by_taps_from_the_plants_to_a_listed_plant_with_the_law_first(page):
    go(page, "plants/")
    page.get_by_role("link", name="What have I got?").tap()
    wait(page)
    tap_answer(page, "traits.form=stem")
    expect(page.locator("#naming-result")).to_be_visible()
    for answer in ("traits.shape=lanceolate", "traits.arrangement=opposite"):
        tap_answer(page, answer)
    law = page.locator("#naming-first")
    expect(law).to_contain_text("The law first: it may be Hygrophila polysperma")
    expect(law).to_contain_text("bin nothing wet")
    assert law.bounding_box()["y"] < page.locator("#naming-ask").bounding_box()["y"]
    expect(law.get_by_role("link", name="The law: ").first).to_be_visible()
    names = page.locator("#naming-ranking [data-plant]")
    shown = [name.get_attribute("data-plant") for name in names.all()]
    assert "hygrophila-polysperma" in shown
    expect(page.locator("#naming-beside")).to_contain_text("what differs, and where to look")
    assert axe_complaints(page) == []
    page.emulate_media(color_scheme="null")
    page.locator("#naming-given summary").tap()
    page.locator('[data-drop="traits.arrangement"]').tap()
    expect(page).not_to_have_url(re.compile("arrangement"))
    page.go_back()
    expect(page).to_have_url(re.compile("arrangement=opposite"))


@pytest.mark.python_alive
@pytest.mark.parametrize(
    ("label", "named"),
    [("water hyacinth", "Pontederia crassipes"), ("Monochoria hastata", "Monochoria hastata")],
)
def test_a_label_alone_that_names_a_listed_plant_shows_the_law(page, label, named):
    go(page, f"identify/?label={label.replace(' ', '+')}")
    wait(page)
    law = page.locator("#naming-first")
    expect(law).to_be_visible()
    expect(law).to_contain_text(named)


@pytest.mark.python_alive
def test_every_target_is_large_enough_for_a_wet_thumb_and_nothing_runs_over_the_edge(page):
    go(page, "identify/?traits.form=rosette")
    wait(page)
    for target in page.locator("#naming-ask button:visible").all():
        box = target.bounding_box()
        assert box["height"] >= LEAST_TARGET
        assert box["width"] >= LEAST_TARGET
    wide = page.evaluate("() => document.documentElement.scrollWidth > innerWidth")
    assert not wide


@long_run()
@pytest.mark.python_alive
def test_what_cannot_be_seen_is_not_asked_again_and_a_size_can_be_measured(page):
    go(page, "identify/?traits.form=stem")
    wait(page)
    first = page.locator("#naming-question").inner_text()
    page.get_by_role("button", name="I cannot see it").tap()
    expect(page).to_have_url(re.compile("unseen="))
    expect(page.locator("#naming-question")).not_to_have_text(first)
    while not page.locator("#naming-measure").count():
        before = page.locator("#naming-question").inner_text()
        page.get_by_role("button", name="I cannot see it").tap()
        expect(page.locator("#naming-question")).not_to_have_text(before)
    page.locator("#naming-measure").fill("14")
    page.get_by_role("button", name="Take it").tap()
    expect(page).to_have_url(re.compile(r"traits\.\w+=14"))
    expect(page.locator("#naming-given")).to_contain_text("14 mm")


@long_run()
@pytest.mark.python_alive
def test_no_word_of_an_address_keeps_the_answer_away(page):
    go(
        page,
        "identify/?traits.shape=banana&aura=blue&traits.form=stem&traits.length_mm=long&unseen=soul",
    )
    wait(page)
    said = page.locator("#naming-said")
    expect(said).to_contain_text("“banana”")
    expect(said).to_contain_text("“aura”")
    expect(page.locator("#naming-ranking [data-plant]").first).to_be_attached()


@long_run()
@pytest.mark.python_alive
def test_a_label_from_its_own_page_weighs_and_says_that_it_is_shared(page):
    go(page, "names/hygro/")
    page.get_by_role("link", name="Name it from what you see").tap()
    wait(page)
    expect(page.locator("#naming-name")).to_have_value("Hygro")
    expect(page.locator("#naming-notes")).to_contain_text("is used for 6 plants")


@long_run()
def test_it_stands_with_no_script(chromium, address):
    context = chromium.new_context(base_url=address, java_script_enabled=False)
    page = context.new_page()
    page.goto("identify/")
    expect(page.locator("noscript .banner")).to_be_visible()
    expect(page.locator("#naming-ask")).to_be_hidden()  # answers that nothing would take
    group = page.locator("details.form-list").first
    group.locator("summary").click()
    expect(group.locator("a").first).to_be_visible()
    context.close()


@pytest.mark.parametrize("size", share_of([(390, 844), (1280, 800)], 2))
@pytest.mark.python_alive
def test_the_question_is_on_the_first_screen(page, size):
    page.set_viewport_size({"width": size[0], "height": size[1]})
    go(page, "identify/")
    wait(page)
    box = page.locator("#naming-ask .drawn button").first.bounding_box()
    assert box["y"] + box["height"] < size[1] - 60
