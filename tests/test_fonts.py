"""The letters of headings: all that headings of the book need, small, with their licence."""

import re
from html import unescape

import pytest
from fontTools.ttLib import TTFont

from scripts.setup.say import Missing
from scripts.site import fonts

MOST = 9_000  # octets
HEADING = re.compile(r"<h([1-3])\b[^>]*>(.*?)</h\1>", re.DOTALL)


@pytest.fixture(scope="module")
def font(site):
    path = site / "assets" / "fonts" / fonts.SERVED
    assert path.stat().st_size <= MOST
    return TTFont(path)


def test_every_heading_of_the_book_can_be_set(site, font):
    letters = set(font.getBestCmap())
    pages = [path.read_text(encoding="utf-8") for path in site.rglob("*.html")]
    headings = [
        unescape(re.sub(r"<svg.*?</svg>|<[^>]+>", "", text, flags=re.DOTALL))
        for page in pages
        for _, text in HEADING.findall(page)
    ]
    assert len(headings) > 1000
    missing = {letter for text in headings for letter in text if ord(letter) not in letters}
    assert {letter for letter in missing if not letter.isspace()} == set()


def test_the_licence_stands_beside_them_and_is_open(site):
    text = (site / "assets" / "fonts" / fonts.LICENCE).read_text(encoding="utf-8")
    assert "SIL Open Font License, Version 1.1" in text
    about = (site / "about" / "index.html").read_text(encoding="utf-8")
    assert fonts.LICENCE in about


def test_a_package_with_other_files_is_said(monkeypatch, tmp_path):
    monkeypatch.setattr(fonts, "FILE", "files/none.woff2")
    with pytest.raises(Missing, match="look at the package's files"):
        fonts.write_fonts(tmp_path)
