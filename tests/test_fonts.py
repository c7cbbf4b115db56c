"""The letters of headings and figures: all that the book needs of them, small, with their licences."""

import json
import re
from html import unescape

import pytest
from fontTools.ttLib import TTFont

from scripts.setup.new_folder import NewFolder
from scripts.setup.paths import LOCKS
from scripts.setup.say import Missing
from scripts.site import fonts

MOST = 15_000  # octets, of the letters of names and headings
MOST_OF_FIGURES = 8_000  # octets, of both weights
FIGURES = "figures.woff2", "columns.woff2"
PART_NAMES = {fonts.SERIF: "Crimson Pro", fonts.SANS: "Source Sans 3"}
FACE = re.compile(r"@font-face\s*{[^}]*}")
HEADING = re.compile(r"<h([1-3])\b[^>]*>(.*?)</h\1>", re.DOTALL)
ITALIC = re.compile(r"<(i|em)>(.*?)</\1>", re.DOTALL)


@pytest.fixture(scope="module")
def letters(site):
    """The characters that each font can set, by its file."""
    paths = {name: site / "assets" / "fonts" / name for name in fonts.FONTS}
    weights = {name: path.stat().st_size for name, path in paths.items()}
    of_figures = sum(weights[name] for name in FIGURES)
    assert of_figures <= MOST_OF_FIGURES
    assert sum(weights.values()) - of_figures <= MOST
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


def test_figures_are_of_one_width_and_of_the_signs_that_the_style_asks_for(site, letters):
    style = (site / "assets" / "style.css").read_text(encoding="utf-8")
    for name in FIGURES:
        font = TTFont(site / "assets" / "fonts" / name)
        table = font.getBestCmap()
        assert len({font["hmtx"][table[ord(digit)]][0] for digit in "0123456789"}) == 1
        (face,) = (face for face in FACE.findall(style) if f"fonts/{name}" in face)
        assert asked_of(face) == letters[name] == set(map(ord, fonts.FIGURE_CHARACTERS))


def asked_of(face):
    """The characters of a face's unicode-range."""
    (ranges,) = re.findall(r"unicode-range:([^;}]*)", face)
    ends = [one.strip().upper().removeprefix("U+").split("-") for one in ranges.split(",")]
    return {
        code
        for first, *last in ends
        for code in range(int(first, 16), int((last or [first])[0], 16) + 1)
    }


def test_a_font_that_is_cut_down_goes_by_a_name_of_ours(site):
    for served, (package, _, _) in fonts.FONTS.items():
        names = TTFont(site / "assets" / "fonts" / served)["name"]
        assert names.getDebugName(1) == served.removesuffix(".woff2").capitalize()
        assert PART_NAMES[package] not in (names.getDebugName(4), names.getDebugName(6))


@pytest.mark.parametrize("package", fonts.LICENCES)
def test_the_licence_stands_beside_them_and_is_open(site, package):
    licence = fonts.LICENCES[package]
    text = (site / "assets" / "fonts" / licence).read_text(encoding="utf-8")
    assert "SIL Open Font License, Version 1.1" in text
    about = (site / "about" / "index.html").read_text(encoding="utf-8")
    assert licence in about
    lock = json.loads((LOCKS / "npm" / "package-lock.json").read_text(encoding="utf-8"))
    entry = lock["packages"][f"node_modules/{package}"]
    (row,) = (row for row in about.split("<tr>") if PART_NAMES[package] in row)
    assert f"<td>{entry['version']}</td>" in row
    assert entry["license"] in row


def test_a_package_with_other_files_is_said(monkeypatch, tmp_path):
    monkeypatch.setattr(fonts, "FONTS", {"headings.woff2": (fonts.SERIF, "files/none.woff2", "a")})
    with pytest.raises(Missing, match="look at the package's files"):
        fonts.put_fonts(NewFolder(tmp_path / "new", tmp_path / "before"), "fonts")
