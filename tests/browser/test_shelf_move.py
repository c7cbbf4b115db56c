"""What older versions of the book kept in localStorage moves to the shelf, and nothing of it is lost."""

import json

import pytest

from tests.browser.shelf_page import at_book, open_page, with_shelf
from tests.effort import long_run, share_of

CALCULATION = {
    "id": "one", "tank": "Foyer", "calculator": "units", "title": "Units", "address": "?value=1",
    "when": "2026-01-02T03:04:05.000Z", "lines": ["1 litre"],
}  # fmt: skip
DIAGNOSIS = {**CALCULATION, "id": "two", "calculator": "diagnose", "page": "problems/"}
LOOK = """
return {
  kept: await shelf.kept(), units: await shelf.setting("units"), plants: await shelf.setting("plants"),
  aside: shelf.setAside().map((one) => [one.from, one.text]), troubles: shelf.troubles(),
  old: { ...localStorage },
};
"""


@pytest.fixture
def page(page):
    return at_book(page)


def moved(page, **old):
    """What the shelf holds after it was opened on these old values (texts), and once more on a new page."""
    fill = "(old) => { for (const [name, text] of Object.entries(old)) localStorage.setItem(name, text); }"
    page.evaluate(fill, {f"mulmbook-{name}": text for name, text in old.items()})
    page.reload()  # every page opens the shelf, and moves what it finds
    # Nothing that is moved is a tank; a page of another test may have said so of its own a moment ago.
    page.wait_for_function("() => localStorage.getItem('mulmbook-has-tanks') === 'no'")
    first = with_shelf(page, LOOK)
    page.reload()
    assert with_shelf(page, LOOK) == first
    return first


def without_time(kept):
    return [{key: one[key] for key in one if key != "changed"} for one in kept]


def test_everything_moves_and_the_old_list_goes_only_then(page):
    seen = moved(
        page,
        kept=json.dumps([CALCULATION, DIAGNOSIS]),
        units='"us"',
        plants='["rotala-rotundifolia"]',
    )
    assert without_time(seen["kept"]) == [CALCULATION, DIAGNOSIS]
    assert (seen["units"], seen["plants"]) == ("us", ["rotala-rotundifolia"])
    assert (seen["aside"], seen["troubles"]) == ([], [])
    # Units and plants are also read before the shelf can be opened, and whether there are tanks.
    assert set(seen["old"]) == {"mulmbook-units", "mulmbook-plants", "mulmbook-has-tanks"}


def test_two_of_one_id_both_move(page):
    kept = moved(page, kept=json.dumps([CALCULATION, {**CALCULATION, "title": "Other"}]))["kept"]
    assert [one["title"] for one in kept] == ["Units", "Other"]
    assert kept[0]["id"] != kept[1]["id"]


@long_run()
def test_what_was_taken_away_does_not_come_back_where_the_move_was_cut_short(page):
    text = json.dumps([CALCULATION])
    moved(page, kept=text)
    with_shelf(page, "await shelf.unkeep('one');")
    page.reload()
    assert moved(page, kept=text)["kept"] == []  # as if the old value had stayed


@long_run()
def test_no_undo_takes_back_what_was_moved(page):
    moved(page, kept=json.dumps([CALCULATION]))
    assert with_shelf(page, "return shelf.undo();") is None


@long_run()
@pytest.mark.parametrize(
    "text",
    share_of(
        ["", "{", "null", "7", '"text"', '{"id": "one"}', '[{"id": "one"', "\ufeff[]", "[" * 9_000],
        5,
    ),
)
def test_a_list_that_cannot_be_read_is_set_aside_as_it_was(page, text):
    seen = moved(page, kept=text)
    assert seen["kept"] == []
    assert seen["aside"] == [["mulmbook-kept", text]]
    assert "set aside" in seen["troubles"][0]
    assert set(seen["old"]) <= {"mulmbook-has-tanks"}


@long_run()
@pytest.mark.parametrize(
    "spoilt",
    share_of([
        None, 5, [], {}, {**CALCULATION, "id": 5}, {**CALCULATION, "id": ""},
        {**CALCULATION, "lines": "1"},
        {**CALCULATION, "when": "soon"}, {**CALCULATION, "calculator": "../x"},
        {**CALCULATION, "page": "//evil"},
    ], 3),
)  # fmt: skip
def test_one_that_cannot_be_read_is_set_aside_and_the_others_move(page, spoilt):
    seen = moved(page, kept=json.dumps([spoilt, DIAGNOSIS]))
    assert without_time(seen["kept"]) == [DIAGNOSIS]
    assert [json.loads(text) for _, text in seen["aside"]] == [spoilt]


@long_run()
def test_spoilt_units_and_plants_are_set_aside_too(page):
    seen = moved(page, units='"imperial"', plants="[1]")
    assert (seen["units"], seen["plants"]) == (None, None)
    assert sorted(seen["aside"]) == [["mulmbook-plants", "[1]"], ["mulmbook-units", '"imperial"']]


@long_run()
def test_where_the_shelf_has_no_room_the_old_list_stays(page):
    full = """IDBObjectStore.prototype.add = function () {
        this.transaction.abort(); throw new DOMException("", "QuotaExceededError"); };"""
    old = json.dumps(json.dumps([CALCULATION]))
    # Every page opens the shelf at once, so there must be no room from the page's first moment.
    page.add_init_script(f"{full} localStorage.setItem('mulmbook-kept', {old});")
    page.reload()
    seen = with_shelf(page, LOOK)
    assert (seen["kept"], seen["aside"]) == ([], [])
    assert "stays where it is" in seen["troubles"][0]
    assert json.loads(seen["old"]["mulmbook-kept"]) == [CALCULATION]
    page.close()
    with_room = open_page(page.context)
    assert without_time(with_shelf(with_room, LOOK)["kept"]) == [CALCULATION]
