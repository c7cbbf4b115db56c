"""The round through all tanks: what is ticked off stays so, and nothing is called done too early."""

from playwright.sync_api import expect

from tests.browser.conftest import go
from tests.browser.shelf_page import with_shelf
from tests.browser.shelf_tanks import LOBBY, OTHER, SMALL, logged, put, reading, without_python
from tests.effort import long_run


@long_run()
def test_nothing_is_called_done_before_today_was_worked_out(page, context):
    put(page, LOBBY)
    other = without_python(context)
    other.goto("shelf/round/")
    expect(other.locator("#round-tanks h2")).to_have_text("Lobby")
    expect(other.locator("#round-week")).to_have_text("Not worked out for today yet.")
    other.close()


def test_the_round_is_ticked_off_and_put_into_walking_order(page):
    put(page, {**LOBBY, "plants": []}, OTHER)
    with_shelf(page, "await shelf.log(given);", {**reading(20, 8, None), "kind": "change"})
    go(page, "shelf/round/")
    box = page.locator("#round-tanks .tick", has_text="change water")
    box.tap()
    expect(box.locator("input")).to_be_checked()
    go(page, "about/")
    go(page, "shelf/round/")
    expect(box.locator("input")).to_be_checked()
    page.get_by_role("button", name="Earlier in the walk: Stairs").tap()
    expect(page.locator("#round-tanks h2").first).to_have_text("Stairs")
    assert page.evaluate(SMALL) == []


@long_run()
def test_a_tank_that_is_moved_stays_under_the_thumb_and_the_focus_on_its_control(page):
    put(page, *({**OTHER, "id": f"t{at}", "name": f"Tank {at}"} for at in range(8)))
    go(page, "shelf/round/")
    expect(page.locator("#round-week")).to_contain_text(
        "to do today"
    )  # nothing is painted anew now
    down = page.get_by_role("button", name="Later in the walk: Tank 3")
    down.scroll_into_view_if_needed()
    before = down.bounding_box()
    for place in (4, 5):
        page.touchscreen.tap(before["x"] + 20, before["y"] + 20)  # where the thumb is
        expect(page.locator("#round-tanks h2").nth(place)).to_have_text("Tank 3")
        page.wait_for_function(
            "([one, y]) => Math.abs(one.getBoundingClientRect().top - y) < 2",
            arg=[down.element_handle(), before["y"]],
        )
    expect(down).to_be_focused()


@long_run()
def test_a_tick_keeps_the_focus(page):
    put(page, LOBBY, {**LOBBY, "id": "other", "name": "Stairs"})
    go(page, "shelf/round/")
    expect(page.locator("#round-week")).to_contain_text("to do today")
    box = page.locator("#round-tanks .tick input").last
    box.focus()
    page.keyboard.press("Space")
    expect(page.locator("#round-tanks .tick input:checked")).to_have_count(1)
    expect(box).to_be_checked()
    expect(box).to_be_focused()


# Both ticks in one turn of the page, before the first can have been written; then the page is left.
TWO_TICKS = """() => {
  const boxes = [...document.querySelectorAll("#round-tanks .tick input")].slice(0, 2);
  for (const box of boxes) box.click();
  location.reload();
  return boxes.length;
}"""


def test_two_ticks_in_quick_succession_both_stay_though_the_page_is_left_at_once(page):
    put(page, LOBBY, {**LOBBY, "id": "other", "name": "Stairs"})
    for tank in ("mine", "other"):
        logged(page, **{**reading(20, 8, None), "kind": "change", "tank": tank})
    go(page, "shelf/round/")
    ticks = page.locator("#round-tanks .tick")
    expect(ticks.nth(1)).to_be_visible()
    with page.expect_navigation():
        assert page.evaluate(TWO_TICKS) == 2
    expect(ticks.nth(1)).to_be_visible()
    expect(page.locator("#round-tanks .tick input:checked")).to_have_count(2)


def test_tanks_whose_animals_are_in_danger_stand_before_the_walk_what_kills_first_first(page):
    first = page.locator("#round-first")
    put(page, OTHER)
    go(page, "shelf/round/")
    expect(page.locator("#round-week")).to_contain_text("to do today")
    expect(first).to_be_hidden()
    short = {**reading(1.5, 0, "oxygen_mg_l"), "tank": "hall"}
    put(page, LOBBY, {**LOBBY, "id": "hall", "name": "Hall"}, entries=[reading(300, 0), short])
    go(page, "shelf/round/")
    expect(first).to_have_text(
        "Animals may be in danger. Go there before you walk the round: Hall, then Lobby."
    )
    names = page.locator("#round-tanks h2").all_inner_texts()
    assert names == ["Stairs", "Lobby", "Hall"]  # the walk is the keeper's own
    assert page.evaluate(SMALL) == []
