"""The pages' policy: nothing of the book breaks it, on any kind of page, and it stops what it should."""

import urllib.request

import pytest
from playwright.sync_api import expect

from scripts.setup.paths import ROOT
from scripts.site.server import HEADERS
from tests.browser.conftest import show_example, wait_for_answer
from tests.effort import share_of

PAGES = (
    "", "about/", "danger/", "sources/", "nitrogen-model/", "search/?q=fern", "404.html", "my-tanks/",
    "plants/", "plants/lemna-minor/", "plants/table/", "plants/growth/", "names/", "names/duckweed/",
    "compare/?plants=lemna-minor,pistia-stratiotes", "animals/", "animals/danio-rerio/",
    "problems/", "problems/all/", "problems/key/", "problems/symptoms/", "problems/heat/",
    "rules/", "rules/us-federal-noxious-weeds/", "rules/us/", "guides/", "guides/power-cuts/",
    "calculators/", "calculators/surface-cover/", "calculators/pick/", "calculators/upkeep/",
    "shelf/", "shelf/new/", "shelf/round/", "shelf/paper/", "shelf/tank/",
)  # fmt: skip
LISTEN = """
window.violations = [];
document.addEventListener("securitypolicyviolation", (one) => {
  window.violations.push(`${one.effectiveDirective} ${one.blockedURI} ${one.sample}`);
});
"""
# Attempts, and what of the policy stops each: the name of what is thrown, or the directive.
ATTEMPTS = {
    "document.querySelector('main').innerHTML = '<b>x</b>'": "TypeError",
    "new DOMParser().parseFromString('<b>x</b>', 'text/html')": "TypeError",
    "document.createElement('script').src = 'assets/page.js'": "TypeError",
    "document.createElement('script').text = '1'": "TypeError",
    "new Worker('/assets/page.js', { type: 'module' })": "TypeError",
    "trustedTypes.createPolicy('another', {})": "TypeError",
    "trustedTypes.createPolicy('mulmbook', {})": "TypeError",
    "await fetch('https://elsewhere.invalid/')": "connect-src",
    "document.querySelector('main').setAttribute('style', 'position: fixed')": "style-src-attr",
    "new Image().src = 'data:image/gif;base64,R0lGODlhAQABAAAAACw='": "img-src",
    "document.body.append(Object.assign(document.createElement('iframe'), { src: '/about/' }))": "frame-src",
    "document.createElement('object').data = '/about/'": "TypeError",
}
TRY = """
async (code) => {
  const told = new Promise((done) => {
    const tell = (one) => done(one.effectiveDirective);
    document.addEventListener("securitypolicyviolation", tell, { once: true });
    setTimeout(() => done("nothing"), 3000);
  });
  try {
    ATTEMPT;
  } catch (wrong) {
    if (!code.includes("fetch")) return wrong.name; // that throws a TypeError whatever stops it
  }
  return told;
}
"""


@pytest.fixture
def listening(page):
    page.add_init_script(LISTEN)
    return page


def test_no_page_of_any_kind_breaks_the_policy(listening):
    """In everyday use some kinds: what breaks it is a complaint in every other test of a page, too."""
    broken = {}
    for path in share_of(PAGES, 6):
        answer = listening.goto(path)
        assert answer.status == 200, path
        if path == "my-tanks/":
            listening.wait_for_url("**/shelf/")  # the old address leads there by itself
        if listening.locator("#calculator").count():
            wait_for_answer(listening)
        if found := listening.evaluate("() => window.violations"):
            broken[path] = found
    assert broken == {}


def test_a_live_answer_and_a_swapped_page_keep_to_the_policy(listening):
    listening.goto("calculators/free-ammonia/")
    show_example(listening)
    expect(listening.locator("#rows")).to_contain_text("mg")
    listening.locator("footer a", has_text="Guides").click()
    expect(listening.locator("h1")).to_have_text("Guides")
    assert listening.evaluate("() => window.violations") == []


@pytest.mark.parametrize("code", share_of([*ATTEMPTS], 4))
def test_the_policy_stops(code, page, watch):
    page.goto("about/")
    assert page.evaluate(TRY.replace("ATTEMPT", code), code) == ATTEMPTS[code]
    watch.complaints.clear()  # what the browser says of it is what was asked for
    watch.hosts = {host for host in watch.hosts if "invalid" not in host}


def test_every_file_comes_with_the_headers_that_the_recipe_names(address):
    recipe = (ROOT / "README.md").read_text(encoding="utf-8")
    for path in ("", "assets/calculator-worker.js", "service-worker.js", "assets/page.js", "none/"):
        try:
            reply = urllib.request.urlopen(address + path)
        except urllib.error.HTTPError as missing:
            reply = missing
        for name, value in HEADERS.items():
            assert reply.headers[name] == value, path
            assert f"{name}: {value}" in recipe
    assert "frame-ancestors 'none'" in HEADERS["Content-Security-Policy"]
