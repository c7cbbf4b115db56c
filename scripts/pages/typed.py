"""What many keepers may type when they need a page first: species/typed/, phrases by the page's address.

The search counts their words (docs/assets/shared-words.js); the phrases are shown nowhere. They were written
by us, as common practice; nobody was asked.
"""

import re
from collections.abc import Iterable
from pathlib import Path

from scripts.pages.sought import read_phrases
from scripts.setup.paths import SPECIES

TYPED_FOLDER = SPECIES / "typed"


def read_typed(folder: Path = TYPED_FOLDER) -> dict[str, tuple[str, ...]]:
    """The phrases of each address.

    Raises ``pydantic.ValidationError`` where a file holds anything else, ``ValueError`` where an address
    stands in two files.
    """
    found: dict[str, tuple[str, ...]] = {}
    for path in sorted(folder.glob("*.yml")):
        pages = read_phrases(path)
        if twice := found.keys() & pages.keys():
            raise ValueError(f"{path.name}: {', '.join(sorted(twice))} stands in another file too")
        found |= pages
    return found


def words_typed(phrases: Iterable[str]) -> str:
    """The words of a page's phrases, each once: how often it came tells hardly more."""
    found = (re.findall(r"[^\W_]+(?:\.\d+)?", phrase.lower()) for phrase in phrases)
    return " ".join(dict.fromkeys(word for words in found for word in words))
