"""Fit for a phone in a wet hand, and for a screen reader: widths, targets, keypads, axe's rules."""

import re

import pytest
from playwright.sync_api import expect

from calculators.core.listing import load_all
from tests.browser.conftest import PHONE, axe_complaints, go, wait_for_answer
from tests.effort import long_run, share_of

KINDS = [
    "", "plants/", "plants/limnophila-sessiliflora/", "animals/",
    "animals/pomacea-diffusa/", "problems/", "problems/fast-stems-brown-lean/",
    "calculators/",
    "calculators/free-ammonia/", "calculators/floaters/", "calculators/surface-cover/",
    "rules/", "rules/eu-union-list/", "sources/",
    "rules/gb/", "guides/", "guides/setting-up/", "guides/moving-plants/",
    "about/", "nitrogen-model/",
    "danger/", "shelf/", "search/?q=rotala", "404.html", "plants/table/", "plants/growth/", "names/",
    "names/salvinia-natans/", "compare/", "compare/?plants=lemna-minor,spirodela-polyrhiza",
    "compare/?plants=lemna-minor,egeria-densa,anubias-barteri,ipomoea-batatas",
]  # fmt: skip


CALCULATORS = [f"calculators/{name}/" for name in load_all()]
TAPPED = [
    "", "calculators/floaters/", "shelf/", "plants/", "animals/", "animals/danio-rerio/",
    "problems/", "search/?q=rotala", "guides/",
]  # fmt: skip
SMALL = """() => [...document.querySelectorAll(
        'button, input:not([type=file]), select, .cards a, .doors a, .worked a, .steps a, '
        + '.doors-below a, header a, label.button')]
    .filter((one) => one.offsetParent && one.getBoundingClientRect().height < 44)
    .map((one) => one.outerHTML.slice(0, 100))"""


def small_targets(page):
    """What is tapped and is less than 44 pixels high."""
    return page.evaluate(SMALL)


def sideways_widths(page):
    """The widths of a window in which the page scrolls sideways."""
    wide = []
    for width in (320, 390, 1280):
        page.set_viewport_size({"width": width, "height": PHONE["height"]})
        if page.evaluate("() => document.documentElement.scrollWidth") > width:
            wide.append(width)
    page.set_viewport_size(PHONE)
    return wide


def fields_without_keypad(page):
    """The number fields of a calculator's page that do not bring the number keypad."""
    name = page.evaluate("() => location.pathname.split('/').at(-2)")
    numbers = [field.key for field in load_all()[name].inputs if field.kind == "number"]
    modes = page.evaluate(
        """(keys) => keys.map((key) =>
        document.querySelector(`[id="in-${key}"]`)?.getAttribute("inputmode"))""",
        numbers,
    )
    return [key for key, mode in zip(numbers, modes, strict=True) if mode != "decimal"]


# What is looked for in a page that was opened once, by the name of the check, and in which pages.
CHECKS = {
    "what is tapped is high enough": (small_targets, TAPPED),
    "number fields bring the keypad": (fields_without_keypad, CALCULATORS),
    "nothing scrolls sideways": (sideways_widths, [*KINDS, *CALCULATORS]),
    "axe finds nothing": (axe_complaints, KINDS),
}
PATHS = dict.fromkeys(path for _, paths in CHECKS.values() for path in paths)
LOOKED_AT = share_of([*PATHS], 19)  # one in nineteen of what is tapped, of calculators and of kinds
SEEN = {}  # of each page: what each check found in it


def look_at(page, path):
    """Open a page once for all its checks."""
    if path not in SEEN:
        go(page, path)
        if path in CALCULATORS:
            wait_for_answer(page)
        if path.startswith("compare/?"):
            expect(page.locator("#beside table")).to_be_visible()
        SEEN[path] = {name: check(page) for name, (check, paths) in CHECKS.items() if path in paths}
    return SEEN[path]


def is_loaded_anew(path):
    return path.endswith(".html")


@pytest.mark.parametrize(
    ("path", "name"),
    [
        (path, name)
        for path in sorted(LOOKED_AT, key=is_loaded_anew)
        for name, (_, paths) in CHECKS.items()
        if path in paths
    ],
)
@pytest.mark.python_alive
def test_a_page_is_fit_for_a_wet_hand_and_a_screen_reader(page, path, name):
    assert look_at(page, path)[name] == []


@pytest.mark.python_alive
def test_every_field_is_labelled_and_points_to_its_hint_and_problem(page):
    go(page, "calculators/floaters/")
    for heading in page.locator("details.part summary").all():
        heading.click()
    for field in load_all()["floaters"].inputs:
        expect(page.get_by_label(field.label, exact=True).first).to_be_visible()
        expect(page.locator(f"#in-{field.key}")).to_have_attribute(
            "aria-describedby", f"hint-{field.key} problem-{field.key}"
        )


SQUEEZED = """() => [...document.querySelectorAll('.together input, .together select')]
    .filter((one) => one.offsetParent)
    .map((one) => [one.id, one.getBoundingClientRect()])
    .filter(([, box]) => box.width < 48 || box.height < 48)
    .map(([id]) => id)"""


@pytest.mark.parametrize(
    "name", share_of(["nitrogen-forecast", "tank", "ammonia-change", "dosing", "pick"], 5)
)
@pytest.mark.python_alive
def test_a_row_of_fields_leaves_room_for_a_thumb_in_each(page, name):
    go(page, f"calculators/{name}/")
    expect(page.locator(".together").first).to_be_visible()
    for width in (320, 390, 1280):
        page.set_viewport_size({"width": width, "height": PHONE["height"]})
        assert page.evaluate(SQUEEZED) == []
        assert page.evaluate("() => document.documentElement.scrollWidth") <= width
    page.set_viewport_size(PHONE)


@long_run()
@pytest.mark.python_alive
def test_fields_in_a_row_are_beside_each_other_and_read_and_marked_like_any(page):
    go(page, "calculators/tank/")
    length, width = (page.locator(f"#in-{key}").bounding_box() for key in ("length_cm", "width_cm"))
    assert length["y"] == width["y"]
    assert length["x"] + length["width"] < width["x"]
    page.locator("#example").tap()
    wait_for_answer(page)
    page.locator("#in-width_cm").fill("none")
    expect(page.locator("#problem-width_cm")).to_contain_text("number")
    expect(page.locator("#in-width_cm")).to_have_attribute("aria-invalid", "true")
    page.locator("#in-width_cm").fill("40")
    expect(page).to_have_url(re.compile("width_cm=40"))


@long_run()
@pytest.mark.parametrize(
    "name", share_of(["nitrogen-forecast", "tank", "ammonia-change", "dosing"], 4)
)
@pytest.mark.python_alive
def test_axe_finds_nothing_in_rows_and_in_the_lines_of_closed_parts(page, name):
    go(page, f"calculators/{name}/")
    assert axe_complaints(page) == []
