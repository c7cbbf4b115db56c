"""A browser of a test's own, which can be killed, and its processes."""

import os
from contextlib import contextmanager

from scripts.setup.chromium import find_chromium
from tests.browser.conftest import ARGUMENTS, PATIENCE


@contextmanager
def own_browser(chromium, folder, address):
    """A browser of the test's own, with its store in ``folder``: what ends it does not end the others'."""
    made = chromium.browser_type.launch_persistent_context(
        folder,
        executable_path=os.environ.get("CHROMIUM") or find_chromium(),
        args=ARGUMENTS,
        base_url=address,
    )
    made.set_default_timeout(PATIENCE)
    yield made
    made.close()


def processes(context, kind):
    """The ids of the processes of one kind of the test's own browser."""
    session = context.browser.new_browser_cdp_session()
    listed = session.send("SystemInfo.getProcessInfo")["processInfo"]
    session.detach()
    return [one["id"] for one in listed if one["type"] == kind]
