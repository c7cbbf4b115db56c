"""What keepers type when they want a page: species/sought.yml, phrases by the page's address.

The search meets them in the browser (docs/assets/intent.js); the head of the file says how they are written.
"""

import re
from collections.abc import Iterable

import yaml
from pydantic import TypeAdapter

from scripts.records.load import Library
from scripts.records.parse import LOADER
from scripts.setup.paths import SPECIES

SOUGHT_FILE = SPECIES / "sought.yml"
PHRASES = TypeAdapter(dict[str, tuple[str, ...]])
ANY_ANIMAL = ("animal", "creature", "fish", "livestock", "pet", "prawn", "shrimp", "snail", "fry")
FLOATERS = (
    "floater", "floaters", "floating", "frogbit", "duckweed", "salvinia", "watermoss", "spangles", "lemna",
    "azolla", "pistia",
)  # fmt: skip
LETTERS = 4  # of a name's word at least
# Words of animals' names that mean something else beside a plant, a pane or a leaf.
OTHERWISE = frozenset((
    "apple", "bamboo", "bladder", "blue", "cape", "celestial", "cherry", "cloud", "crystal", "dwarf", "ember",
    "filter", "galaxy", "ghost", "glass", "great", "honey", "japanese", "malaysian", "mountain", "mystery",
    "pearl", "pond", "pygmy", "southern", "spotted", "trumpet", "white",
))  # fmt: skip


def read_sought(library: Library) -> dict[str, tuple[str, ...]]:
    """The phrases of each address. Raises ``pydantic.ValidationError`` where the file holds anything else."""
    text = SOUGHT_FILE.read_text(encoding="utf-8")
    written = PHRASES.validate_python(yaml.load(text, LOADER))
    animals = (name for animal in library.animals.values() for name in animal.trade_names)
    places = {
        "{animal}": "|".join([*ANY_ANIMAL, *words_of(animals)]),
        "{floater}": "|".join(FLOATERS),
    }
    return {
        address: tuple(filled(phrase, places) for phrase in phrases)
        for address, phrases in written.items()
    }


def words_of(names: Iterable[str]) -> list[str]:
    """The words of names that can stand for the living thing alone, each once."""
    words = {word.lower() for name in names for word in re.findall(r"[^\W\d_]+", name)}
    return sorted(word for word in words if len(word) >= LETTERS and word not in OTHERWISE)


def filled(phrase: str, places: dict[str, str]) -> str:
    """A phrase with the names put where they belong."""
    for mark, words in places.items():
        phrase = phrase.replace(mark, words)
    return phrase
