"""A tank as a link and as a QR code: read back by general-purpose tools, and by the book."""

import base64
import json
import re
import zlib

import pytest
from playwright.sync_api import expect

from scripts.setup.node import browser_parts
from tests.browser.shelf_page import at_book, with_shelf
from tests.browser.shelf_tanks import LOBBY, put
from tests.effort import long_run, share_of

PAGE = "https://example.org/book/shelf/new/"
TANK = {
    "id": "90978b6b-a6ff-4325-b37f-7db9522c0279", "name": "Children's Corner ≈ 54 L", "net_l": 54, "ph": 7.2,
    "tap": {"ph": 7.5, "kh_dh": 4},
    "plants": [{"plant": "rotala-rotundifolia", "wet_g": 20, "since": "2026-01-01"}],
    "animals": [{"animal": "neocaridina-davidi", "count": 20}],
}  # fmt: skip
MAKE = """const { tankLink } = await import(at("link")); return tankLink(given, "https://example.org/book/shelf/new/");"""
READ = """const { readTankLink } = await import(at("link")); return attempt(() => readTankLink(given));"""
CODE = """const { tankCode } = await import(at("qr")); return tankCode(given, "https://example.org/book/shelf/new/");"""


@pytest.fixture
def page(page):
    return at_book(page)


def letters(octets):
    return base64.urlsafe_b64encode(octets).decode().rstrip("=")


def octets(code):
    return base64.urlsafe_b64decode(code + "=" * (-len(code) % 4))


def packed(data):
    """Raw DEFLATE (RFC 1951), as zlib makes it."""
    made = zlib.compressobj(9, zlib.DEFLATED, -15)
    return made.compress(data) + made.flush()


def fragment(tank):
    return f"#tank=d{letters(packed(json.dumps(tank).encode()))}"


def test_a_link_carries_the_tank_in_its_fragment(page):
    """Unpacked by Python's base64 and zlib."""
    link = with_shelf(page, MAKE, TANK)
    before, _, code = link.partition("#tank=")
    assert before == PAGE
    assert re.fullmatch(r"d[A-Za-z0-9_-]+", code)
    assert json.loads(zlib.decompress(octets(code[1:]), -15)) == TANK


def test_a_link_that_python_made_is_read(page):
    seen = with_shelf(page, READ, fragment(TANK))
    assert seen["value"]["tanks"] == [TANK]


def test_without_compression_a_link_is_plain_and_read_everywhere(page):
    link = with_shelf(page, f"delete window.CompressionStream; {MAKE}", TANK)
    code = link.partition("#tank=")[2]
    assert code[0] == "j"
    assert json.loads(octets(code[1:])) == TANK
    assert with_shelf(page, READ, f"#tank={code}")["value"]["tanks"] == [TANK]


def test_a_link_shows_what_it_would_change_before_it_does(page):
    seen = with_shelf(
        page,
        """const { readTankLink } = await import(at("link"));
        const file = await readTankLink(given);
        const before = [shelf.compare(file).added, (await shelf.tanks()).length];
        await shelf.merge(file);
        return [...before, shelf.compare(file).same, (await shelf.tanks()).length];""",
        fragment(TANK),
    )
    assert seen == [1, 0, 1, 1]


HOSTILE = b'{"__proto__": {"ph": 1}, "id": "x", "name": "n"}'
NO_UTF_8 = b'"\xff"'
BAD = {
    "nothing": "#tank=",
    "another fragment": "#plants",
    "no letters of ours": "#tank=d%%%",
    "cut off": fragment(TANK)[:-12],
    "not packed": f"#tank=d{letters(b'not deflate at all')}",
    "packed noughts": f"#tank=d{letters(packed(bytes(100)))}",
    "no tank": fragment([1]),
    "no name": fragment({"id": "x"}),
    "a hostile key": f"#tank=j{letters(HOSTILE)}",
    "too long": f"#tank=j{'A' * 100_001}",
    "not UTF-8": f"#tank=j{letters(NO_UTF_8)}",
}


@pytest.mark.parametrize("name", share_of([*BAD], 4))
def test_a_bad_link_is_refused(page, name):
    seen = with_shelf(page, READ, BAD[name])
    assert seen.get("reason") == "broken", seen


def test_a_link_of_a_newer_book_says_so(page):
    assert with_shelf(page, READ, "#tank=zAAAA")["reason"] == "newer"


@long_run()
def test_a_link_that_unpacks_without_end_is_left(page):
    bomb = fragment({"id": "x", "name": "x" * 40_000_000})
    assert len(bomb) < 100_000
    seen = with_shelf(
        page,
        """let octets = 0;
        const reader = ReadableStreamDefaultReader.prototype;
        const { read } = reader;
        reader.read = async function () {
          const next = await read.call(this);
          octets += next.value?.length ?? 0;
          return next;
        };
        const { readTankLink } = await import(at("link"));
        const came = await attempt(() => readTankLink(given));
        return { ...came, octets };""",
        bomb,
    )
    assert seen["reason"] == "broken"
    assert "200 kB" in seen["message"]
    assert 200_000 < seen["octets"] < 1_000_000


def scanned(page, svg):
    """What a QR reader makes of a drawing of the code: jsQR, on the pixels that the browser draws.

    In an empty page, since the book's policy lets no picture in that is written as an address.
    """
    empty = page.context.new_page()
    empty.evaluate(
        (browser_parts(tools=True) / "jsqr" / "dist" / "jsQR.js").read_text(encoding="utf-8")
    )
    return empty.evaluate(
        """async (svg) => {
        const picture = new Image();
        const sized = svg.replace("<svg ", '<svg width="900" height="900" ');
        picture.src = `data:image/svg+xml,${encodeURIComponent(sized)}`;
        await picture.decode();
        const canvas = Object.assign(document.createElement("canvas"), { width: 900, height: 900 });
        const paper = canvas.getContext("2d");
        paper.drawImage(picture, 0, 0);
        return jsQR(paper.getImageData(0, 0, 900, 900).data, 900, 900)?.data ?? null; }""",
        svg,
    )


@long_run()
def test_a_qr_code_is_read_back_by_a_reader_of_its_own(page):
    code = with_shelf(page, CODE, TANK)
    assert code["leftOut"] == []
    assert code["version"] <= 25
    assert scanned(page, code["svg"]) == code["link"]
    assert with_shelf(page, READ, "#" + code["link"].partition("#")[2])["value"]["tanks"] == [TANK]


@long_run()
def test_a_tank_too_large_for_a_code_goes_without_its_longest_parts_and_says_so(page):
    plants = [{"plant": f"plant-{number**7:x}", "wet_g": number * 1.37} for number in range(150)]
    note = "".join(f"{number**5:x}" for number in range(30))
    code = with_shelf(page, CODE, {**TANK, "plants": plants, "note": note})
    assert code["leftOut"] == ["plants"]
    assert code["version"] <= 25
    carried = with_shelf(page, READ, "#" + scanned(page, code["svg"]).partition("#")[2])
    rest = {key: TANK[key] for key in TANK if key != "plants"}
    assert carried["value"]["tanks"] == [{**rest, "note": note}]


def test_a_name_cannot_break_out_of_the_drawing(page):
    code = with_shelf(page, CODE, {"id": "x", "name": '"><script>alert(1)</script>&'})
    assert "<script" not in code["svg"]
    label = (
        page.context.new_page().evaluate(  # an empty page: the book's policy lets no other HTML in
            """(svg) => new DOMParser().parseFromString(svg, "image/svg+xml")
            .documentElement.getAttribute("aria-label")""",
            code["svg"],
        )
    )
    assert label == 'QR code of "><script>alert(1)</script>&'


def test_a_tank_travels_in_its_link_and_nothing_changes_before_it_is_agreed_to(page):
    put(page, LOBBY)
    link = with_shelf(
        page,
        """const { tankLink } = await import(at("link"));
        const address = new URL("shelf/", new URL(document.body.dataset.root, location)).href;
        return tankLink({ ...(await shelf.tank("mine")), id: "theirs", name: "From a friend" }, address);""",
    )
    page.goto(link)
    expect(page.locator("#copy-preview")).to_contain_text("From a friend: new")
    assert len(with_shelf(page, "return await shelf.tanks();")) == 1
    page.get_by_role("button", name="Take it in").tap()
    expect(page.locator(".tank-card")).to_have_count(2)
    page.locator("#shelf-done button").tap()
    expect(page.locator(".tank-card")).to_have_count(1)


@long_run()
def test_a_link_that_is_read_off_the_page_fits_a_phone(page):
    put(page, LOBBY, chosen="mine")
    page.add_init_script("delete Navigator.prototype.share; delete Navigator.prototype.clipboard;")
    page.goto("shelf/tank/#mine")
    page.get_by_text("To another phone").tap()
    page.get_by_role("button", name="Make the link").tap()
    expect(page.locator("#tank-code svg")).to_be_visible()
    expect(page.locator("#tank-link-said")).to_contain_text("#tank=")
    wide = page.evaluate("() => document.documentElement.scrollWidth")
    assert wide == page.viewport_size["width"]
