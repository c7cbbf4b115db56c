"""Blocks of HTML that pass through Markdown as they are, taken aside before it reads them.

Most of a page is HTML that a template has made. Markdown looks at it tag by tag, only to leave it as it was.
What is not plainly such a block is left to that look.
"""

import re
from collections.abc import Iterator
from functools import cache
from re import Match, Pattern

from markdown.preprocessors import Preprocessor

AFTER_FENCED_CODE = (
    22  # the order in which it runs, before Markdown's own look at HTML, which has 20
)
OPENING = re.compile(r"\n {0,3}<([A-Za-z][A-Za-z0-9-]*)|<[!?]")
# In a comment, a declaration, a script, a field of text, code or an attribute's value nothing is a tag.
MAY_HIDE_A_TAG = re.compile(
    r"""<(?:[!?]|(?i:script|style|textarea)\b)|`|=\s*(?:"[^"<]*|'[^'<]*)?<"""
)
BLANK_LINE = re.compile(r"\n *\n")


class ReadyBlocks(Preprocessor):
    """Puts each block that stands between blank lines among what Markdown leaves alone."""

    def run(self, lines: list[str]) -> list[str]:
        """The lines of a page, each block replaced by a mark that the end of the reading puts it back for."""
        text = "\n".join(["", *lines])  # so that the first line follows one too
        parts, end = [], 1
        for start, stop in self.blocks(text):
            parts += [text[end:start], self.md.htmlStash.store(f"{text[start:stop]}\n")]
            end = stop
        return "".join([*parts, text[end:]]).split("\n")

    def blocks(self, text: str) -> Iterator[tuple[int, int]]:
        """Each block, as the numbers of characters before it and up to its end: those that come before the
        first place where it takes Markdown to tell.
        """
        at = 0
        while opening := OPENING.search(text, at):
            name = opening[1]
            if name and not self.md.is_block_level(name.lower()):
                at = opening.end()
                continue
            stop = end_of(text, opening) if name else None
            if stop is None or not text.startswith("\n", stop):
                return
            start = opening.start() + 1
            block = text[start:stop]
            if MAY_HIDE_A_TAG.search(block):
                return
            if between_blank_lines(text, start, stop) and "markdown" not in block.lower():
                yield start, stop
            at = stop


def end_of(text: str, opening: Match[str]) -> int | None:
    """The number of characters before the end of the element that opens there; None where it has none."""
    depth = 0
    for tag in tags_named(opening[1]).finditer(text, opening.start()):
        depth += -1 if tag[1] else 1
        if not depth:
            return tag.end()
    return None


@cache
def tags_named(name: str) -> Pattern[str]:
    """The opening and closing tags of elements of a name."""
    return re.compile(rf"<(/?)(?i:{name})(?:>|(?=\s)[^>]*>)")


def between_blank_lines(text: str, start: int, stop: int) -> bool:
    """Whether a block begins its line, and has blank lines around it or the end of the page; ``start`` and
    ``stop`` are the numbers of characters before it and up to its end.
    """
    return (
        text[start] == "<"
        and (start == 1 or text[start - 2] == "\n")
        and BLANK_LINE.match(text, stop) is not None
    )
