"""A person with a phone looks things up."""

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import go, wait_for_answer, wait_for_offline_copy
from tests.effort import long_run, share_of


def test_one_tap_opens_each_door(page):
    doors = (
        ("Something looks wrong", "Something looks wrong"), ("Look up a plant", "Plants"),
        ("Work it out", "Work it out"), ("The shelf", "The shelf"),
    )  # fmt: skip
    for door, title in share_of(doors, 2):
        page.goto("")
        page.locator(".doors").get_by_text(door).tap()
        expect(page.get_by_role("heading", level=1)).to_have_text(title)


def test_animals_in_danger_is_one_tap_from_anywhere_and_its_calculator_two(page):
    page.goto("plants/lemna-minor/")
    page.locator("header .danger").tap()
    expect(page.get_by_role("heading", level=1)).to_have_text("Animals in danger")
    page.get_by_role("link", name="how much of it is toxic").tap()
    expect(page.get_by_role("heading", level=1)).to_have_text("Free ammonia")


@pytest.mark.parametrize(
    ("query", "found"),
    share_of(
        [
            ("Limnophila sessiliflora", "Limnophila sessiliflora"),
            ("ambulia", "Limnophila sessiliflora"),
            ("Hottonia sessiliflora", "Limnophila sessiliflora"),
            ("limnofila sessiliflora", "Limnophila sessiliflora"),
            ("ambulla", "Limnophila sessiliflora"),
            ("hygrophila polysprema", "Hygrophila polysperma"),
            ("java fren", "Leptochilus pteropus"),
            ("Microsorum pteropus", "Leptochilus pteropus"),
            ("pearlwed", "Micranthemum glomeratum"),
            ("frogbit", "Hydrocharis laevigata"),
            ("ROTALA INDICA", "Rotala rotundifolia"),
            ("salvinia", "Salvinia auriculata"),
            ("amonia", "Ammonia in a settled tank with animals"),
            ("floaters", "Floaters"),
            (
                "union concern",
                "European Union: Invasive alien species of Union concern (the Union list)",
            ),
        ],
        8,
    ),
)
def test_search_finds_by_any_name_and_with_a_slip(page, query, found):
    page.goto("search/")
    page.locator("#query").fill(query)
    first = page.locator("#found li b").first
    expect(first).to_have_text(found)


@long_run()
def test_a_slip_in_a_genus_lists_its_species(page):
    page.goto("search/?q=limnofila")
    expect(page.locator("#found")).to_contain_text("Limnophila sessiliflora")
    expect(page.locator("#found")).to_contain_text("Limnophila aquatica")


@long_run()
@pytest.mark.parametrize("left", ["search/?q=ambulia", "compare/"])
def test_a_page_that_is_left_before_its_index_is_there_is_let_go(page, watch, left):
    page.goto("calculators/units/")
    wait_for_answer(page)
    page.evaluate("() => { window.python_is_alive = true; }")
    held = []
    page.route("**/assets/search.json", lambda route: held.append(route))
    go(page, left)
    if left == "compare/":
        page.locator("#query").fill("ambulia")
    go(page, "about/")
    assert held
    for route in held:
        route.continue_()
    opened = """async () => {
        const root = new URL(document.body.dataset.root, location);
        const { openIndex } = await import(new URL("assets/finder.js", root).href);
        await openIndex(root);
        await new Promise((done) => setTimeout(done)); // what waited for it has had its turn
    }"""
    page.evaluate(opened)
    expect(page.get_by_role("heading", level=1)).to_have_text("About the book")
    assert watch.complaints == []


@long_run()
def test_search_with_no_match_says_so(page):
    page.goto("search/?q=zzzzqqqq")
    expect(page.locator("#status")).to_contain_text("Nothing found")


def test_the_home_pages_field_leads_to_the_search(page):
    page.goto("")
    page.locator("#query").fill("ambulia")
    page.get_by_role("button", name="Find").tap()
    expect(page.locator("#found li b").first).to_have_text("Limnophila sessiliflora")


def test_a_path_that_is_not_there_says_so(page, watch):
    reply = page.goto("no-such-page/")
    assert reply.status == 404
    expect(page.get_by_role("heading", level=1)).to_have_text("Page not found")
    watch.complaints.clear()  # the browser reports the 404 itself


def test_without_any_script_the_book_can_be_read(chromium, address):
    context = chromium.new_context(java_script_enabled=False, base_url=address)
    page = context.new_page()
    page.goto("calculators/free-ammonia/")
    expect(page.locator("#rows")).to_contain_text("2.22")
    page.goto("plants/")
    page.get_by_role("link", name="Lemna minor").click()
    expect(page.get_by_role("heading", level=1)).to_contain_text("Lemna minor")
    context.close()


@pytest.mark.offline_copy
def test_a_page_of_each_kind_opens_and_answers_with_the_network_off(page, context):
    page.goto("plants/")
    wait_for_offline_copy(page)
    context.set_offline(True)
    for path, title in (
        ("plants/salvinia-auriculata/", "Salvinia auriculata"),
        ("problems/ammonia-emergency/", "Ammonia in a settled tank with animals"),
        ("shelf/", "The shelf"),
    ):
        page.goto(path)
        expect(page.get_by_role("heading", level=1)).to_contain_text(title)
    page.goto("calculators/free-ammonia/?ammonia_mg_l=2&ph=8&temperature_c=25")
    expect(page.locator("#rows")).to_contain_text("act today")


@long_run()
@pytest.mark.offline_copy
def test_everything_works_with_the_network_off(page, context, watch):
    page.goto("")
    wait_for_offline_copy(page)
    context.set_offline(True)
    page.goto("plants/salvinia-auriculata/")
    expect(page.get_by_role("heading", level=1)).to_contain_text("Salvinia auriculata")
    page.reload()
    expect(page.get_by_role("heading", level=1)).to_contain_text("Salvinia auriculata")
    page.goto("search/?q=salvina")
    expect(page.locator("#found li b").first).to_have_text("Salvinia auriculata")
    page.goto("calculators/water-change/?now_mg_l=50")
    expect(page.locator("#still")).to_contain_text("Still needed")
    page.reload()
    expect(page.locator("#still")).to_contain_text("Still needed")
    expect(page.locator("#in-now_mg_l")).to_have_value("50")
    for door, title in (("problems/", "Something looks wrong"), ("shelf/", "The shelf")):
        page.goto(door)
        expect(page.get_by_role("heading", level=1)).to_have_text(title)
    page.goto("compare/?plants=lemna-minor,spirodela-polyrhiza")
    expect(page.locator("#beside table")).to_be_visible()
    page.goto("plants/lemna-minor")  # no slash at the end
    expect(page.get_by_role("heading", level=1)).to_contain_text("Lemna minor")
    page.goto("no-such-page/")
    expect(page.get_by_role("heading", level=1)).to_have_text("Page not found")
    watch.complaints.clear()  # the browser reports the 404 itself
