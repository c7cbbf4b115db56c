"""While serve.py watches, an open page shows what was written anew; the policy lets it listen."""

import threading

import pytest

from scripts.site.watch_server import News, make_watch_server
from tests.effort import long_run


@pytest.fixture
def news(site):
    return News()


@pytest.fixture
def watched(site, news):
    """The address of a watching server on the built site."""
    with make_watch_server(site, 0, news) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield f"http://127.0.0.1:{server.server_address[1]}/"
        server.shutdown()


@pytest.fixture
def reader(chromium, watched):
    """A page at the plants, which listens."""
    context = chromium.new_context(base_url=watched)
    page = context.new_page()
    complaints = []
    page.on("console", lambda message: complaints.append(message.text))
    with page.expect_response("**/watch-news*"):
        page.goto("plants/")
    page.evaluate("() => { window.before = true; }")
    yield page
    context.close()
    assert complaints == []


@long_run()
def test_the_open_page_is_loaded_again_when_it_was_written(reader, news):
    assert "plants/" in news.open_pages()
    news.tell(pages=["about/"])
    news.tell(style=True)
    reader.wait_for_function(
        "() => document.querySelector('link[rel=stylesheet]').href.includes('?')"
    )
    assert reader.evaluate(
        "() => window.before"
    )  # neither another page nor the style loads it anew
    news.tell(pages=["plants/"])
    reader.wait_for_function("() => !window.before")
