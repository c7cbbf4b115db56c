"""Pictures of the built site, to look at: each type of page as it stands on its first screen."""

from pathlib import Path

from playwright.sync_api import Browser, sync_playwright

from scripts.setup.chromium import ensure_chromium
from scripts.setup.paths import BUILD, SITE
from scripts.setup.say import say, stop
from scripts.site.page_types import PAGE_TYPES, come_to_rest
from scripts.site.server import serving

FOLDER = BUILD / "pictures"
SCREENS = {"phone": (390, 844), "desktop": (1280, 800)}  # CSS px
SCHEMES = ("light", "dark")
PICTURE_PATIENCE = 120_000  # ms; Python may start slowly on a loaded machine
NO_SERVICE_WORKER = "delete Navigator.prototype.serviceWorker"
STILL = ["--no-sandbox", "--disable-gpu", "--hide-scrollbars"]


def take_pictures(words: list[str]) -> None:
    """Write ``build/pictures/<page>-<screen>-<scheme>.png`` of each page that a word names, or of all."""
    if not (SITE / "index.html").exists():
        stop("there is no site yet: run python3 scripts/serve.py --build-only first")
    chosen = {name: path for name, path in PAGE_TYPES.items() if names(name, words)}
    if not chosen:
        stop(f"no page is named by {' '.join(words)}; there are {', '.join(PAGE_TYPES)}")
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
    page.locator(".tank-card").first.wait_for()
    for name, path in pages.items():
        page.goto(path)
        come_to_rest(page)
        for scheme in SCHEMES:
            page.emulate_media(color_scheme="dark" if scheme == "dark" else "light")
            page.screenshot(path=picture(name, screen, scheme))
    context.close()


def picture(name: str, screen: str, scheme: str) -> Path:
    """The file of one picture."""
    return FOLDER / f"{name}-{screen}-{scheme}.png"
