"""The lean search index: one entry a page, all its names, and a line of text."""

import json
from collections.abc import Mapping
from functools import partial
from typing import NamedTuple

from scripts.pages.calculators import nitrogen_names
from scripts.pages.sought import read_sought
from scripts.pages.typed import read_typed
from scripts.records.calculator_facts import calculator_facts
from scripts.records.kept_pieces import PiecesByRecord
from scripts.records.law_matches import without_record
from scripts.records.load import Library
from scripts.records.names import NamedSpecies

NAMES = ("trade_names", "old_names", "uncertain_names", "family")  # fields that hold a name
NONE_KEPT = PiecesByRecord()
LINE = 160  # characters of text an entry shows
AMBIGUOUS = "name on labels"
# Behind what a page is of: the warning comes before all else that search says. finder.js knows it by "Never".
NEVER_PLANTED = "plant. Never planted from this book."
NEVER_OFFERED = "{group}. Never offered by this book."
NAMING = (  # small words, of which no phrase can be made
    "what plant is this", "which plant is this", "what is this plant", "what is this stem",
    "what is this moss", "what is this floater", "what have i got", "name a plant",
)  # fmt: skip
OVERVIEWS = (
    ("plants/", "Plants", "All plants, by kind and by what they are good for."),
    ("animals/", "Animals", "All animals, and what each does to plants and to the nitrogen."),
    ("plants/table/", "Table of plants", "All plants in one table, to sort and to filter."),
    ("plants/growth/", "Growth against light", "How fast each plant doubles, against its light."),
    ("identify/", "What have I got?", "Name a plant from what you see, a tap at a time.", *NAMING),
    ("rules/", "The law by place", "Plants that may not be kept, sold or moved, by country."),
    ("names/", "Names on labels", "Trade names that stand for more than one plant."),
)

# Plain words under which a keeper looks for a calculator, beside its title.
SOUGHT_AS: dict[str, list[str]] = {
    "acclimate": [
        "drip acclimation",
        "new fish",
        "new shrimp",
        "fish in a bag",
        "shipped bag",
        "how to add fish",
    ],
    "chloride": ["salt against nitrite", "how much salt", "salt for fish", "brown blood and salt"],
    "conditioner": [
        "dechlorinator",
        "dechlorinate",
        "chlorine in tap water",
        "chloramine",
        "thiosulfate",
        "water conditioner dose",
    ],
    "dosing": ["fertiliser dose", "how much fertiliser"],
    "floaters": ["thin floaters", "floating cover"],
    "free-ammonia": ["toxic ammonia", "ammonia test"],
    "hardness": ["CO2", "carbon dioxide", "GH", "KH"],
    "light": ["lamp hours", "how long to light", "PPFD", "DLI"],
    "medicine-volume": [
        "medicine dose",
        "how much medicine",
        "remedy dose",
        "redose after a water change",
        "copper medicine",
        "true volume",
    ],
    "pick": ["which plants", "what to plant", "plants for my tank"],
    "soil": ["bags of soil", "how much sand"],
    "stocking": ["how many fish", "how much to feed"],
    "tank": ["litres in a tank", "tank weight"],
    "units": ["convert", "ppm", "gallons"],
    "upkeep": ["how often to trim", "trim how often", "weekly work"],
    "ammonia-change": ["change water with ammonia", "ammonia in acid water"],
    "warmth": ["heater size", "heater watts", "cooling in a power cut"],
    "water-change": ["change water", "how much water to change"],
    "kh-budget": [
        "KH falls",
        "KH drops",
        "alkalinity used up",
        "how long KH lasts",
        "pH keeps falling",
    ],
    "top-up": ["evaporation", "topping up", "top off", "water level drops", "hardness rises"],
    "remineralise": [
        "RO water",
        "reverse osmosis",
        "distilled water",
        "rain water",
        "raise GH",
        "raise KH",
        "boost GH",
        "harder water",
        "minerals for RO",
        "gypsum",
        "epsom salt",
        "baking soda",
        "calcium and magnesium",
    ],
}


class SearchEntry(NamedTuple):
    """What search knows of a page: its address from the site's root, names, and a line to show.

    ``sought`` are phrases by which a keeper may mean it, ``typed`` words that keepers use for it; they are
    shown nowhere. ``urgency`` is a problem's, as key and words.
    """

    address: str
    kind: str
    title: str
    names: list[str]
    line: str
    sought: tuple[str, ...] = ()
    typed: str = ""
    urgency: tuple[str, ...] = ()


def entries(
    library: Library,
    prose: Mapping[str, tuple[str, str]],
    pieces: PiecesByRecord = NONE_KEPT,
) -> list[SearchEntry]:
    """All pages but the indexes. ``prose`` has title and description of each page written by people;
    ``pieces`` what is kept of the names of the living.
    """

    def names_of(kind: str, slug: str, living: NamedSpecies) -> list[str]:
        """Every name of a plant or an animal."""
        return pieces.of(kind, slug, partial(all_names, living), NAMES)

    listed_names = names_by_list(library)
    pages = [
        SearchEntry(
            f"plants/{slug}/",
            "plant" if plant.offered else NEVER_PLANTED,
            plant.name,
            names_of("plants", slug, plant),
            plant.verdict,
        )
        for slug, plant in library.plants.items()
    ]
    pages += [
        SearchEntry(
            f"animals/{slug}/",
            animal.group if animal.offered else NEVER_OFFERED.format(group=animal.group),
            animal.name,
            names_of("animals", slug, animal),
            animal.verdict,
        )
        for slug, animal in library.animals.items()
    ]
    pages += [
        SearchEntry(
            f"names/{slug}/", AMBIGUOUS, trade_name.name, trade_name.other_names, trade_name.summary
        )
        for slug, trade_name in library.names.items()
    ]
    pages += [
        SearchEntry(address, "guide", title, list(names), line)
        for address, title, line, *names in OVERVIEWS
    ]
    pages += [
        SearchEntry(
            f"problems/{slug}/",
            "problem",
            problem.name,
            problem.other_names,
            problem.summary,
            urgency=(problem.urgency, library.vocabulary["urgency"][problem.urgency]["label"]),
        )
        for slug, problem in library.problems.items()
    ]
    pages += [
        SearchEntry(
            f"calculators/{one.name}/",
            "calculator",
            one.title,
            SOUGHT_AS.get(one.name, []),
            one.purpose,
        )
        for one in calculator_facts()
    ]
    pages += [
        SearchEntry(
            f"rules/{slug}/",
            "law",
            f"{library.vocabulary['place'][rule.place]['label']}: {rule.title}",
            listed_names.get(slug, []),
            rule.short_effect,
        )
        for slug, rule in library.rules.items()
    ]
    pages.append(
        SearchEntry(
            nitrogen_names.ADDRESS,
            "guide",
            nitrogen_names.TITLE,
            nitrogen_names.OTHER_NAMES,
            nitrogen_names.DESCRIPTION,
        )
    )
    pages += [
        SearchEntry(
            f"rules/{key}/",
            "law",
            f"The law: {library.vocabulary['place'][key]['label']}",
            [],
            place.may_not[0].text,
        )
        for key, place in library.places.items()
    ]
    pages += [
        SearchEntry(f"guides/{slug}/", "guide", guide.title, guide.also, guide.description)
        for slug, guide in library.guides.items()
    ]
    pages += [
        SearchEntry(address, "guide", title, [], line) for address, (title, line) in prose.items()
    ]
    pieces.keep()
    sought, typed = read_sought(library), read_typed()
    return [
        entry._replace(sought=sought.get(entry.address, ()), typed=typed.get(entry.address, ""))
        for entry in pages
    ]


def names_by_list(library: Library) -> dict[str, list[str]]:
    """What each law list names that has no page, by the list's key: scientific and common names."""
    names: dict[str, list[str]] = {}
    for listing in without_record(library.plants.values(), library.rules):
        entry = listing.entry
        common = [common.name for common in entry.common]
        names.setdefault(listing.slug, []).extend([entry.name, *entry.also, *common])
    return names


def all_names(living: NamedSpecies) -> list[str]:
    """Every name that a person may know a plant or an animal by."""
    uncertain = [claimed.name for claimed in living.uncertain_names]
    return [*living.trade_names, *living.old_names, *uncertain, living.family]


def index(pages: list[SearchEntry]) -> str:
    """The entries as JSON, each a list, in the order of ``Entry``'s fields."""
    rows = [[*entry[:4], cut(entry.line), *entry[5:]] for entry in pages]
    return json.dumps(rows, ensure_ascii=False, separators=(",", ":"))


def cut(text: str) -> str:
    """A line cut at a word."""
    return text if len(text) <= LINE else text[:LINE].rsplit(" ", 1)[0] + "…"
