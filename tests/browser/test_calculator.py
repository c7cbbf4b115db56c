"""A person works something out: live, in either units, by link, and never loses what was typed."""

import re
from datetime import date

import pytest
from playwright.sync_api import expect

from calculators.core.kept_together import kept_together
from calculators.core.listing import load_all
from calculators.core.paint.answered_rows import answered_rows
from calculators.core.paint.notes import lead, rest
from calculators.core.run import compute
from scripts.records.published import cases
from tests.browser.conftest import example_address, go, show_example, wait_for_answer
from tests.effort import long_run, share_of

EXAMPLES = [(name, case.given) for name in load_all() for case in cases(name)[:1]]


def test_the_worked_example_that_a_page_has_is_not_painted_twice(page):
    page.add_init_script(
        """document.addEventListener("DOMContentLoaded", () => {
        window.stood = document.querySelector("#answer")?.firstElementChild; });"""
    )
    page.goto("calculators/oxygen/")
    wait_for_answer(page)
    assert page.evaluate("() => Boolean(stood) && stood.isConnected")
    page.click("#unit-choice [data-units=us]")
    page.wait_for_function("() => !stood.isConnected")


@pytest.mark.parametrize(("name", "given"), share_of(EXAMPLES, 13))
@pytest.mark.python_alive
def test_the_page_shows_what_the_command_line_computes(page, name, given):
    if name == "surface-cover":
        pytest.skip("its picture comes from a file: see test_photo.py")
    if name in ("standing", "round"):
        pytest.skip("a keeper's tanks never go into an address: see test_shelf_python.py")
    spec = load_all()[name]
    before = date.today()
    go(page, example_address(name, **given))
    wait_for_answer(page)
    dates = {
        field.key: page.locator(f"#in-{field.key}").input_value()
        for field in spec.inputs
        if field.is_date and field.key not in given
    }
    # The page fills in today's date, of before or after a midnight that passed meanwhile.
    assert set(dates.values()) <= {before.isoformat(), date.today().isoformat()}
    expected = compute(name, dates | given)
    for number, row in enumerate(answered_rows(spec, expected.answer)):
        place = page.locator("#rows tr").nth(number)
        expect(place).to_contain_text(row["label"])
        expect(place).to_contain_text(row["value"])
    for number, note in enumerate(lead(spec, expected)):
        expect(page.locator("#lead li").nth(number)).to_contain_text(note.text)
    shown = page.locator("#notes li, #background li").all_text_contents()  # folded ones too
    labels = {lead.calculator: lead.label for lead in spec.leads_to}
    assert sorted(shown) == sorted(
        kept_together(
            " ".join(
                [note.text, *map(labels.get, note.leads), *(link.label for link in note.links)]
            )
        )
        for note in rest(spec, expected)
    )


@pytest.mark.python_alive
def test_unknown_words_in_an_address_are_said_and_the_rest_is_answered(page):
    go(page, "calculators/free-ammonia/?ammonia_mg_l=2&ph=8&temperature_c=25&fbclid=x")
    wait_for_answer(page)
    expect(page.locator("#left-out")).to_have_text(
        "Left out, as this book does not know it: “fbclid”."
    )
    expect(page.locator("#rows")).to_contain_text("act today")
    go(page, "calculators/free-ammonia/?ammonia_mg_l=2&ph=8&temperature_c=25")
    wait_for_answer(page)
    expect(page.locator("#left-out")).to_be_hidden()


@pytest.mark.python_alive
def test_an_unknown_choice_in_an_address_leaves_the_form_at_its_own(page):
    given = "ammonia_mg_l=2&ph=8&temperature_c=25"
    go(page, f"calculators/free-ammonia/?reported_as=gold&{given}")
    wait_for_answer(page)
    expect(page.locator("#left-out")).to_contain_text(
        "What the kit reports: “gold” is not a choice"
    )
    own = "I don't know what my kit counts, assumed"  # with nothing chosen the box would be blank
    expect(page.locator("#in-reported_as option:checked")).to_have_text(own)
    expect(page.locator("#in-ammonia_mg_l")).to_have_value("2")
    expect(page.locator("#rows")).to_contain_text("act today")


@long_run()
@pytest.mark.python_alive
def test_an_answer_that_comes_after_the_keeper_left_changes_nothing(page):
    go(page, "calculators/free-ammonia/?ammonia_mg_l=2&ph=8&temperature_c=25")
    wait_for_answer(page)
    page.locator("#in-ph").fill("8.5")  # asked after a pause, by which time the page is gone
    go(page, "plants/")
    page.evaluate("() => new Promise((done) => setTimeout(done, 500))")
    assert page.url.endswith("/plants/")
    assert page.evaluate("() => history.state?.given ?? null") is None


@long_run()
def test_a_link_carries_a_calculation(page, context):
    go(page, "calculators/free-ammonia/")
    show_example(page)
    page.locator("#in-ph").fill("8,2")
    page.locator("#in-reported_as").select_option("nitrogen")
    for part in ("ph=8.2", "reported_as=nitrogen"):
        expect(page).to_have_url(re.compile(re.escape(part)))
    expect(page.locator("#rows")).to_contain_text("8.27")
    address = page.url
    other = context.new_page()
    other.goto(address)
    wait_for_answer(other)
    expect(other.locator("#in-ph")).to_have_value("8.2")
    expect(other.locator("#in-reported_as")).to_have_value("nitrogen")
    expect(other.locator("#rows")).to_contain_text("8.27")


def test_a_bad_field_says_what_is_allowed_beside_it_and_nothing_is_lost(page):
    go(page, "calculators/free-ammonia/")
    wait_for_answer(page)
    page.locator("#in-ph").fill("82")
    page.locator("#in-temperature_c").fill("warm")
    expect(page.locator("#problem-ph")).to_have_text("82 is out of range; allowed is 4 to 11")
    expect(page.locator("#problem-temperature_c")).to_contain_text("allowed is 0 to 40 °C")
    expect(page.locator("#in-ph")).to_have_attribute("aria-invalid", "true")
    expect(page.locator("#status")).to_contain_text("2 fields need another value")
    page.reload()
    wait_for_loaded(page)
    expect(page.locator("#in-ph")).to_have_value("82")
    expect(page.locator("#in-temperature_c")).to_have_value("warm")
    expect(page.locator("#problem-ph")).to_be_visible()
    page.locator("#in-ph").fill("8.2")
    page.locator("#in-temperature_c").fill("25")
    expect(page.locator("#problem-ph")).to_be_hidden()
    expect(page.locator("#in-ph")).not_to_have_attribute("aria-invalid", "true")


def wait_for_loaded(page):
    expect(page.locator("#after")).to_be_visible()


@pytest.mark.python_alive
def test_units_can_be_us_and_are_remembered(page):
    go(page, "calculators/floaters/")
    expect(page.locator("#in-length_cm")).to_have_attribute("placeholder", "e.g. 80")
    show_example(page)
    page.locator("#in-length_cm").fill("100")
    expect(page.locator("#rows")).to_contain_text("3500")
    page.get_by_role("button", name="US").tap()
    expect(page.locator("#in-length_cm")).to_have_value("39.3701")
    expect(page.locator("#rows")).to_contain_text("543")  # 3,500 cm² in square inches
    expect(
        page.locator(".field", has=page.locator("#in-length_cm")).locator(".unit.in-us")
    ).to_be_visible()
    assert "length_cm=100" in page.url  # the address stays metric
    go(page, "calculators/free-ammonia/")  # the ghost is there at once, before Python is
    expect(page.locator("#in-temperature_c")).to_have_attribute("placeholder", "e.g. 77")
    wait_for_answer(page)
    go(page, "plants/lemna-minor/")
    expect(page.locator(".bars .in-us").first).to_be_visible()
    expect(page.locator(".bars .in-metric").first).to_be_hidden()
    go(page, "calculators/floaters/?length_cm=100")
    wait_for_answer(page)
    expect(page.locator("#in-length_cm")).to_have_value("39.3701")
    page.get_by_role("button", name="Metric").tap()
    expect(page.locator("#in-length_cm")).to_have_value("100")


@long_run()
@pytest.mark.starts_python
def test_the_form_can_be_filled_while_python_loads(page):
    go(page, "calculators/water-change/")
    page.locator("#in-now_mg_l").fill("80")
    wait_for_answer(page)
    expect(page.locator("#in-now_mg_l")).to_have_value("80")
    assert "now_mg_l=80" in page.url


@long_run()
@pytest.mark.starts_python
def test_python_stays_alive_from_page_to_page(page):
    go(page, example_address("free-ammonia"))
    wait_for_answer(page)
    started = []
    page.on("worker", lambda worker: started.append(worker.url))
    page.locator(".doors-below").get_by_text("Work it out").tap()
    expect(page.get_by_role("heading", level=1)).to_have_text("Work it out")
    page.locator(".cards").get_by_text("Trimmings").tap()
    wait_for_answer(page)
    expect(page.get_by_role("heading", level=1)).to_have_text("Trimmings")
    page.go_back()
    page.go_back()
    expect(page.get_by_role("heading", level=1)).to_have_text("Free ammonia")
    wait_for_answer(page)
    page.locator("#in-ph").fill("8.2")
    expect(page.locator("#rows")).to_contain_text("8.27")
    assert started == []


LARGE = re.compile(r"/runtime/(calculators|pyodide|library)[^/]+\.(?:pack|wasm)$")
FURTHER = """(before) => {
    const { value } = document.querySelector("#progress");
    return value > before && value; }"""
MOST_FRAMES = 5_000
A_FRAME = "() => new Promise((done) => requestAnimationFrame(done))"


@long_run()
@pytest.mark.starts_python
def test_a_loading_bar_shows_real_progress(page):
    """Each large file is held until the bar was read, so that no machine is too quick or too slow for it."""
    held = {}
    page.context.route(
        LARGE, lambda route: held.update({LARGE.search(route.request.url)[1]: route})
    )
    go(page, "calculators/units/")
    seen = [0]
    for part in ("library", "pyodide", "calculators"):  # as they are asked for
        for _ in range(MOST_FRAMES):
            if part in held:
                break
            page.evaluate(A_FRAME)
        held[part].continue_()
        seen.append(page.wait_for_function(FURTHER, arg=seen[-1]).json_value())
    wait_for_answer(page)
    assert 0 < seen[1] < seen[2] < 85
    assert page.locator("#progress").evaluate("(bar) => bar.value") == 100


@long_run()
@pytest.mark.starts_python
def test_a_runtime_that_cannot_start_is_said_and_can_be_tried_again(page, watch):
    page.context.route("**/parts.json", lambda route: route.fulfill(status=500, body="no"))
    go(page, "calculators/units/")
    expect(page.locator("#loading")).to_contain_text("could not start")
    expect(page.locator("#rows")).to_contain_text("22.1")  # the worked example stands
    page.context.unroute("**/parts.json")
    page.get_by_role("button", name="Try again").tap()
    wait_for_answer(page)
    watch.complaints.clear()  # the browser reports the 500 itself


@long_run()
def test_a_calculation_is_kept_by_tank_on_this_device(page):
    go(page, example_address("trimmings"))
    wait_for_answer(page)
    page.locator("#in-wet_g").fill("240")
    expect(page).to_have_url(re.compile("wet_g=240"))
    page.locator("#keep-tank").fill("Foyer <240 l>")
    page.get_by_role("button", name="Keep on the shelf").tap()
    expect(page.locator("#done")).to_contain_text("Kept for Foyer <240 l>")
    go(page, "shelf/")
    expect(page.locator("#board-kept summary")).to_have_text("Foyer <240 l> (1)")
    with page.expect_download() as download:
        page.get_by_role("button", name="Save or send a copy").tap()
    saved = download.value.path()
    page.get_by_role("button", name="Remove", exact=True).tap()
    page.locator("#shelf-done button").tap()
    page.get_by_role("button", name="Remove", exact=True).tap()
    expect(page.locator("#board-kept")).to_be_hidden()  # once it is written
    page.reload()
    expect(page.locator("#board-empty")).to_be_visible()
    expect(page.locator("#board-kept")).to_be_hidden()
    page.locator("#copy-read").set_input_files(
        {"name": "x.json", "mimeType": "application/json", "buffer": b"[{}]"}
    )
    expect(page.locator("#copy-said")).to_contain_text("Nothing was changed")
    page.locator("#copy-read").set_input_files(str(saved))
    expect(page.locator("#copy-preview")).to_contain_text("1 taken off here before")
    page.get_by_role("button", name="Take it in").tap()
    page.locator(".kept a").tap()
    wait_for_answer(page)
    expect(page.locator("#in-wet_g")).to_have_value("240")


@long_run()
@pytest.mark.python_alive
def test_series_are_drawn_with_a_sentence_for_a_screen_reader(page):
    go(page, "calculators/floaters/")
    wait_for_answer(page)
    expect(page.get_by_role("img")).to_have_attribute(
        "aria-label", re.compile("Cover: 40 % at day 0")
    )
    expect(page.locator("#plots figcaption")).to_be_visible()


@long_run()
def test_rows_of_a_list_are_added_removed_and_told_when_wrong(page):
    go(page, example_address("stocking"))
    wait_for_answer(page)
    before = page.locator("fieldset.rows > .row").count()
    page.get_by_role("button", name=re.compile("^Add to")).tap()
    expect(page.locator("fieldset.rows > .row")).to_have_count(before + 1)
    expect(page.locator("#still")).to_contain_text("Still needed: Animals")
    row = page.locator("fieldset.rows > .row").last
    row.locator("select").select_option(index=1)
    row.locator("[data-key=count] input").fill("-3")
    row.locator("[data-key=mean_length_mm] input").fill("20")
    expect(row.locator("[data-key=count] .problem")).to_contain_text("out of range")
    row.locator("[data-key=count] input").fill("3")
    expect(page.locator("#status")).to_have_text("Result updated.")
    page.reload()
    wait_for_answer(page)
    expect(page.locator("fieldset.rows > .row")).to_have_count(before + 1)
    page.locator("fieldset.rows > .row").last.get_by_role("button", name="Remove").tap()
    expect(page.locator("fieldset.rows > .row")).to_have_count(before)
    expect(page.locator("#status")).to_have_text("Result updated.")


@long_run()
@pytest.mark.python_alive
def test_upkeep_gives_a_calendar_file(page):
    go(page, "calculators/upkeep/")
    show_example(page)
    with page.expect_download() as download:
        page.get_by_role("button", name="Save: the same as a calendar file").tap()
    text = download.value.path().read_bytes().decode()
    assert text.startswith("BEGIN:VCALENDAR")


@long_run()
@pytest.mark.python_alive
def test_a_wrong_word_or_part_is_told_beside_its_field(page):
    go(page, "calculators/diagnose/")
    wait_for_answer(page)
    fields = page.locator(".field")
    seen = fields.and_(page.locator("[data-key=findings]"))
    seen.locator("input").fill("old-leaves-brwon-drop")
    expect(seen.locator(".problem")).to_contain_text("did you mean old-leaves-brown-drop")
    seen.locator("input").fill("old-leaves-brown-drop")
    ph = fields.and_(page.locator("[data-key='readings.ph']"))
    ph.locator("input").fill("15")
    expect(ph.locator(".problem")).to_contain_text("allowed is 0 to 14")
    ph.locator("input").fill("7")
    expect(page.locator("#status")).to_have_text("Result updated.")
