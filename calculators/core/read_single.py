"""Reads one value that holds no others: a number, a choice, yes or no, a text, keys."""

import binascii
import difflib
import re
from collections.abc import Callable
from typing import Any, NamedTuple

from calculators.core.fields import InputField, Kind
from calculators.core.limits import MAX_ROWS, allowed
from calculators.core.quantity import TextForm
from calculators.core.read_figure import read_figure
from calculators.core.read_keys import read_keys, show_json
from calculators.core.shown_units import System

UNFIT_LINES = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f\ud800-\udfff]"
)  # but line breaks and tabs
UNFIT = re.compile("[\x00-\x1f\x7f\ud800-\udfff]")  # control characters and halves of characters


LONGEST_COMPARED = 80  # letters of a wrong choice that are held against the right ones
PLAIN_TEXT = TextForm("a text of 1 to 80 characters", 80)


class ReadingMode(NamedTuple):
    """How inputs are read: as typed text or JSON, in which units, and whether they are a keeper's own."""

    typed: bool
    system: System
    own: bool


def read_number_of(field: InputField, value: Any, way: ReadingMode) -> float:
    """Read a number, with or without its unit; see ``read_figure.py``.

    Raises ``ValueError`` as that does.
    """
    return read_figure(field, value, way.typed, way.system)


def read_choice(field: InputField, value: Any, way: ReadingMode) -> str:
    """Read one of the declared choices, by its key.

    Raises ``ValueError`` with the nearest, and with all or the first of many.
    """
    if isinstance(value, str) and value.strip() in field.choices:
        return value.strip()
    close = difflib.get_close_matches(str(value).strip()[:LONGEST_COMPARED], field.choices, 1)
    hint = f"did you mean {close[0]}? " if close else ""
    raise ValueError(f"{show_json(value)} is not a choice; {hint}{allowed(field, way.system)}")


def read_flag(field: InputField, value: Any, way: ReadingMode) -> bool:
    """Read yes or no: true or false in JSON, the same words from a form.

    Raises ``ValueError`` for anything else.
    """
    if isinstance(value, bool):
        return value
    if way.typed and isinstance(value, str) and value.strip().lower() in field.choices:
        return value.strip().lower() == "true"
    raise ValueError(f"{show_json(value)} will not do; {allowed(field, way.system)}")


def read_text(field: InputField, value: Any, way: ReadingMode) -> str:
    """Read a text: a short one, such as a name, or one of the form that the field declares.

    Raises ``ValueError`` for one that is too long, empty or of another form.
    """
    form = field.text_form or PLAIN_TEXT
    unfit = UNFIT_LINES if form.lines else UNFIT
    if not isinstance(value, str) or len(value) > form.most or unfit.search(value):
        raise ValueError(f"{show_json(value)} will not do; {allowed(field, way.system)}")
    text = value.strip()
    if not text or not form.fits(text):
        raise ValueError(f"{show_json(value)} will not do; {allowed(field, way.system)}")
    return text


def read_octets(field: InputField, value: Any, way: ReadingMode) -> str:
    """Read base64, as text; what it holds is the formula's affair.

    Raises ``ValueError`` for what is no base64 or too much of it.
    """
    try:
        size = len(binascii.a2b_base64(value.strip(), strict_mode=True))
    except (AttributeError, TypeError, ValueError):
        raise ValueError(f"{show_json(value)} is no base64; {allowed(field, way.system)}") from None
    assert field.octets
    if size > field.octets.most:
        raise ValueError(f"{size} octets are too many; {allowed(field, way.system)}")
    text: str = value.strip()
    return text


def read_known(field: InputField, value: Any, way: ReadingMode) -> list[str]:
    """Read a list of a field's keys.

    Raises ``ValueError`` for what is no list or too long, ``BadInput`` for a key that is not known.
    """
    keys = read_keys(field.key, field.choices, value, way.typed)
    if keys is None or len(keys) > MAX_ROWS:
        raise ValueError(allowed(field, way.system))
    return keys


SINGLE: dict[Kind, Callable[[InputField, Any, ReadingMode], Any]] = {
    Kind.NUMBER: read_number_of,
    Kind.INTEGER: read_number_of,
    Kind.CHOICE: read_choice,
    Kind.TEXT: read_text,
    Kind.OCTETS: read_octets,
    Kind.FLAG: read_flag,
    Kind.KEYS: read_known,
}
