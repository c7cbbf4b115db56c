"""What prose may not hold: HTML of its own, links that are no plain address, attributes in braces.

A guide is Markdown without any HTML. The other pages of docs/ carry the places of the page's script,
so there the tags and attributes below may stand. ``harmless`` is the second lock: what a guide's page
is made from holds nothing raw, whatever the check let pass.
"""

import re
from collections.abc import Iterator
from html.parser import HTMLParser

RAW = re.compile(r"<(?=[A-Za-z/!?])")  # what a browser takes for the start of a tag
LINK = re.compile(r"\]\(([^)]*)\)?")
PLAIN_ADDRESS = re.compile(r"(?!//)(https://[A-Za-z0-9.-]+)?[A-Za-z0-9_./#?=%,&+-]*")
IMAGE = re.compile(r"!(?=\[)")
REFERENCE = re.compile(r"\[[^\]]*\]:")
BRACE = re.compile(r"\{(?! #[a-z0-9-]+ \}$)", re.MULTILINE)  # an id behind a heading may stand

TAGS = frozenset({
    "a", "b", "br", "button", "details", "div", "fieldset", "form", "h1", "h2", "input", "label",
    "legend", "li", "noscript", "ol", "p", "path", "section", "small", "span", "summary", "svg", "ul",
})  # fmt: skip
ATTRIBUTES = frozenset({
    "accept", "action", "autocapitalize", "autocomplete", "class", "d", "disabled", "enterkeyhint",
    "for", "hidden", "href", "id", "inputmode", "list", "markdown", "max", "maxlength", "min",
    "multiple", "name", "novalidate", "placeholder", "reversed", "role", "spellcheck", "step",
    "tabindex", "type", "value", "viewbox",
})  # fmt: skip
FREE_ATTRIBUTES = ("aria-", "data-")
ADDRESSES = ("href", "action")

NO_HTML = "holds HTML ({}); write plain text or Markdown, and &lt; for the sign itself"
UNKNOWN_MARK = (
    "has a mark that nobody knows; a brace opens a mark, or an id behind a heading, { #id }"
)
NO_ADDRESS = "links to {}; a link is a page of the book or starts with https://"


def guide_faults(text: str) -> Iterator[tuple[int, str]]:
    """What a guide's text may not hold, each as a pair of line (from 0) and message."""
    for match in RAW.finditer(text):
        yield line_of(text, match.start()), NO_HTML.format(text[match.start() :].split()[0][:20])
    yield from markdown_faults(text)


def page_faults(text: str) -> Iterator[tuple[int, str]]:
    """What another page of docs/ may not hold, each as a pair of line (from 0) and message."""
    reader = TagReader()
    reader.feed(text)
    reader.close()
    yield from reader.faults
    yield from markdown_faults(text)


def markdown_faults(text: str) -> Iterator[tuple[int, str]]:
    """Links and attributes of Markdown that would bring in more than words.

    Each is a pair of line (from 0) and message.
    """
    for match in LINK.finditer(text):
        if not PLAIN_ADDRESS.fullmatch(match[1]):
            yield line_of(text, match.start()), NO_ADDRESS.format(match[1][:40])
    for match in IMAGE.finditer(text):
        yield line_of(text, match.start()), "holds an image; drawings are made from records"
    for match in REFERENCE.finditer(text):
        yield line_of(text, match.end()), "defines a link by a name; write the link where it stands"
    for match in BRACE.finditer(text):
        yield line_of(text, match.start()), UNKNOWN_MARK


def line_of(text: str, position: int) -> int:
    """The line of a position, from 0. The ``position`` is a number of characters."""
    return text.count("\n", 0, position)


def harmless(text: str) -> str:
    """The text of a guide with nothing raw in it: tags read as they were written, bad links lead nowhere."""
    text = LINK.sub(lambda match: match[0] if PLAIN_ADDRESS.fullmatch(match[1]) else "](#)", text)
    text = REFERENCE.sub(lambda match: match[0].replace("[", "&#91;", 1), text)
    return BRACE.sub("&#123;", RAW.sub("&lt;", IMAGE.sub("&#33;", text)))


class TagReader(HTMLParser):
    """Judges every tag of a page of prose."""

    def __init__(self) -> None:
        super().__init__()
        self.faults: list[tuple[int, str]] = []

    def say(self, message: str) -> None:
        """Note a fault at the line that is read."""
        self.faults.append((self.getpos()[0] - 1, message))

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """A tag that may not stand, or stands with what it may not have."""
        if tag not in TAGS:
            self.say(NO_HTML.format(f"<{tag}"))
        for name, value in attrs:
            if name not in ATTRIBUTES and not name.startswith(FREE_ATTRIBUTES):
                self.say(f"holds the attribute {name}; it may not stand in a page")
            elif name in ADDRESSES and not PLAIN_ADDRESS.fullmatch(value or ""):
                self.say(NO_ADDRESS.format((value or "")[:40]))

    def handle_comment(self, data: str) -> None:
        """Comments hide what is read and what is not."""
        self.say(NO_HTML.format("<!--"))

    def handle_decl(self, decl: str) -> None:
        """No page declares what it is: the theme does."""
        self.say(NO_HTML.format("<!"))

    def unknown_decl(self, data: str) -> None:
        """The same for a section in brackets."""
        self.say(NO_HTML.format("<!["))

    def handle_pi(self, data: str) -> None:
        """Nothing is processed."""
        self.say(NO_HTML.format("<?"))
