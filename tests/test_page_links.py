"""A link in prose that leads nowhere stops the build with the page and the link."""

import pytest

from scripts.setup import kept
from scripts.site.page_content import page_content
from scripts.site.page_links import broken_links, links_of

PAGE = "---\ntitle: T\n---\n# T {{ #top }}\n\n{}\n"
FILES = frozenset({"assets/drawing.svg"})


@pytest.fixture(autouse=True)
def nothing_kept(tmp_path, monkeypatch):
    monkeypatch.setattr(kept, "FOLDER", tmp_path)


def told(prose):
    texts = {
        "guides/one.md": PAGE.format(prose),
        "guides/two.md": PAGE.format('## Part { #part }\n\n<p id="raw">x</p>'),
        "index.md": PAGE.format("Home"),
    }
    pages = {name: links_of(page_content(name, text)) for name, text in texts.items()}
    return list(broken_links(pages, FILES))


@pytest.mark.parametrize(
    "link",
    [
        "two.md",
        "two.md#part",
        "two.md#raw",
        "../index.md",
        "#top",
        "../assets/drawing.svg",
        "../calculators/free-ammonia/",
        "https://example.org/gone.md",
        "mailto:a@example.org",
        "two.md?a=1#part",
    ],
)
def test_a_link_that_leads_somewhere_is_passed(link):
    assert told(f"[words]({link})") == []


@pytest.mark.parametrize(
    ("link", "words"),
    [
        ("three.md", "there is no file guides/three.md"),
        ("../two.md", "there is no file two.md"),
        ("two.md#gone", "guides/two.md has no place gone"),
        ("#gone", "guides/one.md has no place gone"),
        ("../assets/none.svg", "there is no file assets/none.svg"),
        ("/guides/two.md", "counts from the root of the host"),
    ],
)
def test_a_link_that_leads_nowhere_is_told(link, words):
    (line,) = told(f"[words]({link})")
    assert line.startswith(f"guides/one.md: {link}")
    assert words in line


def test_a_picture_is_a_link_too():
    assert "assets/none.svg" in told("![a drawing](../assets/none.svg)")[0]
