"""A few hundred hostile messages to Python alive in the page; scripts/bench.py hostile asks ten thousand."""

import json
from random import Random

import pytest
from playwright.sync_api import expect

from calculators.core.listing import load_all
from scripts.benches.hostile_addresses import MOST_ROWS, STEPPING, hostile
from tests.browser.conftest import go, wait_for_answer
from tests.effort import how_many, long_run, share_of

ASK = """
async (messages) => {
  const root = new URL(document.body.dataset.root, location);
  const { ask } = await import(new URL("assets/runtime.js", root).href);
  const failed = [];
  for (const message of messages) {
    const wrong = await ask(JSON.parse(message)).then(() => null, String);
    if (wrong) failed.push([message.slice(0, 500), wrong]);
  }
  return failed;
}
"""
ADDRESSES = (
    "calculators/free-ammonia/?__proto__=1&constructor=2&toString=3&ph=8&utm_source=x",
    "calculators/free-ammonia/?ph=%00%ff&ammonia_mg_l=" + "9" * 5_000,
    "calculators/trend/?readings=" + "[" * 400,
    'calculators/trend/?readings=[{"toString":1}]',
    'calculators/stocking/?animals=[{"__proto__":{"a":1}},{"name":{"toString":1}},null,7]',
    "calculators/surface-cover/?width_px=20000&height_px=20000&pixels=AAAA",
    "problems/?findings=" + "zz," * 500 + "&fbclid=x",
)


@long_run()
@pytest.mark.python_alive
def test_python_in_the_page_answers_hostile_messages(page):
    go(page, "calculators/units/")
    dice = Random(11)
    names = [name for name in load_all() if name not in STEPPING]
    messages = [json.dumps(hostile(dice, names)) for _ in range(how_many(1_000))]
    messages = share_of(messages, 4)
    assert page.evaluate(ASK, messages) == []


@pytest.mark.python_alive
@pytest.mark.parametrize("path", share_of(ADDRESSES, 3), ids=lambda path: path[:40])
def test_a_hostile_address_leaves_the_page_alive(page, path):
    go(page, path)
    if path.startswith("calculators"):
        wait_for_answer(page)
        expect(page.locator("#answer, #still").first).to_be_attached()
        assert page.locator(".row").count() <= MOST_ROWS
    assert page.evaluate("() => ({}).a ?? Object.prototype.a ?? null") is None
    go(page, "calculators/free-ammonia/?ammonia_mg_l=2&ph=8&temperature_c=25")
    wait_for_answer(page)
    expect(page.locator("#rows")).to_contain_text("act today")
