"""A tank fills the forms, and says so; what is changed there stays there unless it is saved to the tank."""

import re

from playwright.sync_api import expect

from tests.browser.conftest import go, wait_for_answer
from tests.browser.shelf_page import open_page, with_shelf
from tests.browser.shelf_tanks import LOBBY, OTHER, Taps, board, logged, put, reading
from tests.effort import long_run


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
def test_a_form_follows_what_another_tab_changes_and_keeps_what_was_typed(page, context):
    put(page, LOBBY, chosen="mine", entries=[reading(10, 1)])
    go(page, "calculators/water-change/")
    wait_for_answer(page)
    expect(page.locator("#in-volume_l")).to_have_value("96")
    expect(page.locator("#in-now_mg_l")).to_have_value("10")
    page.locator("#in-now_mg_l").fill("12")
    other = open_page(context)
    with_shelf(
        other,
        "await shelf.saveTank({ ...(await shelf.tank('mine')), net_l: 54 }); await shelf.log(given);",
        reading(30, 0),
    )
    expect(page.locator("#in-volume_l")).to_have_value("54")
    expect(page.locator("[data-key=volume_l] .from-tank")).to_have_text("from Lobby")
    expect(page).to_have_url(re.compile("volume_l=54"))  # and is answered with it
    expect(page.locator("#in-now_mg_l")).to_have_value("12")  # the keeper's own
    with_shelf(other, "await shelf.choose('none');")  # the head of all tabs stands at no tank
    expect(page.locator("#in-volume_l")).to_have_value("")
    expect(page.locator("#in-now_mg_l")).to_have_value("12")


@long_run()
def test_a_form_follows_what_is_logged_from_its_own_head(page):
    put(page, LOBBY, chosen="mine", entries=[reading(7.2, 1, "ph")])
    go(page, "calculators/free-ammonia/")
    wait_for_answer(page)
    expect(page.locator("#in-ph")).to_have_value("7.2")
    logged(page, **reading(8.1, 0, "ph"))
    expect(page.locator("#in-ph")).to_have_value("8.1")
    expect(page.locator("[data-key=ph] .from-tank")).to_have_text("Lobby, read today")


@long_run()
def test_a_form_that_comes_back_with_the_history_follows_its_tank(page):
    put(page, LOBBY, chosen="mine")
    go(page, "calculators/dosing/")
    wait_for_answer(page)
    expect(page.locator("#in-volume_l")).to_have_value("96")
    page.goto("about/")
    with_shelf(page, "await shelf.saveTank({ ...(await shelf.tank('mine')), net_l: 54 });")
    page.go_back()
    expect(page.locator("#in-volume_l")).to_have_value("54")


def in_us_units(page, path, field):
    """A page in customary units, filled from the tank."""
    page.evaluate("""() => localStorage.setItem('mulmbook-units', '"us"')""")
    page.goto(path)
    expect(page.locator(field)).to_have_value("75.2")


@long_run()
def test_in_customary_units_a_tank_that_comes_later_changes_no_figure_that_stands_there(page):
    """24 °C is 75.2 °F and 20 °C is 68 °F; what was typed in customary units is not read as metric."""
    put(page, LOBBY, {**OTHER, "temperature_c": 20, "ph": 7}, chosen="mine")
    in_us_units(page, "calculators/free-ammonia/", "#in-temperature_c")
    page.locator("#in-temperature_c").fill("80")
    page.locator("#stand-at-tank").select_option("other")
    expect(page.locator("#in-ph")).to_have_value("7")
    expect(page).to_have_url(re.compile("ph=7&"))
    expect(page.locator("#in-temperature_c")).to_have_value("80")
    page.locator("#in-temperature_c").fill("")
    page.locator("#stand-at-tank").select_option("mine")
    expect(page.locator("#in-temperature_c")).to_have_value("75.2")
    with_shelf(page, "await shelf.saveTank({ ...(await shelf.tank('mine')), temperature_c: 20 });")
    expect(page.locator("#in-temperature_c")).to_have_value("68")


@long_run()
def test_the_diagnosis_follows_its_tank_in_the_units_that_it_shows(page):
    put(page, {**LOBBY, "ph": None}, {**OTHER, "temperature_c": 20}, chosen="mine")
    logged(page, **reading(24, 1, "temperature_c"))
    field = '#diagnosis-fields [data-key="readings.temperature_c"] input'
    in_us_units(page, "problems/", field)
    page.locator("#stand-at-tank").select_option("other")
    expect(page.locator(field)).to_have_value("")
    page.locator("#diagnosis-more summary").tap()
    page.locator('#diagnosis-fields [data-key="readings.gh_dh"] input').fill("9")
    page.locator("#stand-at-tank").select_option("mine")
    expect(page.locator(field)).to_have_value("75.2")
    logged(page, **reading(20, 0, "temperature_c"))
    expect(page.locator(field)).to_have_value("68")
    expect(page.locator('#diagnosis-fields [data-key="readings.gh_dh"] input')).to_have_value("9")


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


@long_run()
def test_a_store_that_never_opens_keeps_no_answer_away(page):
    page.add_init_script(
        """const { open } = IDBFactory.prototype;
        IDBFactory.prototype.open = function (...given) {
          return Object.assign(open.apply(this, given), { addEventListener() {} });
        };"""
    )
    go(page, "calculators/dosing/")
    wait_for_answer(page)
    expect(page.locator("#in-volume_l")).to_have_value("")


def test_at_a_tank_its_figures_come_before_those_of_a_page_of_the_book(page):
    put(page, LOBBY, entries=[reading(70, 0)], chosen="mine")
    go(page, "problems/high-nitrate/")
    page.locator("#main a[href*='calculators/water-change/']").first.tap()
    wait_for_answer(page)
    expect(page.locator("[data-key=volume_l] .from-tank")).to_have_text("from Lobby")
    expect(page.locator("#in-volume_l")).to_have_value("96")
    expect(page.locator("#in-now_mg_l")).to_have_value("70")
    expect(page.locator("#borrowed")).to_be_hidden()
    assert "from-book" not in page.url
