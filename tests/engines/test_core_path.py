"""The book's core path in Chromium, Firefox and WebKit: a first visit, and then no network."""

import threading

import pytest

from scripts.site.server import make_server
from tests.engines.core_path import STEPS, Visit
from tests.engines.drivers import ENGINES


@pytest.fixture
def server(site):
    """The book on a server of its own, which a step may stop."""
    server = make_server(site, 0)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield server
    server.shutdown()
    server.server_close()


@pytest.fixture(autouse=True)
def asked_for(request):
    """Three browsers with Python in each want a machine for themselves."""
    if not request.config.getoption("--engines"):
        pytest.skip("walked with --engines")


@pytest.mark.parametrize("name", ENGINES)
def test_the_core_path_can_be_walked(name, server, record_property):
    find, start = ENGINES[name]
    program = find()
    if not program:
        pytest.skip(f"{name} is not on this machine: its core path was not walked")
    engine = start(program)

    def unplug():
        server.shutdown()
        server.server_close()

    try:
        visit = Visit(engine, f"http://127.0.0.1:{server.server_address[1]}/", unplug)
        for step in STEPS:
            step(visit)
    finally:
        engine.close()
    record_property("engine", engine.version)
