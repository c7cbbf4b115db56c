"""The log changes what lives in a tank, on its page and in its form; undo takes back what its line says."""

from playwright.sync_api import expect

from tests.browser.conftest import go
from tests.browser.shelf_page import with_shelf
from tests.browser.shelf_tanks import LOBBY, OTHER, entries_of, put, without_python
from tests.effort import long_run

SHRIMP = "neocaridina-davidi"


def log_dead(page, number):
    """Log some dead shrimps on the tank's page, by its own buttons."""
    page.locator("#tank-log").tap()
    sheet = page.get_by_role("dialog")
    sheet.get_by_role("button", name="Animals died").tap()
    sheet.locator("#log-value").fill(str(number))
    sheet.get_by_role("button", name="Save", exact=True).tap()


@long_run()
def test_deaths_that_are_logged_are_missing_on_the_page_and_in_the_form_and_undo_brings_them_back(
    page,
):
    put(page, LOBBY)
    go(page, "shelf/tank/#mine")
    animals = page.locator("#tank-animals li")
    expect(animals).to_contain_text("12")
    log_dead(page, 5)
    expect(animals).to_contain_text("7")
    field = page.locator(".living[data-list=animals] input").first
    expect(field).to_have_value("7")
    page.locator("#shelf-done button").tap()
    expect(animals).to_contain_text("12")
    log_dead(page, 5)
    expect(field).to_have_value("7")
    page.locator("#tank-edit").tap()
    page.get_by_role("button", name="More: ").nth(2).tap()  # after those of two plants
    expect(animals).to_contain_text("8")
    (row,) = with_shelf(page, "return (await shelf.tank('mine')).animals;")
    assert (row["animal"], row["count"]) == (SHRIMP, 8)  # as counted now, the log of before in it
    assert row["entered"]


@long_run()
def test_what_is_taken_out_of_the_form_stays_out_whatever_was_logged_before(page):
    put(page, {**LOBBY, "plants": []}, entries=[
        {"tank": "mine", "at": "2026-11-20T10:00:00Z", "kind": "animal", "what": SHRIMP, "value": 8},
    ])  # fmt: skip
    go(page, "shelf/tank/#mine")
    expect(page.locator("#tank-animals li")).to_contain_text("20")
    page.locator("#tank-edit").tap()
    page.locator(".living[data-list=animals]").get_by_role("button", name="Remove").tap()
    expect(page.locator("#tank-animals")).to_have_text("No animals said.")
    with_shelf(
        page, "await shelf.log({ tank: 'mine', kind: 'feed', value: 1 });"
    )  # Python says it anew
    expect(page.locator("#tank-entries li").first).to_contain_text("1 g")
    expect(page.locator("#tank-old")).to_have_text("")
    expect(page.locator("#tank-animals")).to_have_text("No animals said.")


@long_run()
def test_a_figure_saved_to_the_tank_carries_its_moment_and_others_carry_none(page):
    put(page, LOBBY)
    go(page, "shelf/tank/#mine")
    page.locator("#tank-edit").tap()
    page.locator("#tank-ph").fill("7.6")
    page.locator("#tank-light_hours").fill("8")
    page.locator("#tank-light_hours").blur()
    expect(page.locator("#shelf-done")).to_contain_text("Saved to the tank.")
    entered = with_shelf(page, "return (await shelf.tank('mine')).entered;")
    assert list(entered) == ["ph"]
    assert entered["ph"][:2] == "20"


@long_run()
def test_undo_takes_back_what_its_message_speaks_of_and_not_what_came_later(page):
    put(page, LOBBY, OTHER)
    go(page, "shelf/tank/#mine")
    log_dead(page, 3)
    expect(page.locator("#shelf-done")).to_contain_text("Animals died")
    with_shelf(page, "await shelf.log(given);", {"tank": "other", "kind": "feed", "value": 2})
    page.locator("#shelf-done button").tap()
    expect(page.locator("#shelf-done")).to_have_text("Undone.")
    assert entries_of(page) == []
    assert [one["value"] for one in entries_of(page, "other")] == [2]


def test_an_action_of_several_writings_is_undone_whole_and_only_once(page):
    put(page, LOBBY, OTHER)
    seen = with_shelf(
        page,
        """
        const tap = { action: "one tap" };
        await shelf.log({ tank: "mine", kind: "feed", value: 1 }, tap);
        await shelf.log({ tank: "other", kind: "feed", value: 2 }, tap);
        const later = await shelf.log({ tank: "mine", kind: "feed", value: 3 });
        await shelf.edit(later.id, { value: 4 });
        const undone = await shelf.undo("one tap");
        const left = (await shelf.entries()).map((one) => one.value);
        const again = await shelf.undo("one tap");
        return [undone.entries.length, left, again, await shelf.undo("no such tap")];""",
    )
    assert seen == [2, [4], None, None]


def test_the_answer_of_one_tank_never_stands_on_the_page_of_another(page, context):
    """Where Python is not there, the tank that was never worked out has none."""
    put(page, LOBBY, OTHER)
    go(page, "shelf/tank/#mine")
    expect(page.locator("#answer")).not_to_be_empty()
    go(page, "about/")
    other = without_python(context)
    other.goto("shelf/tank/#mine")
    expect(other.locator("#answer")).not_to_be_empty()
    other.evaluate("() => { location.hash = 'other'; }")
    expect(other.locator("#tank-title")).to_have_text("Stairs")
    expect(other.locator("#tank-old")).to_contain_text("Python could not start")
    expect(other.locator("#answer")).to_be_empty()
    other.close()
