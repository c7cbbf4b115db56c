"""Escaping for text that goes into Markdown, inside HTML blocks or outside them.

Every character that Markdown or HTML could take for its own becomes a numeric entity, which both
leave alone; so a record can say ``*`` or ``<b>`` or ``[x](y)`` and the reader sees just that.
"""

import re
from typing import Any

from markupsafe import Markup

SPECIAL = re.compile(r"""[&<>"'\\`*_\[\]{}|~^!$=]""")
AT_START = re.compile(r"^ ?(\d+(?=[.)](?:\s|$))|[-#+:>])")
SPACE = re.compile(r"\s+")


def entity(match: re.Match[str]) -> str:
    """Each character of a match as a numeric entity."""
    return "".join(f"&#{ord(letter)};" for letter in match[0])


def escape(value: Any) -> Any:
    """Jinja's ``finalize``: escape text, leave what is marked as HTML, write numbers plainly."""
    if isinstance(value, Markup) or not isinstance(value, str):
        return value
    one_line = SPACE.sub(" ", value)  # a space at an end stays: a template's ", " needs it
    return Markup(AT_START.sub(entity, SPECIAL.sub(entity, one_line)))
