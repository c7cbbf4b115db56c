"""The first page says how the tank stands that the keeper stands at, and which others need somebody now."""

from playwright.sync_api import expect

from tests.browser.conftest import go
from tests.browser.shelf_tanks import LOBBY, board, logged, put, without_python
from tests.effort import long_run

SICK = {**LOBBY, "id": "sick", "name": "Back room"}


def test_the_tank_here_stands_with_its_verdict_and_another_in_danger_is_named(page, context):
    put(page, LOBBY, SICK, chosen="mine")
    logged(page, tank="mine", kind="reading", what="nitrate_mg_l", value=5)
    logged(page, tank="sick", kind="reading", what="nitrite_mg_n_l", value=2)
    board(page, "anew")
    go(page, "about/")
    other = without_python(context)
    other.goto("")
    here, danger = other.locator("#stands-here p").first, other.locator("#stands-here p").nth(1)
    expect(here).to_contain_text("Lobby")
    expect(here.locator(".stands-sign")).to_have_text("Calm")
    expect(danger.locator(".stands-sign")).to_have_text("Act now")
    expect(danger).to_contain_text("Back room")
    danger.get_by_role("link", name="Back room").tap()
    expect(other.get_by_role("heading", level=1)).to_contain_text("Back room")
    other.close()


@long_run()
def test_what_is_logged_on_the_first_page_is_worked_out_there(page):
    put(page, LOBBY, chosen="mine")
    page.goto("")
    expect(page.locator("#stands-here")).to_contain_text("Not worked out yet.")
    page.locator("#stand-at").get_by_role("button", name="Log").tap()
    sheet = page.get_by_role("dialog")
    sheet.get_by_role("button", name="Ammonia").tap()
    sheet.get_by_text("1", exact=True).tap()
    expect(page.locator("#shelf-done")).to_contain_text("Ammonia")
    expect(page.locator("#stands-here .stands-sign")).to_have_text("Watch")
    expect(page.locator("#stands-here")).to_contain_text("mmonia of 1 mg N/L")


def test_without_a_tank_nothing_stands_between_search_and_doors(page):
    page.goto("")
    expect(page.locator("#stands-here")).to_be_empty()
    assert page.locator("#stands-here").bounding_box()["height"] == 0


def test_with_tanks_and_none_chosen_the_room_of_the_verdict_says_so(page):
    put(page, LOBBY)
    page.goto("")
    expect(page.locator("#stands-here")).to_contain_text("You stand at no tank")
    page.get_by_role("link", name="how all of them stand").tap()
    expect(page.locator(".tank-card")).to_have_count(1)
