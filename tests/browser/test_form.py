"""Fit for a phone in a wet hand, and for a screen reader: widths, targets, keypads, axe's rules."""

import pytest
from playwright.sync_api import expect

from calculators.core.listing import load_all
from tests.browser.conftest import PHONE, axe_complaints, go, wait_for_answer

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


@pytest.mark.parametrize("path", KINDS)
@pytest.mark.python_alive
def test_axe_finds_nothing(page, path):
    go(page, path)
    if path.startswith("calculators/") and path != "calculators/":
        wait_for_answer(page)
    if path.startswith("compare/?"):
        expect(page.locator("#beside table")).to_be_visible()
    assert axe_complaints(page) == []


@pytest.mark.python_alive
def test_no_page_scrolls_sideways(page):
    paths = KINDS + [f"calculators/{name}/" for name in load_all()]
    for path in sorted(dict.fromkeys(paths), key=is_loaded_anew):
        go(page, path)
        for width in (320, 390, 1280):
            page.set_viewport_size({"width": width, "height": PHONE["height"]})
            sideways = page.evaluate("() => document.documentElement.scrollWidth")
            assert sideways <= width, (path, width)


def is_loaded_anew(path):
    return path.endswith(".html")


@pytest.mark.parametrize(
    "path",
    [
        "",
        "calculators/floaters/",
        "shelf/",
        "plants/",
        "animals/",
        "animals/danio-rerio/",
        "problems/",
        "search/?q=rotala",
        "guides/",
    ],
)
@pytest.mark.python_alive
def test_what_is_tapped_is_at_least_44_pixels_high(page, path):
    go(page, path)
    if path.startswith("calculators/"):
        wait_for_answer(page)
    small = page.evaluate(
        """() => [...document.querySelectorAll(
            'button, input:not([type=file]), select, .cards a, .doors a, .worked a, .steps a, '
            + '.doors-below a, header a, label.button')]
        .filter((one) => one.offsetParent && one.getBoundingClientRect().height < 44)
        .map((one) => one.outerHTML.slice(0, 100))"""
    )
    assert small == []


@pytest.mark.python_alive
def test_number_fields_bring_the_number_keypad(page):
    for name, spec in load_all().items():
        go(page, f"calculators/{name}/")
        for field in spec.inputs:
            if field.kind == "number":
                expect(page.locator(f"#in-{field.key}")).to_have_attribute("inputmode", "decimal")


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


def test_the_policy_holds_in_the_browser(page, watch):
    go(page, "calculators/units/")
    wait_for_answer(page)
    page.evaluate(
        """() => { const script = document.createElement('script');
        script.textContent = 'window.ran = 1'; document.head.append(script); }"""
    )
    assert page.evaluate("() => window.ran === undefined")
    blocked = page.evaluate(
        """async () => {
        try { await fetch('http://localhost:1/'); return 'sent'; } catch { return 'blocked'; } }"""
    )
    assert blocked == "blocked"
    assert any("Content Security Policy" in one for one in watch.complaints)
    watch.complaints.clear()  # they are what was asked for
