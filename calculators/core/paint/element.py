"""HTML that escapes by construction: the one maker of tags, at build time and in the browser.

Line ends become numeric entities, so that a fragment is one line and an HTML block of Markdown holds
it whole, and so that a file's text keeps its own line ends.
"""

from collections.abc import Iterable, Mapping
from html import escape

from calculators.core.kept_together import kept_together

VOID = frozenset({"br", "input"})  # tags without an end
LINE_ENDS = str.maketrans({"\n": "&#10;", "\r": "&#13;"})

Attribute = str | int | bool | None
Attributes = Mapping[str, Attribute]


class Html(str):
    """Text that is HTML already; every other text is escaped when it becomes a child or an attribute."""

    __slots__ = ()

    def __html__(self) -> str:
        """For the page templates, which escape what does not answer to this."""
        return str(self)


NOTHING = Html("")


def element(name: str, attributes: Attributes | None = None, *children: str) -> Html:
    """One tag with its children.

    A true attribute stands without a value; one that is false or None is left out.
    """
    given = attributes or {}
    opened = f"<{name}{''.join(attribute(*pair) for pair in given.items())}>"
    return Html(opened if name in VOID else f"{opened}{joined(children)}</{name}>")


def attribute(name: str, value: Attribute) -> str:
    """One attribute with the space before it."""
    if value is None or value is False:
        return ""
    return f" {name}" if value is True else f' {name}="{plainly(str(value))}"'


def joined(children: Iterable[str], between: str = "") -> Html:
    """Several texts and fragments, one after the other."""
    return Html(escaped(between).join(escaped(child) for child in children))


def escaped(text: str) -> Html:
    """A text as HTML, with each unit on the line of its number; what is HTML already stays."""
    return text if isinstance(text, Html) else Html(kept_together(plainly(text)))


def plainly(text: str) -> str:
    """A text with its own spaces: an attribute may be read by a script, or be a file's text."""
    return text if isinstance(text, Html) else escape(text).translate(LINE_ENDS)
