"""The shelf shows the units that the keeper chose; what it holds is metric whatever is shown."""

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import go
from tests.browser.shelf_page import with_shelf
from tests.browser.shelf_tanks import LOBBY, board, entries_of, put
from tests.effort import long_run

# NIST SP 811, appendix B.8: both are exact, or as good as
US_GALLON_L = 3.785412
OUNCE_G = 28.34952
LOG = [
    {"tank": "mine", "kind": "reading", "what": "temperature_c", "value": 25},
    {"tank": "mine", "kind": "top-up", "value": 10},
    {"tank": "mine", "kind": "trim", "value": 50, "what": None},
]


@pytest.fixture
def page(page):
    """A page whose device forgets the units that a test chose."""
    yield page
    page.evaluate("() => localStorage.removeItem('mulmbook-units')")


def at_tank(page, units="us"):
    """The page of the keeper's tank, with its form open."""
    put(page, LOBBY, entries=LOG)
    go(page, "shelf/tank/#mine")
    expect(page.locator("#tank-entries li")).to_have_count(3)
    page.locator(f"#shelf-units [data-units={units}]").tap()
    page.locator("#tank-edit").tap()
    return page


def tank_of(page):
    """The tank as the shelf holds it."""
    return with_shelf(page, "return shelf.tank('mine');")


def test_a_tank_and_its_log_are_shown_in_the_units_chosen_and_nothing_kept_changes(page):
    at_tank(page)
    before = tank_of(page)
    field = page.locator("#tank-form [data-path=net_l]")
    expect(field.locator("input")).to_have_value(f"{96 / US_GALLON_L:.2f}")
    expect(field.locator(".unit")).to_have_text("US gal")
    expect(page.locator("#tank-form [data-path=temperature_c] input")).to_have_value("75.2")
    expect(page.locator("#tank-form [data-path=length_cm] input")).to_have_value(
        "31.5"
    )  # 80 / 2.54
    expect(page.locator("#tank-form [data-path=ph] input")).to_have_value("7.2")
    expect(page.locator("#tank-plants li").first).to_contain_text(f"{50 / OUNCE_G:.3f} oz wet")
    lines = page.locator("#tank-entries")
    for words in ("77 °F", f"{10 / US_GALLON_L:.3f} US gal", f"{50 / OUNCE_G:.3f} oz"):
        expect(lines).to_contain_text(words)
    page.locator("#shelf-units [data-units=metric]").tap()
    expect(field.locator("input")).to_have_value("96")
    expect(lines).to_contain_text("25 °C")
    assert tank_of(page) == before
    assert [one["value"] for one in entries_of(page)] == [25, 10, 50]


@long_run()
def test_what_is_typed_in_customary_units_is_held_in_metric_ones(page):
    at_tank(page)
    field = page.locator("#tank-form [data-path=net_l]")
    field.locator("input").fill("30000")
    field.locator("input").blur()
    expect(field.locator(".problem")).to_have_text(
        "Water in the tank must be 0.02642 to 26420 US gal."
    )
    assert tank_of(page)["net_l"] == 96
    field.locator("input").fill("30")
    field.locator("input").blur()
    expect(page.locator("#shelf-done")).to_contain_text("Saved to the tank.")
    assert tank_of(page)["net_l"] == pytest.approx(30 * US_GALLON_L, rel=1e-6)
    page.locator("#shelf-done button").tap()  # in the way of the next button
    expect(page.locator("#shelf-done")).to_have_text("Undone.")
    page.locator("#tank-form").get_by_role("button", name="More: Rotala rotundifolia").tap()
    expect(page.locator("#shelf-done")).to_contain_text("Saved to the tank.")
    held = {row["plant"]: row["wet_g"] for row in tank_of(page)["plants"]}
    # a half ounce more than is shown, to the four figures that are shown
    assert held["rotala-rotundifolia"] == pytest.approx(50 + OUNCE_G / 2, abs=0.01)


@long_run()
def test_the_highest_figure_that_is_allowed_can_be_typed_as_it_is_said(page):
    at_tank(page)
    field = page.locator("#tank-form [data-path=net_l]")
    field.locator("input").fill("26420")
    field.locator("input").blur()
    expect(page.locator("#shelf-done")).to_contain_text("Saved to the tank.")
    assert tank_of(page)["net_l"] == 100_000  # never past the limit of the file


@long_run()
def test_an_entry_is_logged_in_the_units_chosen_and_a_handful_stays_what_it_weighs(page):
    at_tank(page)
    sheet = page.get_by_role("dialog")
    page.locator("#tank-log").tap()
    sheet.get_by_role("button", name="Topped up").tap()
    expect(sheet).to_contain_text("Another value, US gal")
    sheet.locator("#log-value").fill("2")
    sheet.get_by_role("button", name="Save", exact=True).tap()
    expect(page.locator("#shelf-done")).to_contain_text("2 US gal")
    assert entries_of(page)[-1]["value"] == pytest.approx(2 * US_GALLON_L, abs=1e-5)
    page.locator("#tank-log").tap()
    sheet.get_by_role("button", name="Trimmed").tap()
    sheet.get_by_role("button", name=f"{40 / OUNCE_G:.3f} oz", exact=True).tap()
    sheet.get_by_role("button", name="2 handfuls").tap()
    expect(page.locator("#shelf-done")).to_contain_text("2 handfuls")
    assert entries_of(page)[-1]["value"] == 80


@long_run()
def test_a_first_thermometer_reads_in_the_units_chosen_and_a_chosen_kit_in_its_own(page):
    at_tank(page)
    sheet = page.get_by_role("dialog")
    page.locator("#tank-log").tap()
    sheet.get_by_role("button", name="Temperature").tap()
    expect(sheet.locator(".kit > summary")).to_contain_text("degrees Fahrenheit")
    sheet.locator("#log-value").fill("77")
    sheet.get_by_role("button", name="Save", exact=True).tap()
    expect(page.locator("#shelf-done")).to_contain_text("77 degrees Fahrenheit")
    assert entries_of(page)[-1]["value"] == pytest.approx(25, abs=1e-5)  # (77 - 32) x 5 / 9
    page.locator("#tank-log").tap()
    sheet.get_by_role("button", name="Temperature").tap()
    sheet.locator(".kit > summary").tap()
    sheet.get_by_role("button", name="degrees Celsius").tap()
    sheet.locator("#log-value").fill("24")
    sheet.get_by_role("button", name="Save", exact=True).tap()
    expect(page.locator("#shelf-done")).to_contain_text("24 degrees Celsius")
    assert entries_of(page)[-1]["value"] == 24


@long_run()
def test_a_new_tank_is_offered_the_waters_of_common_tanks_in_the_units_chosen(page):
    board(page)
    go(page, "shelf/new/")
    page.locator("#tank-name").fill("Window sill")
    page.locator("#minute-animals button").first.tap()
    page.locator("#shelf-units [data-units=us]").tap()
    page.locator("#minute-size").get_by_role("button", name="20 US gal").tap()
    expect(page.locator("#minute-animals button").first).to_have_attribute("aria-pressed", "true")
    page.get_by_role("button", name="Put it on the shelf").tap()
    expect(page.locator(".tank-card h2")).to_have_text("Window sill")
    (tank,) = with_shelf(page, "return shelf.tanks();")
    assert tank["net_l"] == pytest.approx(20 * US_GALLON_L, rel=1e-6)
    assert len(tank["animals"]) == 1
