"""What keepers type when they want a page: species/sought.yml, phrases by the page's address.

The search meets them in the browser (docs/assets/intent.js); the head of the file says how they are written.
"""

import re
from collections.abc import Iterable
from functools import partial
from pathlib import Path

import yaml
from pydantic import TypeAdapter

from scripts.records.load import Library
from scripts.records.parse import LOADER
from scripts.setup.kept import kept
from scripts.setup.paths import SPECIES

SOUGHT_FILE = SPECIES / "sought.yml"
SYNONYMS_FILE = SPECIES / "synonyms.yml"
PHRASES = TypeAdapter(dict[str, tuple[str, ...]])
SYNONYMS = TypeAdapter(tuple[str, ...])
# What keepers call them for short, beside every word of the records' names: common practice.
ANY_ANIMAL = (
    "animal", "creature", "critter", "fish", "livestock", "pet", "prawn", "shrimp", "shrimplet", "snail",
    "fry", "babies", "cory", "corie", "oto", "pleco", "plec", "loach", "betta", "gourami", "barb", "molly",
    "platy", "swordtail", "killi", "cichlid", "angelfish", "goldfish", "nerite", "ramshorn", "amano", "neo",
    "cherrie",
)  # fmt: skip
FLOATERS = (
    "floater", "floaters", "floating", "frogbit", "duckweed", "salvinia", "watermoss", "spangles", "lemna",
    "azolla", "pistia",
)  # fmt: skip
LETTERS = 4  # of a name's word at least
# Words of animals' names that mean something else beside a plant, a pane or a leaf.
OTHERWISE = frozenset((
    "albino", "algae", "apple", "asian", "bamboo", "black", "bladder", "blue", "borneo", "bronze",
    "butterfly", "cape", "celestial", "cherry", "chili", "cloud", "cockatoo", "comet", "crystal",
    "dwarf", "eater", "elephant", "ember", "emerald", "filter", "freshwater", "galaxy", "ghost",
    "glass", "golden", "great", "green", "hillstream", "honey", "horned", "indian", "japanese",
    "lace", "least", "lopez", "malaysian", "marbled", "mexican", "mosaic", "mosquito", "mountain",
    "mystery", "nose", "orange", "paradise", "pearl", "pepper", "peppered", "pond", "pygmy",
    "rabbit", "rosy", "salt", "scarlet", "southern", "sparkling", "spotted", "sucker", "sumatra",
    "thorn", "tiger", "trumpet", "weather", "white", "zebra",
))  # fmt: skip


def read_sought(library: Library) -> dict[str, tuple[str, ...]]:
    """The phrases of each address. Raises ``pydantic.ValidationError`` where the file holds anything else."""
    written = read_phrases(SOUGHT_FILE)
    synonyms = read_synonyms()
    animals = [name for animal in library.animals.values() for name in animal.trade_names]
    animals += [animal.name.split()[0] for animal in library.animals.values()]  # the genus alone
    places = {
        "{animal}": "|".join([*ANY_ANIMAL, *words_of(animals)]),
        "{floater}": "|".join(FLOATERS),
    }
    return {
        address: tuple(with_synonyms(filled(phrase, places), synonyms) for phrase in phrases)
        for address, phrases in written.items()
    }


def read_phrases(path: Path) -> dict[str, tuple[str, ...]]:
    """The phrases in a file by address, parsed once for its text.

    Raises ``pydantic.ValidationError`` where it holds anything else.
    """
    text = path.read_text(encoding="utf-8")
    known = kept("phrases", f"{yaml.__version__}\0{text}", partial(phrases_in, text))
    return PHRASES.validate_json(known)


def phrases_in(text: str) -> str:
    """The phrases of a text as JSON. Raises ``pydantic.ValidationError``."""
    return PHRASES.dump_json(PHRASES.validate_python(yaml.load(text, LOADER))).decode()


def words_of(names: Iterable[str]) -> list[str]:
    """The words of names that can stand for the living thing alone, each once."""
    words = {word.lower() for name in names for word in re.findall(r"[^\W\d_]+", name)}
    return sorted(word for word in words if len(word) >= LETTERS and word not in OTHERWISE)


def filled(phrase: str, places: dict[str, str]) -> str:
    """A phrase with the names put where they belong."""
    for mark, words in places.items():
        phrase = phrase.replace(mark, words)
    return phrase


def read_synonyms() -> dict[str, tuple[str, ...]]:
    """For each word that has others of the same meaning, all of them. Raises ``pydantic.ValidationError``."""
    written = yaml.load(SYNONYMS_FILE.read_text(encoding="utf-8"), LOADER)
    rows = [tuple(row.split()) for row in SYNONYMS.validate_python(written)]
    return {word: row for row in rows for word in row}


def with_synonyms(phrase: str, synonyms: dict[str, tuple[str, ...]]) -> str:
    """A phrase whose places also hold what means the same as a word in them."""
    mark, space, rest = phrase.partition(" ") if phrase.startswith("!") else ("", "", phrase)
    places = (
        "|".join(
            dict.fromkeys(
                other for word in place.split("|") for other in synonyms.get(word, (word,))
            )
        )
        for place in rest.split()
    )
    return f"{mark}{space}{' '.join(places)}"
