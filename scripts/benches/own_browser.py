"""A site that is served, and a browser that was never there: with a profile of its own on disk."""

import tempfile
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from playwright.sync_api import BrowserContext, Playwright

from scripts.benches.browser import ARGUMENTS, PHONE
from scripts.setup.chromium import ensure_chromium
from scripts.site.server import make_server


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


@contextmanager
def serving(folder: Path) -> Iterator[str]:
    """The address of a folder that is served."""
    with started(make_server(folder, 0)) as base:
        yield base


@contextmanager
def started(server: Any) -> Iterator[str]:
    """The address of a server while it runs."""
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_address[1]}/"
    server.shutdown()
    server.server_close()
