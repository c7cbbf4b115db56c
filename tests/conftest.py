"""What several tests share: the records, the site built once, and how thorough a run is."""

import gc
import os
import subprocess
import sys

import pytest

from scripts.records.load import Library
from scripts.setup import cores
from scripts.setup.paths import ROOT
from tests.effort import THOROUGH, load_profile
from tests.one_site import built_site
from tests.own_records import own_records

FIRST_WORKER = "gw0"


def pytest_addoption(parser):
    parser.addoption(
        "--engines", action="store_true", help="walk the core path in Chromium, Firefox and WebKit"
    )
    parser.addoption(
        "--thorough", action="store_true", help="draw as many examples as there are, not a sample"
    )


def pytest_configure(config):
    if config.getoption("--thorough"):
        os.environ[THOROUGH] = "1"
    load_profile()


def pytest_collection_modifyitems(items):
    """What needs the site comes last, so that the site is built beside the tests that do not."""
    items.sort(key=lambda item: (of_browser(item), needs_site(item)))


def pytest_collection_finish(session):
    """One worker starts the build at once, in a process of its own; who needs the site waits for it.

    What was imported stays to the end, so that the search for unused memory need not go through it.
    """
    gc.freeze()
    worker = os.environ.get("PYTEST_XDIST_WORKER")
    if worker == FIRST_WORKER and any(map(needs_site, session.items)):
        subprocess.Popen(
            [sys.executable, "-m", "tests.one_site"],
            cwd=ROOT,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,  # a build that fails is made again, and told, by who needs it
        )


def needs_site(item):
    return "site" in item.fixturenames


def of_browser(item):
    return "chromium" in item.fixturenames


@pytest.fixture(scope="session")
def library() -> Library:
    return own_records()


@pytest.fixture(scope="session")
def site():
    """The site, built afresh for this run of the tests."""
    return built_site()


@pytest.fixture
def two_cores(monkeypatch):
    """As on a machine of two cores, from a process that a fork would not cut in two."""
    if cores.FORK not in cores.all_ways():
        pytest.skip("this machine does not fork")
    monkeypatch.setattr(cores, "cores", lambda: 2)
    monkeypatch.setattr(cores, "can_fork", lambda: True)
