"""Numbers as people write and read them."""

import math
import re

PLAIN = re.compile(r"[+-]?(\d+([.,]\d*)?|[.,]\d+)([eE][+-]?\d{1,3})?", re.ASCII)
THOUSANDS = re.compile(r"[+-]?[1-9]\d{0,2}(,\d{3})+(\.\d*)?", re.ASCII)
MINUS = "\u2212"  # what some phone keyboards send for a minus
NARROW_SPACE = "\u202f"
FEWEST_IN_THREES = 5  # figures; four are read at a glance
LONGEST_SAID = 24  # letters of a text that is no number
LEAST_PLAIN, MOST_PLAIN = 1e-6, 1e9  # of a number that is said back without an exponent
SPACES = str.maketrans("", "", " \u00a0\u202f\u2009")


def read_number(text: str) -> float:
    """Read a decimal number, with a point or a decimal comma.

    Raises ``ValueError`` with the reason. "1,000" is refused, since it may mean one or a thousand. The
    number has no unit yet.
    """
    tidy = text.translate(SPACES).replace(MINUS, "-")
    shown = cut_short(text.strip())
    if THOUSANDS.fullmatch(tidy):
        raise ValueError(f"write {shown} without a thousands mark, or with a point")
    if not PLAIN.fullmatch(tidy):
        raise ValueError(f"{shown!r} is not a number" if tidy else "a number is missing")
    value = float(tidy.replace(",", "."))
    if not math.isfinite(value):
        raise ValueError(f"{shown} is too large")
    return value


def cut_short(text: str) -> str:
    """A text as it is said back to the person who wrote it; a long one is cut."""
    return text if len(text) <= LONGEST_SAID else f"{text[: LONGEST_SAID - 1]}…"


def show_short(value: float) -> str:
    """Write back a number that will not do, six figures, in exponent form where it would be long.

    The ``value`` may be of any unit; none is written.
    """
    plain = value == 0 or LEAST_PLAIN <= abs(value) < MOST_PLAIN
    text = show_number(value, 6) if plain else f"{value:.6g}"
    return text.replace("e+", "e").replace("-", MINUS)


def in_threes(text: str) -> str:
    """A written number with its whole figures in threes, where there are five or more: "100 000".

    The space is narrow and ends no line, as ISO 80000-1 has it; ``read_number`` takes it back.
    """
    whole, point, rest = text.partition(".")
    sign = whole[: len(whole) - len(whole.lstrip(f"-{MINUS}"))]
    figures = whole[len(sign) :]
    if len(figures) < FEWEST_IN_THREES:
        return text
    return f"{sign}{int(figures):,}".replace(",", NARROW_SPACE) + point + rest


def show_number(value: float, digits: int = 3) -> str:
    """Write a number to so many significant figures, never in exponent form, no needless zeros.

    Whole numbers above that many figures are rounded to a whole, not to hundreds. The ``value`` may be
    of any unit; none is written.
    """
    if value == 0 or not math.isfinite(value):
        return "0"
    places = max(0, digits - 1 - math.floor(math.log10(abs(value))))
    places = min(places, 12)
    text = f"{value:.{places}f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text.replace("-", MINUS)


def show_plain(value: float, digits: int = 12) -> str:
    """Write a number for a field or an address: no exponent, a plain minus, no needless zeros.

    The ``value`` may be of any unit; none is written.
    """
    text = f"{value:.{digits}g}"
    if "e" in text:
        text = f"{value:.{digits}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text
