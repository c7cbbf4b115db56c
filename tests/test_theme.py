"""The base theme in the built site: its style in a layer, nothing that the policy forbids, the weight."""

import gzip
import re
from html.parser import HTMLParser

import pytest

from scripts.site.one_sheet import SHEET as SERVED_SHEET
from scripts.site.small_sheet import small
from scripts.site.theme import NOT_USED, ThemeChanged, settled_theme
from scripts.site.used_rules import used_rules

MOST = (
    75_000  # octets of a plant's page, gzipped, with all style and script that comes before Python
)
SHEET = '@charset "UTF-8";a{mask:url("data:image/svg+xml;charset=utf-8,<svg d=\'M0 (1)\'/>")}b{color:red}'


class Loads(HTMLParser):
    """The files that a page loads: style, scripts and the files of scripts that it names."""

    def __init__(self, text):
        super().__init__()
        self.files = []
        self.feed(text)

    def handle_starttag(self, tag, attributes):
        found = dict(attributes)
        if tag == "script":
            self.files.append(found["src"])
        if tag == "link" and found.get("rel") in ("stylesheet", "modulepreload", "preload"):
            self.files.append(found["href"])


def weight(octets):
    return len(gzip.compress(octets, mtime=0))


@pytest.mark.parametrize(
    "name", ["hygrophila-difformis", "cryptocoryne-wendtii", "lemna-minor", "azolla-filiculoides"]
)
def test_a_plants_page_with_style_and_script_is_light(site, name):
    page = site / "plants" / name / "index.html"
    files = Loads(page.read_text(encoding="utf-8")).files
    assert any(file.endswith(SERVED_SHEET) for file in files)
    assert any(file.endswith("page.js") for file in files)
    loaded = {page, *((page.parent / file).resolve() for file in files)}
    assert sum(weight(path.read_bytes()) for path in loaded) <= MOST


def test_of_the_themes_files_only_its_style_sheet_is_left(site):
    assert (site / SERVED_SHEET).read_text(encoding="utf-8").startswith("@layer theme{")
    assert [path.relative_to(site).as_posix() for path in site.rglob("*.css")] == [SERVED_SHEET]
    assert not any((site / folder).exists() for folder in NOT_USED)


def test_no_style_sheet_asks_for_anything_but_our_own_letters(site):
    asked = set()
    for path in site.rglob("*.css"):
        text = path.read_text(encoding="utf-8")
        assert "@import" not in text, path
        asked |= {(path.name, address) for address in re.findall(r"url\(([^)]*)\)", text)}
    assert asked == {
        ("style.css", f'"fonts/{name}.woff2"')
        for name in ("headings", "names", "figures", "columns")
    }


def test_settling_puts_the_sheet_into_a_layer_and_leaves_its_drawings_out(tmp_path):
    sheets = tmp_path / "assets" / "stylesheets"
    sheets.mkdir(parents=True)
    (sheets / "main.0a1b.min.css").write_text(SHEET, encoding="utf-8")
    assert settled_theme(tmp_path, ()) == "@layer theme{a{mask:none}b{color:red}}"
    assert not sheets.exists()


@pytest.mark.parametrize(
    ("sheet", "left"),
    [
        ("a { b: c; } /* why */\n\n d > e { f : g , h; }", "a{b:c;}d > e{f :g,h;}"),
        (".a .b, .c :is(.d, .e) { x: calc(1px + 2px) }", ".a .b,.c :is(.d,.e){x:calc(1px + 2px)}"),
        ("@media (width: 3em) { a { b: c } }", "@media (width:3em){a{b:c}}"),
        ('a::before { content: "/* ; */ " / ""; }', 'a::before{content:"/* ; */ " / "";}'),
        (":root { --a: #fff; --b: ; }", ":root{--a:#fff;--b:;}"),
        (".a/* two */.b { c: d }", ".a.b{c:d}"),
        ("a :hover { b: c }", "a :hover{b:c}"),
    ],
)
def test_a_sheet_loses_comments_and_only_blanks_that_say_nothing(sheet, left):
    assert small(sheet) == left


@pytest.mark.parametrize(
    ("sheet", "kept"),
    [
        (".here{a:b}.gone{a:b}", ".here{a:b}"),
        (".here,.gone,p .gone{a:b}", ".here{a:b}"),
        (".here:not(.gone) a{a:b}", ".here:not(.gone) a{a:b}"),
        ("a:is(.gone,.here),.gone{a:b}", "a:is(.gone,.here){a:b}"),
        ("@media print{.gone{a:b}}p{a:b}", "p{a:b}"),
        ("@media print{.gone{a:b}p{a:b}}", "@media print{p{a:b}}"),
        ("@keyframes x{0%{a:b}}.gone{animation:x 1s}", ""),
        (
            "@keyframes x{0%{a:b}}.here{animation:x 1s}",
            "@keyframes x{0%{a:b}}.here{animation:x 1s}",
        ),
        ("[data-x=here] a{a:b}", "[data-x=here] a{a:b}"),
        ("#__drawer:checked~.here{a:b}", "#__drawer:checked~.here{a:b}"),
        ('.here[title=","],.gone{a:b}', '.here[title=","]{a:b}'),
        ('.gone::after{content:"}"}.here{a:b}', ".here{a:b}"),
        ("/* .here */.gone{a:b}@layer x;p{a:b}", "@layer x;p{a:b}"),
        ("@keyframes in{0%{a:b}}.here{animation:inner 1s}", ".here{animation:inner 1s}"),
    ],
)
def test_rules_that_no_page_can_use_are_left_out(sheet, kept):
    assert used_rules(sheet, {"here"}) == kept


def test_what_is_no_rule_is_told_with_its_place():
    with pytest.raises(ValueError, match="line 2, column 2: EOF reached before"):
        used_rules("p{a:b}\n.here", {"here"})


def test_a_theme_with_another_sheet_stops_the_build(tmp_path):
    with pytest.raises(ThemeChanged, match="0 files, where one is expected"):
        settled_theme(tmp_path, ())
