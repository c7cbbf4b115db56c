"""Numbers as people write them."""

import pytest
from hypothesis import given
from hypothesis import strategies as some

from calculators.core.numbers import in_threes, read_number, show_number, show_plain, show_short


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("7", 7), (" 7.5 ", 7.5), ("6,8", 6.8), ("0,125", 0.125), (".5", 0.5), ("5.", 5),
        ("-3", -3), ("\u22123", -3), ("1e3", 1000), ("12 000", 12000), ("1\u00a0000", 1000),
    ],
)  # fmt: skip
def test_reads(text, value):
    assert read_number(text) == value


@pytest.mark.parametrize(
    "text",
    [
        "",
        "x",
        "1,000",
        "1,000.5",
        "12,345,678",
        "nan",
        "inf",
        "1_000",
        "0x10",
        "1e999",
        "٣",
        "7 ph",
        "--1",
    ],
)
def test_refuses(text):
    with pytest.raises(ValueError, match=r"number|thousands|large"):
        read_number(text)


@pytest.mark.parametrize(
    ("value", "digits", "text"),
    [
        (0, 3, "0"), (0.00860, 3, "0.0086"), (5.2301, 3, "5.23"), (1234.5, 3, "1234"), (24.0, 3, "24"),
        (-3, 3, "\u22123"), (1e-9, 3, "0.000000001"), (99.96, 3, "100"), (2.0, 5, "2"), (-0.0, 3, "0"),
    ],
)  # fmt: skip
def test_shows(value, digits, text):
    assert show_number(value, digits) == text


@given(some.floats(-1e9, 1e9))
def test_a_number_shown_plainly_reads_back(value):
    assert read_number(show_plain(value)) == pytest.approx(value, rel=1e-11, abs=1e-12)


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (1e99, "1e99"), (-3e20, "−3e20"), (123456789012345678, "1.23457e17"), (5e-300, "5e−300"),
        (1234567.25, "1234567"), (0.25, "0.25"), (0, "0"), (-4, "−4"),
    ],
)  # fmt: skip
def test_says_back_a_number_in_few_signs(value, text):
    assert show_short(value) == text


@pytest.mark.parametrize("text", ["x" * 60, "9" * 300 + "e999", "1" + ",234" * 30])
def test_says_back_a_text_cut_short(text):
    with pytest.raises(ValueError, match=r"number|thousands|large") as wrong:
        read_number(text)
    assert len(str(wrong.value)) < 80


@pytest.mark.parametrize(
    ("written", "shown"),
    [
        ("9999", "9999"), ("10000", "10~000"), ("100000.5", "100~000.5"), ("0.12345", "0.12345"),
        ("\u22121000000000", "\u22121~000~000~000"), ("-12345", "-12~345"),
    ],
)  # fmt: skip
def test_long_numbers_stand_in_threes_and_can_be_typed_so(written, shown):
    assert in_threes(written).replace("\u202f", "~") == shown
    assert read_number(in_threes(written)) == read_number(written)
