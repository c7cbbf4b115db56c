"""The shelf's pages at a tank: taps counted, forms filled and said so, the board whole before Python.

Each test has a page of its own: what stands on the shelf lives on in a page that stays open.
"""

import re
from datetime import UTC, datetime, timedelta

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import (
    axe_complaints,
    go,
    wait_for_answer,
    wait_for_offline_copy,
)
from tests.browser.shelf_page import with_shelf
from tests.effort import long_run, share_of

NO_WORKER = "window.Worker = class { constructor() { throw new Error('no worker here'); } };"
TARGETS = "main button, dialog button, dialog select, main .tick, .tap, .stepper input"
NOT_WET = ".after, #demo-there, .kept, .shelf-preview"  # done at a desk
SMALL = f"""() => [...document.querySelectorAll('{TARGETS}')]
    .filter((one) => one.offsetParent && !one.closest('{NOT_WET}') && one.getBoundingClientRect().height < 56)
    .map((one) => one.outerHTML.slice(0, 90))"""
LOBBY = {
    "id": "mine",
    "name": "Lobby",
    "net_l": 96,
    "length_cm": 80,
    "width_cm": 30,
    "place": "gb",
    "change": {"percent": 20, "every_days": 7},
    "temperature_c": 24,
    "ph": 7.2,
    "plants": [
        {"plant": "rotala-rotundifolia", "wet_g": 50},
        {"plant": "anubias-barteri", "wet_g": None},
    ],
    "animals": [{"animal": "neocaridina-davidi", "count": 12}],
}


class Taps:
    """Counts the taps of a hand."""

    def __init__(self):
        self.count = 0

    def __call__(self, place):
        place.tap()
        self.count += 1


def put(page, *tanks, entries=(), chosen=None):
    """Put tanks and entries on the shelf, from a small page of the book; then stay there."""
    go(page, "about/")
    with_shelf(
        page,
        """for (const tank of given.tanks) await shelf.saveTank(tank);
        for (const entry of given.entries) await shelf.log(entry);
        if (given.chosen) await shelf.choose(given.chosen);""",
        {"tanks": list(tanks), "entries": list(entries), "chosen": chosen},
    )


OTHER = {"id": "other", "name": "Stairs"}


def without_python(context):
    """A page in which Python cannot start."""
    made = context.new_page()
    made.add_init_script(NO_WORKER)
    return made


def reading(value, days_ago, what="nitrate_mg_l"):
    """A reading of the keeper's tank so many days ago."""
    at = (datetime.now(UTC) - timedelta(days=days_ago)).isoformat()
    return {"tank": "mine", "at": at, "kind": "reading", "what": what, "value": value}


def logged(page, **entry):
    """Log an entry of today, or of ``at``."""
    with_shelf(page, "await shelf.log(given);", {"tank": "mine", **entry})


def entries_of(page, tank="mine"):
    return with_shelf(page, "return await shelf.entries({ tank: given });", tank)


def board(page, state=None):
    """The board, as it was kept or made anew; ``state`` says which of the two to wait for."""
    go(page, "shelf/")
    shown = f"#board[data-shown={state}]" if state else "#board[data-shown]"
    expect(page.locator(shown)).to_be_attached()
    return page


@pytest.mark.starts_python
def test_a_reading_is_logged_from_the_board_in_three_taps_and_no_keyboard(page):
    put(page, LOBBY, entries=[reading(10, 9), reading(20, 2)])
    board(page, "kept")  # while Python starts
    tap = Taps()
    tap(page.get_by_role("button", name="Log: Lobby"))
    tap(page.get_by_role("dialog").get_by_role("button", name="Nitrate, NO₃"))
    offered = page.get_by_role("group", name=re.compile("^Logged last")).get_by_role("button")
    assert offered.all_inner_texts() == ["20", "10"]  # the last ones, the latest first
    assert page.evaluate(SMALL) == []
    tap(offered.first)
    assert tap.count == 3
    expect(page.locator("#shelf-done")).to_contain_text("Nitrate, NO₃ 20 NO₃, Lobby")
    assert [one["value"] for one in entries_of(page)] == [10, 20, 20]
    page.locator("#shelf-done button").tap()
    expect(page.locator("#shelf-done")).to_have_text("Undone.")
    assert [one["value"] for one in entries_of(page)] == [10, 20]


def test_a_tank_is_new_in_eight_taps_and_its_name(page):
    board(page)
    tap = Taps()
    tap(page.get_by_role("link", name="New tank"))
    expect(page.locator("#minute-plants button").first).to_be_visible()
    expect(page.locator("#tank-name")).to_be_focused()
    page.keyboard.type("Window sill")
    tap(page.locator("#minute-size").get_by_role("button", name="54 l"))
    tap(page.locator("#minute-age").get_by_role("button", name="two months"))
    tap(page.locator("#minute-animals button").first)
    for number in (0, 1):
        tap(page.locator("#minute-plants button").nth(number))
    tap(page.get_by_role("button", name="Put it on the shelf"))
    assert tap.count <= 8
    expect(page.locator(".tank-card h2")).to_have_text("Window sill")
    (tank,) = with_shelf(page, "return await shelf.tanks();")
    assert (tank["net_l"], len(tank["plants"]), len(tank["animals"])) == (54, 2, 1)
    assert tank["animals"][0]["count"] is None  # blank, never guessed
    assert "ph" not in tank


@long_run()
def test_the_form_of_a_dose_for_my_tank_is_two_taps_from_home_and_filled(page):
    put(page, LOBBY, chosen="mine")
    go(page, "")
    tap = Taps()
    tap(page.get_by_role("navigation", name="Doors").get_by_role("link", name="Work it out"))
    tap(page.locator("main").get_by_role("link", name=re.compile("^Dosing")))
    assert tap.count == 2
    wait_for_answer(page)
    expect(page.locator("#in-volume_l")).to_have_value("96")
    expect(page.locator("[data-key=volume_l] .from-tank")).to_have_text("from Lobby")
    expect(page.locator("#from-tank")).to_contain_text("From Lobby: 3 fields")
    expect(page).to_have_url(re.compile("volume_l=96"))  # a shared link carries it


@long_run()
def test_the_dose_itself_is_two_taps_from_home_once_it_was_chosen_for_the_tank(page):
    put(page, LOBBY, OTHER, chosen="mine")
    go(page, "calculators/dosing/")
    wait_for_answer(page)
    page.locator("#in-schedule").select_option("weekly")
    page.locator("#in-nutrient").select_option("nitrate")
    page.locator("#in-source").select_option("kno3")
    page.locator("#in-rise_mg_l").fill("5")
    expect(page.locator("#result-title")).to_have_text("Result")
    kept = (
        "return until(async () => (await shelf.setting('again'))?.mine.dosing.rise_mg_l === '5');"
    )
    assert with_shelf(page, kept) is True
    logged(page, **reading(8, 0))
    go(page, "")
    tap = Taps()
    tap(page.get_by_role("navigation", name="Doors").get_by_role("link", name="Work it out"))
    tap(page.locator("main").get_by_role("link", name=re.compile("^Dosing")))
    assert tap.count == 2
    expect(page.locator("#result-title")).to_have_text("Result")
    # 5 mg/L of NO3 in 96 L: by mass KNO3 101.102 to NO3 62.004 (IUPAC 2021, abridged)
    expect(page.locator("#answer")).to_contain_text(f"{5 * 96 / 1000 * 101.102 / 62.004:.3f}")
    expect(page.locator("[data-key=rise_mg_l] .from-tank")).to_have_text("as last time for Lobby")
    expect(page.locator("#in-now_mg_l")).to_have_value("8")  # the reading of the log, no older one
    page.locator("#stand-at-tank").select_option("other")
    expect(page.locator("#in-schedule")).to_have_value("")  # chosen for the other tank alone


def test_a_changed_figure_is_for_this_answer_only_unless_it_is_saved_to_the_tank(page):
    put(page, LOBBY, chosen="mine")
    go(page, "calculators/dosing/")
    wait_for_answer(page)
    expect(page.locator("#in-volume_l")).to_have_value("96")
    page.locator("#in-volume_l").fill("90")
    mark = page.locator("[data-key=volume_l] .from-tank")
    expect(mark).to_contain_text("for this answer only")
    expect(page).to_have_url(re.compile("volume_l=90"))
    assert with_shelf(page, "return (await shelf.tank('mine')).net_l;") == 96
    mark.get_by_role("button", name="Save to Lobby").tap()
    expect(mark).to_have_text("from Lobby")
    assert with_shelf(page, "return (await shelf.tank('mine')).net_l;") == 90


def test_an_address_with_figures_of_its_own_wins_over_the_tank(page):
    put(page, LOBBY, chosen="mine")
    go(page, "calculators/water-change/?now_mg_l=40")
    wait_for_answer(page)
    expect(page.locator("#in-now_mg_l")).to_have_value("40")
    expect(page.locator("#in-volume_l")).to_have_value("")
    expect(page.locator("#from-tank")).to_be_hidden()


def test_another_tank_in_the_switch_fills_the_form_anew(page):
    put(page, LOBBY, {**OTHER, "net_l": 30}, chosen="mine")
    go(page, "calculators/dosing/")
    wait_for_answer(page)
    expect(page.locator("#in-volume_l")).to_have_value("96")
    page.locator("#stand-at-tank").select_option("other")
    expect(page.locator("#in-volume_l")).to_have_value("30")
    page.locator("#stand-at-tank").select_option("")
    expect(page.locator("#in-volume_l")).to_have_value("")


@long_run()
def test_pages_beside_the_calculators_speak_of_the_tank_too(page):
    put(page, LOBBY, entries=[reading(80, 1)], chosen="mine")
    go(page, "compare/")
    expect(page.locator("#status")).to_contain_text("From Lobby")
    expect(page.locator("#beside thead th")).to_have_count(2)
    go(page, "problems/fast-stems-brown-lean/")
    expect(page.locator(".sums-here")).to_have_text(
        "What you work out from here is filled from Lobby."
    )
    go(page, "plants/elodea-canadensis/")
    expect(page.locator(".law-here")).to_contain_text("Where Lobby stands (Great Britain)")
    assert page.locator(".law-mine").count() > 0


def test_the_diagnosis_takes_the_last_readings_of_the_tank(page):
    put(page, LOBBY, chosen="mine")
    logged(page, kind="reading", what="gh_dh", value=9)
    go(page, "problems/")
    expect(page.locator("#diagnosis-more summary")).to_contain_text("from Lobby")
    page.locator("#diagnosis-more summary").tap()
    expect(page.locator('#diagnosis-fields [data-key="readings.gh_dh"] input')).to_have_value("9")


def test_demo_tanks_come_and_go_in_a_tap_and_are_always_marked(page):
    board(page)
    page.get_by_role("button", name="Try it with four demo tanks").tap()
    expect(page.locator(".tank-card")).to_have_count(4)
    expect(page.locator(".tank-card .demo")).to_have_count(4)
    page.locator("#stand-at-tank").select_option("reading-room")
    expect(page.locator(".stand-at label")).to_have_text("Demo")
    go(page, "calculators/dosing/")
    wait_for_answer(page)
    expect(page.locator("[data-key=volume_l] .from-tank")).to_have_text("from Reading Room, demo")
    for path in ("shelf/tank/#reading-room", "shelf/paper/#reading-room"):
        go(page, path)
        expect(page.locator("main")).to_contain_text(re.compile("demo", re.IGNORECASE))
    board(page)
    page.get_by_role("button", name="Remove the demo tanks").tap()
    expect(page.locator(".tank-card")).to_have_count(0)
    expect(page.locator("#board-empty")).to_be_visible()


@long_run()
def test_an_answer_from_a_demo_tank_says_that_it_is_not_the_keepers(page):
    board(page)
    page.get_by_role("button", name="Try it with four demo tanks").tap()
    expect(page.locator(".tank-card")).to_have_count(4)
    page.locator("#stand-at-tank").select_option("reading-room")
    go(page, "calculators/oxygen/")
    wait_for_answer(page)
    expect(page.locator("#result-title")).to_have_text("Result for a demo tank")
    expect(page.locator("#borrowed")).to_contain_text("the demo tank Reading Room")


def test_a_kept_calm_is_not_shown_once_something_was_logged(page, context):
    """What was logged may be what harms, and Python may not be there to say so."""
    put(page, LOBBY)
    logged(page, tank="mine", kind="reading", what="nitrate_mg_l", value=5)
    board(page, "anew")
    expect(page.locator(".stands-sign")).to_have_text("Calm")
    go(page, "about/")  # an open board would work out the tank for every tab
    other = without_python(context)
    other.goto("shelf/")
    expect(other.locator(".stands-sign")).to_have_text("Calm")
    logged(other, tank="mine", kind="reading", what="nitrite_mg_n_l", value=5)
    expect(other.locator(".stands-sign")).to_have_text("Not known")
    expect(other.locator("#board-week")).to_contain_text("What was kept stands here")
    expect(other.locator(".stands-sign")).to_have_text("Not known")
    other.reload()
    expect(other.locator(".stands-sign")).to_have_text("Not known")
    expect(other.locator(".stands")).to_contain_text("Something changed since this was worked out.")
    other.close()


def test_a_reading_of_acid_water_keeps_its_small_p_on_the_card(page):
    put(page, LOBBY)
    logged(page, tank="mine", kind="reading", what="ph", value=4.4)
    board(page, "anew")
    expect(page.locator(".stands")).to_contain_text("pH of 4.4, read ")


def test_the_board_is_whole_at_once_and_then_made_anew(page, context):
    put(page, LOBBY, {**LOBBY, "id": "sick", "name": "Back room"})
    logged(page, tank="sick", kind="reading", what="nitrite_mg_n_l", value=2)
    board(page, "anew")
    names = page.locator(".tank-card h2").all_inner_texts()
    assert names == ["Back room", "Lobby"]  # danger first
    expect(page.locator(".tank-card").first.locator(".stands-sign")).to_have_text("Act now")
    expect(page.locator("#board-week")).to_contain_text("2 tanks")
    go(page, "about/")  # an open board would work out the tank for every tab
    other = without_python(context)
    other.goto("shelf/")
    expect(other.locator(".tank-card").first.locator(".stands-sign")).to_have_text("Act now")
    assert other.locator(".tank-card h2").all_inner_texts() == names
    with_shelf(other, "await shelf.log({ tank: 'mine', kind: 'feed', value: 1 });")
    expect(other.locator("#board-week")).to_contain_text("What was kept stands here")
    expect(other.locator(".tank-card")).to_have_count(2)
    other.close()


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
def test_plants_that_move_to_another_tank_are_two_entries(page):
    put(page, LOBBY, OTHER)
    board(page)
    page.get_by_role("button", name="Log: Lobby").tap()
    sheet = page.get_by_role("dialog")
    sheet.get_by_role("button", name="Plants in or out").tap()
    sheet.get_by_role("button", name="Rotala rotundifolia").tap()
    sheet.get_by_role("button", name="Stairs").tap()
    sheet.get_by_role("button", name=re.compile(r"30 g$")).first.tap()
    expect(page.locator("#shelf-done")).to_contain_text("Rotala rotundifolia to Stairs")
    (out,), (into,) = entries_of(page), entries_of(page, "other")
    assert (out["value"], into["value"]) == (-30, 30)
    assert out["what"] == into["what"] == "rotala-rotundifolia"
    page.locator("#shelf-done button").tap()
    expect(page.locator("#shelf-done")).to_have_text("Undone.")
    assert entries_of(page) == entries_of(page, "other") == []


def log_for_lobby(page, what):
    """From the board: the sheet that asks for this value."""
    page.get_by_role("button", name="Log: Lobby").tap()
    sheet = page.get_by_role("dialog")
    sheet.get_by_role("button", name=what).tap()
    return sheet


@long_run()
def test_a_kit_is_chosen_once_and_handfuls_are_weighed_once(page):
    put(page, LOBBY)
    board(page)
    sheet = log_for_lobby(page, "Nitrite, as nitrogen")
    sheet.get_by_role("button", name="nitrite, NO₂", exact=True).tap()
    sheet.locator("#log-value").fill("1")
    sheet.get_by_role("button", name="Save", exact=True).tap()
    expect(page.locator("#shelf-done")).to_contain_text("1 NO₂")
    (entry,) = entries_of(page)
    # 14.007 / 46.005, from the standard atomic weights of nitrogen and oxygen (IUPAC 2021, abridged)
    assert entry["value"] == pytest.approx(0.3045, abs=1e-4)
    page.get_by_role("button", name="Log: Lobby").tap()
    sheet.get_by_role("button", name="Nitrite, as nitrogen").tap()
    expect(sheet.locator(".kit > summary")).to_contain_text("NO₂")
    last = sheet.get_by_role("group", name="Logged last, NO₂")
    expect(last.get_by_role("button")).to_have_text("1")
    sheet.get_by_role("button", name="Something else").tap()
    sheet.get_by_role("button", name="Trimmed").tap()
    sheet.get_by_role("button", name="40 g", exact=True).tap()
    sheet.get_by_role("button", name="2 handfuls").tap()
    expect(page.locator("#shelf-done")).to_contain_text("2 handfuls")
    assert entries_of(page)[-1]["value"] == 80


HELD_AT_ONCE = """() => {
  document.querySelector('dialog button.tap[aria-pressed=false]').click();
  const controls = [...document.querySelectorAll('dialog .new-parts :is(button, input)')];
  return [controls.length > 5, controls.every((one) => one.disabled)];
}"""


def test_nothing_is_saved_in_the_old_unit_while_another_kit_is_being_kept(page):
    put(page, LOBBY)
    board(page)
    sheet = log_for_lobby(page, "Nitrite, as nitrogen")
    sheet.locator("#log-value").fill("0.7")
    assert page.evaluate(HELD_AT_ONCE) == [True, True]
    expect(sheet.locator(".kit > summary")).to_contain_text("NO₂")
    # As read off the kit, whatever its unit.
    expect(sheet.locator("#log-value")).to_have_value("0.7")
    sheet.get_by_role("button", name="Save", exact=True).tap()
    expect(page.locator("#shelf-done")).to_contain_text("0.7 NO₂")


def test_what_is_logged_before_the_lower_parts_of_the_board_have_come_is_shown(page):
    put(page, LOBBY)
    waiting = []
    page.route("**/shelf/kept-calculations.js", lambda route: waiting.append(route))
    go(page, "shelf/")
    sheet = log_for_lobby(page, "Nitrate, NO₃")
    sheet.locator("#log-value").fill("80")
    sheet.get_by_role("button", name="Save", exact=True).tap()
    expect(page.locator("#board-cards")).to_contain_text("80")
    assert waiting
    for route in waiting:
        route.continue_()


def test_an_entry_is_changed_set_back_and_taken_out_on_the_tanks_page(page):
    put(page, LOBBY, entries=[reading(10, 1)])
    go(page, "shelf/tank/#mine")
    page.get_by_role("button", name=re.compile("^Change: Nitrate")).tap()
    page.locator("#log-value").fill("2000")
    page.get_by_role("button", name="Save", exact=True).tap()
    expect(page.locator("#log-value-problem")).to_contain_text("0 to 1000")  # refused, nothing lost
    page.locator("#log-at").fill("2026-11-20T08:30")
    page.locator("#log-value").fill("15")
    page.get_by_role("button", name="Save", exact=True).tap()
    expect(page.locator("#tank-entries li").first).to_contain_text("15 mg/L")
    (entry,) = entries_of(page)
    assert entry["value"] == 15
    assert entry["at"].startswith("2026-11-20T08:30")
    page.get_by_role("button", name=re.compile("^Change: Nitrate")).tap()
    page.get_by_role("button", name="Take it out of the log").tap()
    expect(page.locator("#tank-entries")).to_contain_text("Nothing is logged")
    page.locator("#shelf-done button").tap()
    expect(page.locator("#tank-entries li").first).to_contain_text("15 mg/L")


def test_a_tank_travels_in_its_link_and_nothing_changes_before_it_is_agreed_to(page):
    put(page, LOBBY)
    link = with_shelf(
        page,
        """const { tankLink } = await import(at("link"));
        const address = new URL("shelf/", new URL(document.body.dataset.root, location)).href;
        return tankLink({ ...(await shelf.tank("mine")), id: "theirs", name: "From a friend" }, address);""",
    )
    page.goto(link)
    expect(page.locator("#copy-preview")).to_contain_text("From a friend: new")
    assert len(with_shelf(page, "return await shelf.tanks();")) == 1
    page.get_by_role("button", name="Take it in").tap()
    expect(page.locator(".tank-card")).to_have_count(2)
    page.locator("#shelf-done button").tap()
    expect(page.locator(".tank-card")).to_have_count(1)


def test_a_change_that_comes_while_an_answer_is_being_kept_is_painted(page):
    """An answer that is kept paints nothing anew; what the keeper does in that moment does."""
    put(page, LOBBY)
    painted = with_shelf(
        page,
        """const { onEachChange } = await import(at("standings"));
        let times = 0;
        onEachChange(shelf, document.body, () => { times += 1; });
        const kept = shelf.keepStanding("mine", { outputs: {} });
        const removed = shelf.removeTank("mine");
        await Promise.all([kept, removed]);
        await shelf.keepRound({ order: [] });
        return times;""",
    )
    assert painted == 1


@long_run()
def test_the_old_address_leads_to_the_shelf_and_what_was_kept_stands_there(page):
    go(page, "about/")
    kept = [
        {
            "id": "a",
            "tank": "Lobby",
            "calculator": "units",
            "title": "Units",
            "address": "?value=3",
            "when": "2026-01-01T10:00:00.000Z",
            "lines": ["Result: 3"],
        }
    ]
    page.evaluate("(kept) => localStorage.setItem('mulmbook-kept', JSON.stringify(kept))", kept)
    page.goto("my-tanks/")
    expect(page).to_have_url(re.compile("/shelf/$"))
    page.locator("#board-kept summary").tap()
    link = page.locator(".kept a")
    expect(link).to_have_text("Units")
    assert link.get_attribute("href").endswith("calculators/units/?value=3")


@long_run()
@pytest.mark.offline_copy
def test_the_shelf_works_with_no_network_and_sends_nothing(page, context, address):
    page.goto("shelf/")
    wait_for_offline_copy(page)
    context.set_offline(True)
    asked = []
    context.on("request", lambda request: asked.append(request))
    page.reload()
    page.get_by_role("button", name="Try it with four demo tanks").tap()
    expect(page.locator("#board[data-shown=anew]")).to_be_attached()
    page.get_by_role("button", name="Log: Foyer (demo)").tap()
    page.get_by_role("dialog").get_by_role("button", name="Nitrate, NO₃").tap()
    page.get_by_role("dialog").get_by_role("group").get_by_role("button").first.tap()
    expect(page.locator("#shelf-done")).to_contain_text("Foyer")
    page.goto("shelf/tank/#foyer")
    expect(page.locator("#answer figure").first).to_be_visible()
    page.goto("shelf/paper/#foyer")
    expect(page.locator(".paper .code svg")).to_be_visible()
    expect(page.locator(".shelf-stays")).to_have_count(0)
    assert all(one.method == "GET" and not one.post_data for one in asked)
    sent = [one.url.partition("#")[0] for one in asked]  # no browser sends a fragment
    assert all(one.startswith(address) and "foyer" not in one and "?" not in one for one in sent)


PAGES = ["shelf/", "shelf/new/", "shelf/tank/#mine", "shelf/round/", "shelf/paper/#mine"]


@pytest.mark.parametrize("path", share_of(PAGES, 6))
def test_axe_finds_nothing_and_no_page_scrolls_sideways(page, path):
    readings = [reading(value, 40 - 9 * at) for at, value in enumerate((10, 15, 20, 30, 40))]
    put(page, LOBBY, OTHER, entries=readings, chosen="mine")
    go(page, path)
    expect(page.locator(".shelf").first).to_be_visible()
    if path == "shelf/":
        expect(page.locator("#board[data-shown=anew]")).to_be_attached()
    if path.startswith("shelf/paper"):
        expect(page.locator(".paper")).to_be_visible()
    if path.startswith("shelf/tank"):
        expect(page.locator("#answer figure").first).to_be_attached()
        page.evaluate(
            "for (const fold of document.querySelectorAll('#answer details')) fold.open = true"
        )
        expect(page.locator("#answer figure").first).to_be_visible()
        page.locator("#tank-share summary").tap()
        page.get_by_role("button", name="Make the link").tap()
    assert axe_complaints(page) == []
    for width in (320, 390, 1280):
        page.set_viewport_size({"width": width, "height": 844})
        assert page.evaluate("() => document.documentElement.scrollWidth") <= width, width


@long_run()
def test_axe_finds_nothing_on_the_sheet_to_log_on(page):
    put(page, LOBBY, entries=[reading(10, 9)])
    board(page)
    page.get_by_role("button", name="Log: Lobby").tap()
    assert axe_complaints(page) == []
    page.get_by_role("dialog").get_by_role("button", name="Nitrate, NO₃").tap()
    expect(page.locator("#log-value")).to_be_visible()
    assert axe_complaints(page) == []
