"""What no text of a record may hold: markup, what cannot be seen, what turns the reading direction."""

import re
import unicodedata

RIGHT_TO_LEFT = ("R", "AL")
MARKUP = re.compile(r"<[A-Za-z/!?]\S{0,12}|\b(java|vb)script\s*:|\bdata:text", re.IGNORECASE)


def unfit(text: str) -> str | None:
    """What a text holds that it may not, or None. An empty text is the model's to judge."""
    if ("<" in text or ":" in text) and (match := MARKUP.search(text)):
        return f"holds markup ({match[0]}); write plain text"
    if text.isascii() and text.isprintable():
        return "is blank; write something, or leave the key out" if text.isspace() else None
    for letter in text:
        if letter != "\n" and unicodedata.category(letter) in UNSEEN:
            return f"holds {character_name(letter)}, which cannot be seen; remove it"
        if unicodedata.bidirectional(letter) in RIGHT_TO_LEFT:
            return f"holds {character_name(letter)}, which runs right to left; write it in Latin letters"
    return "is blank; write something, or leave the key out" if text.isspace() else None


# Control, format (zero width, direction), surrogate, private, unassigned; line and paragraph separators.
UNSEEN = frozenset({"Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"})


def character_name(letter: str) -> str:
    """A character by its number and its name in Unicode."""
    name = unicodedata.name(letter, "a control character").lower()
    return f"U+{ord(letter):04X} ({name})"
