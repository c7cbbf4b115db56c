"""A person with a phone compares plants: by link, by taps, from the table, with no signal."""

import re

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import wait_for_offline_copy
from tests.effort import long_run, share_of

PAIR = "limnophila-sessiliflora,cabomba-caroliniana"
HEADS = "#beside thead th i"
TWO_LINES_PX = 56
MOST_ELEMENTS_A_ROW = 17  # the row, its name with picture and tick, nine cells


def names(page):
    """The plants that stand side by side."""
    return page.locator(HEADS).all_text_contents()


def column(page, number):
    """What the shown rows of the table sort by, None where it is not known."""
    return page.evaluate(
        """(at) => [...document.querySelectorAll(".plants tbody tr")].filter((row) => !row.hidden)
        .map((row) => row.cells[at].dataset.sorts ?? null)""",
        number,
    )


def column_of(page, key):
    """The number of a column by its key."""
    return page.locator(f".plants thead th[data-key={key}]").evaluate("(head) => head.cellIndex")


def expect_whole(page, slugs):
    """The comparison shows these plants, a drawing each, and every row a cell a plant."""
    expect(page.locator(HEADS)).to_have_count(len(slugs))
    expect(page.locator("#beside svg.drawing")).to_have_count(len(slugs))
    odd = page.evaluate(
        """(count) => [...document.querySelectorAll("#beside tbody:not(.heading) tr")]
        .filter((row) => row.querySelector("td") && row.cells.length !== count).length""",
        len(slugs),
    )
    assert odd == 0


def test_a_link_shows_two_plants_with_their_figures_and_sources(page, library):
    page.goto(f"compare/?plants={PAIR}")
    expect_whole(page, PAIR.split(","))
    assert names(page) == [library.plants[slug].name for slug in PAIR.split(",")]
    beside = page.locator("#beside")
    expect(beside).to_contain_text("1–3 mol/m²/day")
    expect(beside).to_contain_text("7–14 days")
    expect(beside).to_contain_text("Restricted in differs")
    expect(beside).to_contain_text("United States")
    expect(beside).to_contain_text("Leaf differs")
    used = page.locator('#beside a[href^="#source-"]').first.get_attribute("href")
    expect(page.locator(f"#sources-used {used}")).to_have_count(1)
    sideways = "() => document.documentElement.scrollWidth"
    assert page.evaluate(sideways) <= 390
    inside = page.locator("#beside .wide").evaluate("(one) => one.scrollWidth - one.clientWidth")
    assert inside <= 1, "two plants fit a phone without sideways scroll"


@long_run()
def test_rows_that_tell_plants_apart_say_so_in_words(page, library):
    page.goto("compare/?plants=lemna-minor,spirodela-polyrhiza")
    expect_whole(page, ["lemna-minor", "spirodela-polyrhiza"])
    told = page.locator("#beside tbody.apart")
    assert told.count() == page.locator("#beside .differs").count() > 0
    habit = page.locator("#beside tbody", has=page.locator("th", has_text=re.compile("^Habit$")))
    expect(habit.locator(".differs")).to_have_count(0)


@long_run()
def test_taps_build_a_comparison_and_the_address_keeps_it(page):
    page.goto("compare/")
    page.locator("#query").fill("ambula")  # a slip
    page.locator("#offers").get_by_role("button", name="Add Limnophila sessiliflora").tap()
    expect(page.locator(HEADS)).to_have_text(["Limnophila sessiliflora"])
    page.locator("#offers").get_by_role("button", name="Add Cabomba caroliniana").tap()  # offered
    expect_whole(page, PAIR.split(","))
    page.wait_for_url(f"**/compare/?plants={PAIR}")
    page.reload()
    expect_whole(page, PAIR.split(","))
    page.get_by_role("button", name="Remove Limnophila sessiliflora").tap()
    expect(page.locator(HEADS)).to_have_text(["Cabomba caroliniana"])


@long_run()
def test_a_long_name_in_a_button_starts_at_the_left_and_goes_on_there(page):
    page.set_viewport_size({"width": 320, "height": 700})
    page.goto("compare/?plants=hygrophila-difformis,cryptocoryne-crispatula")
    expect(page.locator("#offers button")).not_to_have_count(0)
    page.evaluate("() => { document.documentElement.style.fontSize = '200%'; }")
    starts = page.locator("#offers button i").evaluate_all(
        """(names) => names.map((name) => {
        const range = document.createRange();
        range.selectNodeContents(name);
        return [...range.getClientRects()].map((line) => Math.round(line.left));
    })"""
    )
    several = [lefts for lefts in starts if len(lefts) > 1]
    assert several, "letters of twice the size break a name on a narrow phone"
    assert all(max(lefts) - min(lefts) <= 1 for lefts in several)


@long_run()
def test_the_numbers_of_growth_against_light_stand_apart(page):
    page.goto("plants/growth/")
    crowded = page.locator("svg.growth").evaluate_all(
        """(pictures) => pictures.flatMap((picture) => {
        const boxes = [...picture.querySelectorAll("a text")]
            .map((text) => ({ box: text.getBoundingClientRect(), said: text.textContent }));
        return boxes.flatMap((one, at) => boxes.slice(at + 1).filter((other) =>
            Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left) > 0
            && Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top) > 0)
            .map((other) => `${one.said} on ${other.said}`));
    })"""
    )
    assert crowded == []
    underlined = page.locator("svg.growth a").first.evaluate(
        "(one) => getComputedStyle(one).textDecorationLine"
    )
    assert underlined == "none"


@long_run()
def test_four_are_the_most_and_the_first_stays_in_sight(page):
    slugs = [*PAIR.split(","), "ceratophyllum-demersum", "myriophyllum-mattogrossense"]
    page.goto(f"compare/?plants={','.join([*slugs, 'lemna-minor'])}")
    expect_whole(page, slugs)
    expect(page.locator("#status")).to_contain_text("Four are the most")
    expect(page.locator("#offers button")).to_have_count(0)
    page.locator("#beside .wide").evaluate("(one) => { one.scrollLeft = 400; }")
    first, last = (page.locator("#beside thead th").nth(at).bounding_box() for at in (0, 3))
    assert 0 <= first["x"] < 40
    assert last["x"] + last["width"] <= 391
    assert page.evaluate("() => document.documentElement.scrollWidth") <= 390


@long_run()
def test_a_link_with_nonsense_shows_what_it_can(page):
    page.goto("compare/?plants=no-such-plant,lemna-minor,lemna-minor,__proto__,%3Cb%3E")
    expect(page.locator(HEADS)).to_have_text(["Lemna minor"])
    page.goto("compare/?plants=")
    expect(page.locator("#status")).to_contain_text("Type a name")


@long_run()
def test_a_plants_page_offers_its_look_alikes_first(page):
    page.goto("plants/lemna-minor/")
    page.locator(".compare-with a").first.tap()
    expect_whole(page, ["lemna-minor", "spirodela-polyrhiza"])
    assert names(page)[0] == "Lemna minor"


@long_run()
def test_ticks_in_the_table_lead_to_the_comparison(page):
    page.goto("plants/table/")
    page.locator("#plant-table").get_by_label("Compare Anubias barteri", exact=True).check()
    page.get_by_role("button", name="Compare those ticked").tap()
    expect(page.locator("#picked")).to_contain_text("1 ticked")
    page.get_by_label("Compare Bacopa monnieri").check()
    page.get_by_role("button", name="Compare those ticked").tap()
    expect_whole(page, ["anubias-barteri", "bacopa-monnieri"])


@long_run()
@pytest.mark.parametrize(
    "key",
    share_of(["law", "light", "height", "trim", "doubling", "temperature", "nitrogen"], 7),
)
def test_the_table_sorts_by_figures_both_ways_with_the_unknown_last(page, key, library):
    page.goto("plants/table/")
    head = page.locator(f".plants thead th[data-key={key}]")
    at = column_of(page, key)
    for direction in ("ascending", "descending"):
        head.get_by_role("button").tap()
        expect(head).to_have_attribute("aria-sort", direction)
        expect(page.locator(".plants thead th[aria-sort]")).to_have_count(1)
        found = column(page, at)
        assert len(found) == len(library.plants)
        known = [float(one) for one in found if one is not None]
        assert known == sorted(known, reverse=direction == "descending")
        assert None not in found[: len(known)]


@long_run()
def test_one_doubling_time_is_not_known_and_comes_last(page, library):
    missing = [plant.name for plant in library.plants.values() if not plant.growth.doubling_days]
    assert missing
    page.goto("plants/table/")
    head = page.locator(".plants thead th[data-key=doubling]").get_by_role("button")
    for _ in range(2):
        head.tap()
        last = page.locator(".plants tbody tr").last
        expect(last.locator("a").first).to_have_text(missing[-1])
        expect(last).to_contain_text("not known")


@long_run()
def test_the_table_is_filtered_by_habit_look_and_light(page, library):
    page.goto("plants/table/")
    page.get_by_label("Habit").select_option("floater")
    count = sum(plant.habit == "floater" for plant in library.plants.values())
    expect(page.locator("#status")).to_have_text(f"{count} of {len(library.plants)} plants shown.")
    expect(page.locator(".plants tbody tr:visible")).to_have_count(count)
    page.get_by_label("Light").select_option("weak")
    dim = sum(
        plant.habit == "floater" and plant.needs.dli_mol.low < 1
        for plant in library.offered().values()
    )
    assert 0 < dim < count
    expect(page.locator(".plants tbody tr:visible")).to_have_count(dim)
    page.get_by_label("Look").select_option("carpet")
    expect(page.locator("#status")).to_have_text(f"0 of {len(library.plants)} plants shown.")


@long_run()
def test_the_tables_names_stay_in_sight_while_it_scrolls_inside_the_page(page):
    page.goto("plants/table/")
    expect(
        page.locator(".filters")
    ).to_be_visible()  # the script is there, and moves nothing any more
    page.locator(".wide").evaluate("(one) => { one.scrollLeft = 600; one.scrollTop = 900; }")
    name = page.locator(".plants tbody tr:visible th").nth(10).bounding_box()
    head = page.locator(".plants thead th").first.bounding_box()
    box = page.locator(".wide").bounding_box()
    assert abs(name["x"] - box["x"]) < 3
    assert abs(head["y"] - box["y"]) < 3
    assert page.evaluate("() => document.documentElement.scrollWidth") <= 390


@pytest.fixture
def wide(context):
    """A page on a screen of 1280 by 800 CSS px."""
    page = context.new_page()
    page.set_viewport_size({"width": 1280, "height": 800})
    yield page
    page.close()


def test_a_row_of_the_table_is_two_lines_high_on_a_wide_screen(wide, library):
    wide.goto("plants/table/")
    heights = wide.evaluate(
        """() => [...document.querySelectorAll(".plants tbody tr")].map((row) => row.offsetHeight)"""
    )
    assert len(heights) == len(library.plants)
    assert max(heights) <= TWO_LINES_PX


def test_what_the_table_cuts_or_shortens_is_reachable_whole(wide, library):
    wide.goto("plants/table/")
    cut = wide.evaluate(
        """() => [...document.querySelectorAll(".plants tbody th > :is(a, small)")]
        .filter((one) => one.scrollWidth > one.clientWidth && one.title !== one.textContent)
        .map((one) => one.textContent)"""
    )
    assert cut == []
    row = wide.locator(".plants tbody tr", has=wide.get_by_label("Compare Egeria densa"))
    expect(row.locator("td").last).to_have_text("AU* NZ US*")
    expect(row.locator("td").last).to_have_attribute(
        "title",
        re.compile(r"single states of Australia \(Tasmania\), New Zealand, .* \(Connecticut"),
    )
    for key, word in library.vocabulary["place"].items():
        expect(wide.locator("#places")).to_contain_text(f"{key.upper()} {word['label']}")


@long_run()
def test_a_cell_of_the_table_has_one_text_and_follows_the_units(wide, library):
    wide.goto("plants/table/")
    assert wide.locator(".plants tbody td *").count() == 0
    rows = wide.locator(".plants tbody *").count() / len(library.plants)
    assert rows <= MOST_ELEMENTS_A_ROW
    at = column_of(wide, "height")
    height = wide.locator(".plants tbody tr").first.locator("td").nth(at - 1)
    expect(height).to_have_text(re.compile(r"cm$"))
    sorted_by = column(wide, at)
    wide.evaluate("() => localStorage.setItem('mulmbook-units', JSON.stringify('us'))")
    wide.reload()
    expect(height).to_have_text(re.compile(r"in$"))
    assert column(wide, at) == sorted_by


@long_run()
def test_ticks_and_buttons_are_big_enough_for_a_wet_thumb(page):
    for path in ("plants/table/", f"compare/?plants={PAIR}", "names/", "plants/lemna-minor/"):
        page.goto(path)
        page.wait_for_load_state("networkidle")
        small = page.evaluate(
            """() => [...document.querySelectorAll("main button, main select, .pick, .button, .cards a")]
            .filter((one) => one.offsetParent && one.getBoundingClientRect().height < 43.5)
            .map((one) => one.outerHTML.slice(0, 100))"""
        )
        assert small == [], path


@long_run()
def test_without_any_script_the_table_is_whole_and_names_stand_side_by_side(
    chromium, address, library
):
    context = chromium.new_context(java_script_enabled=False, base_url=address)
    page = context.new_page()
    page.goto("plants/table/")
    expect(page.locator(".plants tbody tr")).to_have_count(len(library.plants))
    first = page.locator(".plants tbody th a").all_text_contents()
    assert first == sorted(first)
    expect(page.locator(".filters")).to_be_hidden()
    page.goto("names/salvinia-natans/")
    expect(page.locator(".beside thead th")).to_have_count(4)
    page.goto("compare/")
    assert "Comparing needs a script" in page.locator("main").inner_html()
    expect(page.get_by_role("link", name="table of all plants").first).to_be_visible()
    context.close()


@long_run()
@pytest.mark.offline_copy
def test_comparing_works_with_the_network_off(page, context):
    page.goto("")
    wait_for_offline_copy(page)
    context.set_offline(True)
    page.goto(f"compare/?plants={PAIR}")
    expect_whole(page, PAIR.split(","))
    page.goto("plants/table/")
    page.locator(".plants thead th[data-key=light]").get_by_role("button").tap()
    expect(page.locator(".plants thead th[data-key=light]")).to_have_attribute(
        "aria-sort", "ascending"
    )
    page.goto("names/ambulia/")
    expect(page.get_by_role("heading", level=1)).to_contain_text("Ambulia")
    page.goto("plants/growth/")
    page.locator(".growth a").first.tap()
    page.locator("#read-here a").first.tap()
    expect(page.get_by_role("heading", level=2).first).to_have_text("What it needs")


@long_run()
def test_the_address_keeps_how_the_table_stands(page):
    """Filters, order and ticks survive a reload, the way back, and a link opened elsewhere."""
    page.goto("plants/table/")
    page.locator("[data-filter=habit]").select_option("floater")
    head = page.locator(".plants thead th[data-key=light]")
    for _ in range(2):
        head.get_by_role("button").tap()
    page.get_by_label("Compare Lemna trisulca").check()
    shown = page.locator("#status").text_content()
    order = column(page, column_of(page, "light"))
    page.wait_for_url("**/plants/table/?habit=floater&sort=light+down&plants=lemna-trisulca")
    page.reload()
    expect(page.locator("#status")).to_have_text(shown)
    expect(head).to_have_attribute("aria-sort", "descending")
    assert column(page, column_of(page, "light")) == order
    expect(page.locator("#picked")).to_contain_text("1 ticked")
    page.locator(".plants tbody tr:not([hidden]) a").first.tap()
    page.wait_for_url(lambda address: "/table/" not in address)
    page.go_back()
    expect(page.locator("#status")).to_have_text(shown)
    expect(head).to_have_attribute("aria-sort", "descending")
    page.goto("plants/table/?habit=no-such&sort=__proto__&plants=%3Cb%3E")
    expect(page.locator("#status")).to_have_text(re.compile(r"^(\d+) of \1 plants"))
