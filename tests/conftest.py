"""What several tests share: the records, and the site built once."""

import pytest

from scripts.build import build
from scripts.records.load import Library, load
from scripts.setup.paths import BUILD


@pytest.fixture(scope="session")
def library() -> Library:
    return load()


@pytest.fixture(scope="session")
def site():
    """The site, built afresh for the tests."""
    folder = BUILD / "test-site"
    build(folder)
    return folder
