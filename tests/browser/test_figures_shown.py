"""Figures in their own face where they stand large or in columns, and never words."""

from tests.browser.conftest import go

FACES = "(one) => getComputedStyle(one).fontFamily"


def test_the_strip_of_a_plant_sets_its_figures_and_not_the_small_words_beside(page):
    go(page, "plants/hygrophila-difformis/")
    page.evaluate("document.fonts.load('700 16px Figures', '14')")
    assert page.evaluate("document.fonts.check('700 16px Figures', '14–28')")
    figures = page.locator(".strip dd").first
    assert figures.evaluate(FACES).startswith("Figures")
    assert "Figures" not in page.locator(".strip dd small").first.evaluate(FACES)


def test_digits_of_a_column_are_of_one_width(page):
    go(page, "plants/table/")
    page.evaluate("document.fonts.load('400 16px Figures', '14')")
    widths = page.locator(".plants td").first.evaluate(
        """(cell) => [..."0123456789"].map((digit) => {
          const one = document.createElement("span");
          one.textContent = digit.repeat(20);
          cell.append(one);
          const { width } = one.getBoundingClientRect();
          one.remove();
          return Math.round(width);
        })"""
    )
    assert len(set(widths)) == 1
    assert widths[0] > 0
