"""Values of texts that an earlier build has parsed and found nothing wrong in: most files are the same again.

To parse and to judge them is nearly all of what reading the records takes. A text with anything wrong in it
is parsed and judged each time, so that what is said of it stays the same. With the value stand the facts that
a build has found in the text, one of them that its records hold.
"""

import hashlib
import marshal
from typing import Any, Self

import pydantic
import yaml

from scripts.records.lines import Document
from scripts.setup.kept import keep_blocks, recall_blocks

KIND = "parsed-texts"


class ParsedTexts:
    """Values and facts by the hash of their text; ``of`` names whose texts they are, such as a folder."""

    def __init__(self, of: str) -> None:
        self.of = of
        self.values: dict[str, tuple[Any, dict[str, Any]]] = {}
        self.blocks: dict[str, bytes] = {}  # the same, as they are kept
        self.asked: dict[str, Document] = {}

    @classmethod
    def kept(cls, of: str) -> Self:
        """Those that were kept last."""
        known = cls(of)
        for block in recall_blocks(KIND, ingredients(of)):
            name, value, facts = marshal.loads(block)
            known.values[name], known.blocks[name] = (value, facts), block
        return known

    def document(self, text: str) -> Document:
        """A text parsed, or its known value. Raises ``NotARecord``."""
        name = hashlib.sha256(text.encode()).hexdigest()
        if name in self.asked:
            return self.asked[name]
        if name in self.values:
            value, facts = self.values[name]
            self.asked[name] = Document.known(text, value, dict(facts))
            return self.asked[name]
        document = Document(text)
        if not document.faults and as_kept(document.value):
            self.asked[name] = document
        return document

    def keep(self) -> None:
        """Keep those that were asked for, where they or their facts are others than were there."""
        if self.asked.keys() != self.values.keys() or not all(map(self.is_kept, self.asked)):
            # One at a time: all of them are megabytes.
            keep_blocks(KIND, ingredients(self.of), map(self.block, self.asked))

    def block(self, name: str) -> bytes:
        """What is kept of a text that was asked for; mostly it is kept so already."""
        if self.is_kept(name):
            return self.blocks[name]
        document = self.asked[name]
        return as_kept([name, document.value, document.facts])

    def is_kept(self, name: str) -> bool:
        """Whether a text that was asked for is kept with all facts that were found in it."""
        return name in self.values and self.values[name][1].keys() == self.asked[name].facts.keys()


def as_kept(value: Any) -> bytes:
    """A value as this Python keeps plain ones, in a third of the time of JSON; nothing of a date."""
    try:
        return marshal.dumps(value)
    except ValueError:
        return b""


def ingredients(of: str) -> str:
    """What values follow from beside their text and our code."""
    return f"{of}\0{yaml.__version__}\0{pydantic.VERSION}"
