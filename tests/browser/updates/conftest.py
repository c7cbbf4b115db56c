"""A small book on a server of its own, which a test can publish anew, and a reader who has a copy of it."""

import shutil
import threading

import pytest

from scripts.site.server import Handler, make_server
from tests.browser.conftest import wait_for_offline_copy
from tests.browser.updates.published import list_anew

KEPT_PAGES = ("lemna-minor", "units")
STAND_IN = 1_000  # octets of each file of the browser's Python, which hardly a test here starts


@pytest.fixture(scope="module")
def few_pages(site, tmp_path_factory):
    """The site with few of the pages of each door; the whole of it is copied in test_look_up.py."""
    folder = tmp_path_factory.mktemp("book") / "site"
    shutil.copytree(site, folder)
    for door in ("plants", "problems", "animals", "names", "rules", "guides", "calculators"):
        for page in (folder / door).iterdir():
            if page.is_dir() and page.name not in KEPT_PAGES:
                shutil.rmtree(page)
    for file in (folder / "runtime").iterdir():
        if file.suffix != ".json":
            file.write_bytes(file.read_bytes()[:STAND_IN])
    for file in (folder / "data").rglob("*"):  # never kept on a device
        if file.is_file() and file.suffix != ".html":
            file.unlink()
    list_anew(folder)
    return folder


@pytest.fixture
def book_with_python(book, site):
    """The same with the whole of the browser's Python."""
    folder, _ = book
    shutil.copytree(site / "runtime", folder / "runtime", dirs_exist_ok=True)
    list_anew(folder)
    return book


@pytest.fixture
def book(few_pages, tmp_path):
    """A copy of the book that can be changed, on a server of its own."""
    folder = tmp_path / "site"
    shutil.copytree(few_pages, folder)
    server = make_server(folder, 0)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield folder, f"http://127.0.0.1:{server.server_address[1]}/"
    server.shutdown()


@pytest.fixture
def drip(monkeypatch):
    """Names a file that from now on comes octet by octet and never ends; None ends that."""
    dripping = {"file": None, "over": threading.Event()}
    plain = Handler.copyfile

    def copyfile(self, source, output):
        if dripping["file"] is None or not str(source.name).endswith(dripping["file"]):
            return plain(self, source, output)
        while not dripping["over"].wait(0.2):
            output.write(source.read(1))
            output.flush()

    def choose(name):
        if name is None:
            dripping["over"].set()
        dripping["file"] = name

    monkeypatch.setattr(Handler, "copyfile", copyfile)
    yield choose
    choose(None)


@pytest.fixture
def reader(chromium, book):
    context = chromium.new_context(base_url=book[1])
    context.set_default_timeout(60_000)
    page = context.new_page()
    page.goto("plants/")
    wait_for_offline_copy(page)
    yield page
    context.close()
