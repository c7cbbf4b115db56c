"""A number and its unit stay on one line, in pages and answers; files stay plain."""

import pytest

from calculators.core.kept_together import kept_together
from calculators.core.paint.element import Html, element
from scripts.pages.escape import escape


@pytest.mark.parametrize(
    ("written", "shown"),
    [
        ("5 mg N/L", "5~mg~N/L"),
        ("24 °C (75.2 °F)", "24~°C (75.2~°F)"),
        ("0.8–4 mol/m²/day", "0.8–4~mol/m²/day"),
        ("9 °dH, 30 % and 5 US gal", "9~°dH, 30~% and 5~US gal"),
        ("1 to 3 m deep, 20 µm, 8 h", "1 to 3~m deep, 20~µm, 8~h"),
        ("7 days, 5 in ten, 4 gallons, 3 more", "7 days, 5 in ten, 4 gallons, 3 more"),
        ("pH 7 goes on", "pH 7 goes on"),
    ],
)
def test_a_unit_follows_its_number_on_the_same_line(written, shown):
    assert kept_together(written).replace("\u00a0", "~") == shown
    assert kept_together(kept_together(written)) == kept_together(written)


def test_pages_and_answers_keep_them_and_attributes_do_not():
    assert escape("at 24 °C") == "at 24\u00a0°C"
    assert escape("a  b\u00a0c\n d") == "a b\u00a0c d"
    made = element("p", {"data-text": "24 °C"}, "24 °C", Html("<b>24 °C</b>"))
    assert made == '<p data-text="24 °C">24\u00a0°C<b>24 °C</b></p>'
