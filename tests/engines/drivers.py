"""Three engines behind one small face: open a page, run a script in it, end.

Chromium is driven by playwright, Firefox by its makers' own Marionette library, WebKit's GTK build by
Selenium; none of the three libraries drives Debian's builds of all three.
"""

import os
import subprocess
from typing import Any, Protocol

from scripts.setup.chromium import find_chromium
from scripts.setup.engines import WebKit, find_firefox, find_webkit

PATIENCE = 180  # seconds; a loaded machine may start a browser or Python slowly


class Engine(Protocol):
    """A browser with one page open."""

    version: str

    def open(self, address: str) -> None:
        """Load a page by its whole address; raises the driver's own error where none comes."""

    def run(self, body: str, *given: object) -> Any:
        """What the body of an async function returns in the page; ``given`` is its array of arguments."""

    def close(self) -> None:
        """End the browser and all that it started."""


# For the drivers that hand over a callback as the last argument.
BY_CALLBACK = """const given = [...arguments], done = given.pop();
const failed = (wrong) => done({ wrong: String(wrong) });
(async (given) => { %s })(given).then((value) => done({ value }), failed);"""


def value_of(answer: dict[str, Any]) -> Any:
    assert "wrong" not in answer, answer["wrong"]
    return answer.get("value")


class ChromiumEngine:
    """Chromium, as the other browser tests use it."""

    def __init__(self, path: str) -> None:
        from playwright.sync_api import sync_playwright

        self.playwright = sync_playwright().start()
        self.browser = self.playwright.chromium.launch(executable_path=path, args=["--no-sandbox"])
        self.version = f"Chromium {self.browser.version}"
        self.page = self.browser.new_page()
        self.page.set_default_timeout(PATIENCE * 1000)

    def open(self, address: str) -> None:
        self.page.goto(address)

    def run(self, body: str, *given: object) -> Any:
        return self.page.evaluate(f"async (given) => {{ {body} }}", list(given))

    def close(self) -> None:
        self.browser.close()
        self.playwright.stop()


class FirefoxEngine:
    """Firefox without a screen."""

    def __init__(self, path: str) -> None:
        from marionette_driver.marionette import Marionette

        self.marionette = Marionette(
            bin=path, headless=True, startup_timeout=PATIENCE, gecko_log=os.devnull
        )
        self.marionette.start_session()
        self.version = f"Firefox {self.marionette.session_capabilities['browserVersion']}"
        self.marionette.timeout.script = self.marionette.timeout.page_load = PATIENCE

    def open(self, address: str) -> None:
        self.marionette.navigate(address)

    def run(self, body: str, *given: object) -> Any:
        return value_of(
            self.marionette.execute_async_script(
                BY_CALLBACK % body, script_args=list(given), sandbox=None
            )
        )

    def close(self) -> None:
        self.marionette.quit()
        self.marionette.cleanup()


class WebKitEngine:
    """WebKit's GTK build, on a screen in memory."""

    def __init__(self, programs: WebKit) -> None:
        from selenium import webdriver
        from selenium.webdriver.webkitgtk.service import Service

        self.screen = subprocess.Popen(
            [programs.screen, "-displayfd", "1", "-screen", "0", "1280x1024x24"],
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            text=True,
        )
        assert self.screen.stdout
        display = f":{self.screen.stdout.readline().strip()}"
        options = webdriver.WebKitGTKOptions()
        options.binary_location = programs.browser
        options.add_argument("--automation")
        self.driver = webdriver.WebKitGTK(
            options=options,
            service=Service(programs.driver, env={**os.environ, "DISPLAY": display}),
        )
        self.version = f"WebKit {self.driver.capabilities['browserVersion']}"
        self.driver.set_script_timeout(PATIENCE)

    def open(self, address: str) -> None:
        self.driver.get(address)

    def run(self, body: str, *given: object) -> Any:
        return value_of(self.driver.execute_async_script(BY_CALLBACK % body, *given))

    def close(self) -> None:
        self.driver.quit()
        self.screen.terminate()
        self.screen.wait()


# name -> what finds its program, and what starts it
ENGINES = {
    "chromium": (lambda: os.environ.get("CHROMIUM") or find_chromium(), ChromiumEngine),
    "firefox": (find_firefox, FirefoxEngine),
    "webkit": (find_webkit, WebKitEngine),
}
