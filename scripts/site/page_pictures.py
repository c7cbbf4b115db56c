"""Pictures of the built site, to look at: each type of page as it stands on its first screen."""

from pathlib import Path

from playwright.sync_api import Browser, Page, sync_playwright

from scripts.setup.chromium import ensure_chromium
from scripts.setup.paths import BUILD, SITE
from scripts.setup.say import say, stop
from scripts.site.server import serving

FOLDER = BUILD / "pictures"
SCREENS = {"phone": (390, 844), "desktop": (1280, 800)}  # CSS px
SCHEMES = ("light", "dark")
PICTURE_PATIENCE = 120_000  # ms; Python may start slowly on a loaded machine
NO_SERVICE_WORKER = "delete Navigator.prototype.serviceWorker"
STILL = ["--no-sandbox", "--disable-gpu", "--hide-scrollbars"]
PAGES = {
    "home": "",
    "plants": "plants/",
    "plant": "plants/hygrophila-difformis/",
    "table": "plants/table/",
    "growth": "plants/growth/",
    "compare": "compare/?plants=hygrophila-difformis,ceratophyllum-demersum",
    "name": "names/amazon-sword/",
    "search": "search/?q=ambulia",
    "problems": "problems/",
    "problem": "problems/ammonia-emergency/",
    "danger": "danger/",
    "calculators": "calculators/",
    "calculator": "calculators/stocking/",
    "forecast": "calculators/nitrogen-forecast/",
    "animal": "animals/paracheirodon-innesi/",
    "guide": "guides/cuttings/",
    "law": "rules/",
    "about": "about/",
    "board": "shelf/",
    "tank": "shelf/tank/",  # the first of the demo tanks
    "new-tank": "shelf/new/",
    "round": "shelf/round/",
    "paper": "shelf/paper/",
    "picker": "calculators/pick/",
    "dosing": "calculators/dosing/",
    "identify": "identify/",
    "diagnosis": "problems/symptoms/",
    "names": "names/",
    "animals": "animals/",
    "sources": "sources/",
    "missing": "nowhere/",
}


def take_pictures(words: list[str]) -> None:
    """Write ``build/pictures/<page>-<screen>-<scheme>.png`` of each page that a word names, or of all."""
    if not (SITE / "index.html").exists():
        stop("there is no site yet: run python3 scripts/serve.py --build-only first")
    chosen = {name: path for name, path in PAGES.items() if names(name, words)}
    if not chosen:
        stop(f"no page is named by {' '.join(words)}; there are {', '.join(PAGES)}")
    FOLDER.mkdir(parents=True, exist_ok=True)
    with serving(SITE) as address, sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=ensure_chromium(), args=STILL)
        for screen in SCREENS:
            on_screen(browser, address, screen, chosen)
        browser.close()
    say(f"{len(chosen) * len(SCREENS) * len(SCHEMES)} pictures in {FOLDER}")


def names(page: str, words: list[str]) -> bool:
    """Whether one of the words is in the page's name; no words name every page."""
    return not words or any(word in page for word in words)


def on_screen(browser: Browser, address: str, screen: str, pages: dict[str, str]) -> None:
    """Take the pictures of one screen, all in one visit, with the demo tanks on the shelf."""
    width, height = SCREENS[screen]
    context = browser.new_context(
        base_url=address, viewport={"width": width, "height": height}, has_touch=screen == "phone"
    )
    context.set_default_timeout(PICTURE_PATIENCE)
    context.add_init_script(NO_SERVICE_WORKER)
    page = context.new_page()
    page.goto("shelf/")
    page.locator("#demo-load").click()
    tank = page.locator(".tank-card h2 a").first.get_attribute("href") or ""
    for name, path in pages.items():
        page.goto(tank if name == "tank" else path)
        come_to_rest(page)
        for scheme in SCHEMES:
            page.emulate_media(color_scheme="dark" if scheme == "dark" else "light")
            page.screenshot(path=picture(name, screen, scheme))
    context.close()


def come_to_rest(page: Page) -> None:
    """Until nothing is asked for any more, and a calculator has answered."""
    if page.locator("#calculator").count():
        page.locator("#calculator[data-answered]").wait_for(state="attached")
    page.wait_for_load_state("networkidle")


def picture(name: str, screen: str, scheme: str) -> Path:
    """The file of one picture."""
    return FOLDER / f"{name}-{screen}-{scheme}.png"
