"""The forms of text that the file of the shelf holds beside days and moments."""

import re

from calculators.core.quantity import TextForm

KEY_LETTERS, NAME_LETTERS, NOTE_LETTERS = 80, 80, 2_000
RECORD_KEY = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
# Words that a browser's objects have by themselves: no id may be one.
RESERVED = frozenset(("__proto__", "constructor", "prototype"))


def is_id(text: str) -> bool:
    """Whether a text can name a tank or an entry."""
    return text not in RESERVED


def is_record_key(text: str) -> bool:
    """Whether a text is written as the records' keys are; it need not be one that this book holds."""
    return RECORD_KEY.fullmatch(text) is not None


ID = TextForm(f"a text of 1 to {KEY_LETTERS} characters", KEY_LETTERS, is_id)
RECORD = TextForm(
    f"a record's key, small letters, digits and hyphens, of 1 to {KEY_LETTERS} characters",
    KEY_LETTERS,
    is_record_key,
)
SHORT = TextForm(f"a text of 1 to {NAME_LETTERS} characters", NAME_LETTERS)
NOTE = TextForm(f"a text of 1 to {NOTE_LETTERS} characters", NOTE_LETTERS, lines=True)
