"""The letters of headings: all that headings of the book need, small, with their licence."""

import json
import re
from html import unescape

import pytest
from fontTools.ttLib import TTFont

from scripts.setup.paths import LOCKS
from scripts.setup.say import Missing
from scripts.site import fonts

MOST = 15_000  # octets, of both
HEADING = re.compile(r"<h([1-3])\b[^>]*>(.*?)</h\1>", re.DOTALL)
ITALIC = re.compile(r"<(i|em)>(.*?)</\1>", re.DOTALL)


@pytest.fixture(scope="module")
def letters(site):
    """The characters that each font can set, by its file."""
    paths = {name: site / "assets" / "fonts" / name for name in fonts.FONTS}
    assert sum(path.stat().st_size for path in paths.values()) <= MOST
    return {name: set(TTFont(path).getBestCmap()) for name, path in paths.items()}


@pytest.fixture(scope="module")
def headings(site):
    pages = [path.read_text(encoding="utf-8") for path in site.rglob("*.html")]
    found = [text for page in pages for _, text in HEADING.findall(page)]
    assert len(found) > 1000
    return found


def plain(text):
    return unescape(re.sub(r"<svg.*?</svg>|<[^>]+>", "", text, flags=re.DOTALL))


def missing(texts, letters):
    return {letter for text in texts for letter in plain(text) if ord(letter) not in letters} - {
        "\n"
    }


def test_every_heading_of_the_book_can_be_set(headings, letters):
    assert missing(headings, letters["headings.woff2"]) == set()


def test_every_name_in_italics_can_be_set(headings, letters):
    names = [name for text in headings for _, name in ITALIC.findall(text)]
    assert len(names) > 180
    assert missing(names, letters["names.woff2"]) == set()


def test_the_licence_stands_beside_them_and_is_open(site):
    text = (site / "assets" / "fonts" / fonts.LICENCE).read_text(encoding="utf-8")
    assert "SIL Open Font License, Version 1.1" in text
    about = (site / "about" / "index.html").read_text(encoding="utf-8")
    assert fonts.LICENCE in about
    lock = json.loads((LOCKS / "npm" / "package-lock.json").read_text(encoding="utf-8"))
    entry = lock["packages"][f"node_modules/{fonts.FAMILY}"]
    (row,) = (row for row in about.split("<tr>") if "Crimson Pro" in row)
    assert f"<td>{entry['version']}</td>" in row
    assert entry["license"] in row


def test_a_package_with_other_files_is_said(monkeypatch, tmp_path):
    monkeypatch.setattr(fonts, "FONTS", {"headings.woff2": ("files/none.woff2", "a")})
    with pytest.raises(Missing, match="look at the package's files"):
        fonts.write_fonts(tmp_path)
