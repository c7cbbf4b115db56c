"""A site that is served, and a browser that was never there: with a profile of its own on disk."""

import tempfile
from collections.abc import Iterator
from contextlib import contextmanager

from playwright.sync_api import BrowserContext, Playwright

from scripts.benches.browser import ARGUMENTS, PHONE
from scripts.setup.chromium import ensure_chromium


@contextmanager
def browser(playwright: Playwright, profile: str) -> Iterator[BrowserContext]:
    """A browser on a phone's screen, with a profile on disk."""
    context = playwright.chromium.launch_persistent_context(
        profile, executable_path=ensure_chromium(), args=ARGUMENTS, viewport=PHONE, has_touch=True  # type: ignore[arg-type]
    )  # fmt: skip
    yield context
    context.close()


def own_profile() -> tempfile.TemporaryDirectory[str]:
    """A folder for a profile; a browser that has just ended may still write into it."""
    return tempfile.TemporaryDirectory(prefix="profile-", ignore_cleanup_errors=True)
