"""Escaping for text that goes into Markdown, inside HTML blocks or outside them.

Every character that Markdown or HTML could take for its own becomes a numeric entity, which both
leave alone; so a record can say ``*`` or ``<b>`` or ``[x](y)`` and the reader sees just that.
"""

import re
from functools import lru_cache
from typing import Any

from markupsafe import Markup

from calculators.core.kept_together import kept_together

SPECIAL = re.compile(r"""[&<>"'\\`*_\[\]{}|~^!$=]""")
AT_START = re.compile(r"^ ?(\d+(?=[.)](?:\s|$))|[-#+:>])")
TEXTS = 4096  # escaped texts at hand: names and words of the trade stand on many pages
SPACE = re.compile(r"[^\S\u00a0]+")  # a space that no line ends at stays one


def entity(match: re.Match[str]) -> str:
    """Each character of a match as a numeric entity."""
    return "".join(f"&#{ord(letter)};" for letter in match[0])


def escape(value: Any) -> Any:
    """Jinja's ``finalize``: escape text, leave what is marked as HTML, write numbers plainly."""
    if isinstance(value, Markup) or not isinstance(value, str):
        return value
    return escaped(str(value))


@lru_cache(maxsize=TEXTS)
def escaped(text: str) -> Markup:
    """A text with every character of Markdown's or HTML's own as an entity."""
    # A space at an end stays: a template's ", " needs it.
    one_line = kept_together(SPACE.sub(" ", text))
    return Markup(AT_START.sub(entity, SPECIAL.sub(entity, one_line)))
