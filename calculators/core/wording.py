"""Words that several calculators need, so that a caution reads the same everywhere."""

from collections.abc import Sequence

from calculators.core.result import Link, Note

# Places of which law lists are held, by the key of the records.
PLACES = {
    "us": "the United States",
    "eu": "the European Union",
    "gb": "Great Britain",
    "au": "Australia",
    "nz": "New Zealand",
}
DANGER_PAGE = Link("Animals in danger: what to do", "danger/")
FISH_IN_TROUBLE = Note(
    "danger",
    "If animals gasp, lie down or dart about, act first and measure later: add air, stop feeding, "
    "and take out what is dead. Then test ammonia before you change water: if it shows, the wrong "
    "water can make it toxic. If none shows, change a third with dechlorinated water of the same "
    "temperature. Ask a vet who treats fish if it goes on.",
)
CHANGE_WITH_CARE = Note(
    "caution",
    "Change with dechlorinated water within 2 °C (4 °F) of the tank's. Pull the plug of the heater "
    "and lamp before you put your hands in.",
)
TESTED_TAP = Note(
    "info",
    "Test the tap as you test the tank: its own reading sets how low a change can go.",
)
CUTTINGS = Note(
    "caution",
    "Never put cuttings or tank water into a pond, stream or drain outdoors. Dispose of them as "
    "your local authority says.",
)
LAMP_OVER_WATER = Note(
    "caution",
    "A lamp over water: unplug it before your hands go in, let each cable hang in a loop below "
    "its socket, and ask an electrician where you are unsure.",
)


def upper(text: str) -> str:
    """A text with a capital; pH stays as it is written."""
    return text if text.startswith("pH") else text[:1].upper() + text[1:]


def counted(number: int, name: str) -> str:
    """A number of things in words; ``name`` is of one of them, and takes an s for more."""
    return f"{number} {name}" if number == 1 else f"{number} {name}s"


def first_of(words: Sequence[str], most: int, between: str = ", ") -> str:
    """The first words of many, and how many more there are."""
    more = len(words) - most
    others = f" and {more} more" if more > 0 else ""
    return f"{between.join(words[:most])}{others}"


def joined(words: list[str]) -> str:
    """Words as a list in a sentence."""
    return " and ".join([", ".join(words[:-1]), words[-1]] if len(words) > 1 else words)
