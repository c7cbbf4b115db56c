"""What many keepers may type when they need a page first: species/typed/, phrases by the page's address.

The search counts their words (docs/assets/shared-words.js); the phrases are shown nowhere. They were written
by us, as common practice; nobody was asked.
"""

import json
import re
from collections.abc import Iterable
from pathlib import Path

from scripts.pages.sought import read_phrases
from scripts.setup.kept import kept
from scripts.setup.paths import SPECIES

KIND = "words-typed"
TYPED_FOLDER = SPECIES / "typed"


def read_typed(folder: Path = TYPED_FOLDER) -> dict[str, str]:
    """The words of the phrases of each address, found once for a file's text.

    Raises ``pydantic.ValidationError`` where a file holds anything else, ``ValueError`` where an address
    stands in two files.
    """
    found: dict[str, str] = {}
    for path in sorted(folder.glob("*.yml")):
        pages = read_words(path)
        if twice := found.keys() & pages.keys():
            raise ValueError(f"{path.name}: {', '.join(sorted(twice))} stands in another file too")
        found |= pages
    return found


def read_words(path: Path) -> dict[str, str]:
    """The words of the phrases in a file, by address. Raises as ``read_phrases``."""

    def made() -> str:
        """The words as JSON."""
        return json.dumps({key: words_typed(of) for key, of in read_phrases(path).items()})

    known: dict[str, str] = json.loads(kept(KIND, path.read_text(encoding="utf-8"), made))
    return known


def words_typed(phrases: Iterable[str]) -> str:
    """The words of a page's phrases, each once: how often it came tells hardly more."""
    found = (re.findall(r"[^\W_]+(?:\.\d+)?", phrase.lower()) for phrase in phrases)
    return " ".join(dict.fromkeys(word for words in found for word in words))
