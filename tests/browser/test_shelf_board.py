"""The board's first cards stand before the log is read, and never say more than the log would."""

from datetime import UTC, datetime, timedelta

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import go
from tests.browser.shelf_page import in_page, with_shelf
from tests.browser.shelf_tanks import LOBBY, OTHER, board, logged, put, reading, without_python
from tests.effort import long_run, share_of

CHANGED = {**reading(20, 9, None), "kind": "change"}  # two days late by the tank's own plan
CALM = {"verdict": "calm", "sentence": "Calm: no reading harms.", "due": []}
ADD_UNSEEN = """
    const now = new Date().toISOString();
    const values = { tank: "mine", kind: "reading", what: "nitrite_mg_n_l", value: 5, at: now };
    const one = { op: "entry", key: "unseen", id: "unseen", action: "unseen", at: now, v: 1, values };
    await raw("readwrite", (operations) => operations.add(one));
"""
READ_FRONT = 'return (await import(at("front"))).readFront();'


# The store is asked for the whole log, and nobody hears its answer.
NEVER_READ = """
    const whole = IDBObjectStore.prototype.getAll;
    IDBObjectStore.prototype.getAll = function (...given) {
      const asked = whole.apply(this, given);
      if (this.name === "operations") asked.addEventListener = () => {};
      return asked;
    };
"""


def before_the_log(context):
    """A page to which the log never comes, and in which Python does not start."""
    made = without_python(context)
    made.add_init_script(NEVER_READ)
    return made


def keep_front(page, days_ago=0, outputs=CALM):
    """Two tanks on the shelf, and the board's cards of both as they were so many days ago."""
    put(page, LOBBY, OTHER)
    made = (datetime.now(UTC) - timedelta(days=days_ago)).isoformat().replace("+00:00", "Z")
    with_shelf(
        page,
        """const tanks = (await shelf.tanks()).reverse();
        const cards = tanks.map((tank) => ({ tank, standing: given }));
        await shelf.keepFront(cards, { minutes: 42, operations: shelf.operations() });""",
        {"outputs": outputs, "made": made},
    )


def test_where_no_tank_stands_the_page_says_so_before_the_log_is_read(context):
    page = before_the_log(context)
    page.goto("shelf/")
    expect(page.locator("#board-empty p").first).to_be_visible()
    expect(page.locator("#demo-load")).to_be_hidden()  # a tap on it would do nothing yet


@long_run()
def test_the_cards_of_the_last_board_stand_before_the_log_is_read(page, context):
    put(page, LOBBY, {**OTHER, "demo": True}, entries=[reading(5, 1), CHANGED])
    board(page, "anew")
    cards = page.locator(".tank-card").all_inner_texts()
    with_shelf(
        page,
        """const { readFront } = await import(at("front"));
        await until(async () => (await readFront()) !== null);""",
    )
    go(page, "about/")
    other = before_the_log(context)
    other.goto("shelf/")
    expect(other.locator("#board[data-shown=kept] .tank-card")).to_have_count(2)
    assert other.locator(".tank-card").all_inner_texts() == cards
    expect(other.locator("#board-empty")).to_be_hidden()
    expect(other.locator("#board-week")).to_contain_text("2 tanks, about")
    assert "min" in other.locator(".due", has_text="Due").first.inner_text()
    other.close()


@long_run()
def test_cards_of_another_log_are_not_shown(page, context):
    keep_front(page)
    in_page(page, ADD_UNSEEN)  # as a version of the book does that knows of no such cards
    assert in_page(page, READ_FRONT) is None
    other = without_python(context)
    other.goto("shelf/")
    expect(other.locator('.tank-card[data-tank="mine"]')).to_be_visible()
    expect(other.locator(".stands-sign", has_text="Calm")).to_have_count(0)
    other.close()


def test_cards_are_read_where_the_log_is_as_long_as_they_say(page):
    keep_front(page)
    front = in_page(page, READ_FRONT)
    assert [one["tank"]["name"] for one in front["cards"]] == ["Stairs", "Lobby"]
    assert front["minutes"] == 42


@long_run()
@pytest.mark.parametrize(
    ("outputs", "sign", "words"),
    share_of(
        [
            (CALM, "Not known", "Something changed since this was worked out."),
            (
                {"verdict": "watch", "sentence": "Nitrate of 90 mg/L.", "due": []},
                "Watch",
                "Nitrate of 90 mg/L. Something changed since this was worked out.",
            ),
            (
                {"verdict": "act", "sentence": "Nitrite of 5 mg N/L.", "due": []},
                "Act now",
                "Nitrite of 5 mg N/L.",
            ),
        ],
        2,
    ),
)
def test_what_is_logged_overtakes_the_card_at_once(page, context, outputs, sign, words):
    keep_front(page, outputs=outputs)
    with_shelf(page, "await shelf.log(given);", reading(5, 0, "nitrite_mg_n_l"))
    other = before_the_log(context)
    other.goto("shelf/")
    mine = other.locator('.tank-card[data-tank="mine"]')
    expect(mine.locator(".stands-sign")).to_have_text(sign)
    expect(mine.locator(".stands")).to_have_text(f"{sign} {words}")
    untouched = other.locator('.tank-card[data-tank="other"] .stands')
    expect(untouched).not_to_contain_text("Something changed")
    other.close()


@pytest.mark.parametrize(("days_ago", "sign"), share_of([(3, "Not known"), (1, "Calm")], 2))
def test_a_calm_of_some_days_ago_is_not_shown_as_calm(page, context, days_ago, sign):
    """Readings grow old, and soil that is young asks for its test, with nothing being logged."""
    keep_front(page, days_ago)
    other = before_the_log(context)
    other.goto("shelf/")
    expect(other.locator(".stands-sign").first).to_have_text(sign)
    if sign != "Calm":
        expect(other.locator(".stands").first).to_contain_text("It was calm on")
    other.close()


@long_run()
def test_a_card_that_says_the_same_stays_in_place_under_the_finger(page):
    put(page, LOBBY, OTHER, entries=[reading(5, 1)])
    board(page, "anew")
    page.evaluate("() => { document.querySelector('.tank-card').touched = true; }")
    with_shelf(page, "await shelf.saveSetting('handful_g', 40);")  # paints the board anew
    page.wait_for_function("() => document.querySelector('#board[data-shown=anew]')")
    assert page.evaluate("() => document.querySelector('.tank-card').touched") is True


MANY_PLANTS = ["rotala-rotundifolia", "anubias-barteri", "lemna-minor", "egeria-densa"]
A_LINE = 25.5  # CSS px, of the card's text
HEIGHTS = """(cards) => cards.map((card) => {
    const drawn = card.querySelector(".card-plants");
    const whole = card.offsetHeight;
    drawn.hidden = true;
    const without = card.offsetHeight;
    drawn.hidden = false;
    return whole - without;
})"""


@long_run()
def test_a_card_shows_its_first_plants_from_one_file_before_the_log_is_read(page, context):
    rows = [{"plant": slug, "wet_g": 20} for slug in MANY_PLANTS]
    put(page, {**LOBBY, "plants": rows}, {**OTHER, "plants": rows[:1]}, entries=[CHANGED])
    made = datetime.now(UTC).isoformat().replace("+00:00", "Z")
    spark = {"label": "Nitrate", "unit": "mg/L", "x": [0, 1], "y": [5, 9]}
    with_shelf(
        page,
        """const cards = (await shelf.tanks()).map((tank) => ({ tank, standing: given }));
        await shelf.keepFront(cards, { minutes: 42, operations: shelf.operations() });""",
        {"outputs": CALM, "made": made, "spark": spark},
    )
    other = before_the_log(context)
    asked = []
    other.on("request", lambda one: asked.append(one.url.split("#")[0]))
    other.goto("shelf/")
    mine = other.locator('.tank-card[data-tank="mine"] .card-plants')
    expect(mine).to_have_text("+1")
    expect(mine).to_have_attribute(
        "aria-label", "Plants: Rotala rotundifolia, Anubias barteri, Lemna minor and 1 more"
    )
    drawn = [one.get_attribute("href").split("#")[1] for one in mine.locator("use").all()]
    assert drawn == MANY_PLANTS[:3]
    expect(other.locator('.tank-card[data-tank="other"] use')).to_have_count(1)
    assert sum(url.endswith("thumbnails.svg") for url in asked) <= 1
    grown = other.locator(".tank-card").evaluate_all(HEIGHTS)
    assert len(grown) == 2
    assert max(grown) <= A_LINE
    other.close()


@long_run()
def test_a_card_without_plants_has_no_room_for_them(page, context):
    put(page, OTHER)
    other = without_python(context)
    other.goto("shelf/")
    expect(other.locator(".tank-card")).to_have_count(1)
    expect(other.locator(".card-plants")).to_have_count(0)
    other.close()


@long_run()
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


@long_run()
def test_a_reading_of_acid_water_keeps_its_small_p_on_the_card(page):
    put(page, LOBBY)
    logged(page, tank="mine", kind="reading", what="ph", value=4.4)
    board(page, "anew")
    expect(page.locator(".stands")).to_contain_text("pH of 4.4, read ")


@long_run()
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
