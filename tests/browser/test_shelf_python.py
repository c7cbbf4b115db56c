"""What the shelf asks of Python, in the browser's own: the same answers as here."""

import json

import pytest
from playwright.sync_api import expect

from calculators.bridge import answer
from scripts.pages.shelf.shelf_downloads import DEMO_DAY
from tests.browser.conftest import go, show_example
from tests.effort import long_run, share_of
from tests.near import assert_near
from tests.shelf_files import BAD_FILES

TODAY = DEMO_DAY.isoformat()
ASK = """async (question) => {
    const root = new URL(document.body.dataset.root, location).href;
    const { ask } = await import(new URL("assets/runtime.js", root).href);
    return ask(question); }"""


@pytest.fixture
def demo(page, address):
    return page.request.get(f"{address}assets/shelf/demo.json").json()


def questions(demo):
    """One of each message, and both calculators, of a demo tank."""
    tank = demo["tanks"][0]
    entries = [entry for entry in demo["entries"] if entry["tank"] == tank["id"]]
    of_tank = {"tank": tank, "entries": entries, "today": TODAY}
    days = {"from": "2026-12-20", "to": "2027-01-02", "spoon_g": 0.4}
    yield {"calculator": "standing", "given": of_tank, "own": True}
    yield {"calculator": "standing", "given": of_tank, "own": True, "units": "us"}
    whole = {"tanks": demo["tanks"], "entries": demo["entries"], "today": TODAY}
    yield {"calculator": "round", "given": whole, "own": True}
    yield {"message": "fill", "calculator": "nitrogen-forecast", **of_tank}
    yield {"message": "redate", "file": demo, "today": "2027-05-01"}
    yield {"message": "paper", "kind": "card", **of_tank}
    yield {"message": "paper", "kind": "holiday", **of_tank, **days}
    yield {"message": "check-shelf-file", "text": json.dumps(demo)}
    for name in ("newer version", "nested 100,000 deep", "NaN", "a note of a megabyte"):
        yield {"message": "check-shelf-file", "text": BAD_FILES[name][0]}


@long_run()
@pytest.mark.python_alive
def test_the_browsers_python_answers_the_shelf_as_ours_does(page, demo):
    for question in questions(demo):
        here = json.loads(answer(json.dumps(question)))
        there = page.evaluate(ASK, question)
        assert_near(there, here, "answer", relative=1e-6, absolute=1e-9)


@long_run()
@pytest.mark.python_alive
@pytest.mark.parametrize("name", share_of(["standing", "round"], 2))
def test_the_forms_example_is_answered_and_stays_off_the_address(page, name):
    go(page, f"calculators/{name}/")
    show_example(page)
    expect(page.locator("#lead li").first).to_be_visible()
    assert "foyer" not in page.url.lower()
    assert page.evaluate("() => document.documentElement.scrollWidth") <= 390
