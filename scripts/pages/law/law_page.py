"""Pages of law lists, of the places where they hold, and of sources."""

from calculators.core.wording import PLACES
from scripts.pages.cite import Citations
from scripts.pages.template import render
from scripts.records.law_matches import Listing, listings
from scripts.records.load import Library
from scripts.records.rule import Rule


def rule_page(slug: str, library: Library) -> str:
    """One list as Markdown, its names linked to the plants that have a record."""
    rule = library.rules[slug]
    plants: dict[str, list[str]] = {entry.name: [] for entry in rule.entries}
    only_this = {slug: rule}
    for plant_slug, plant in library.plants.items():
        for listing in listings(plant, only_this):
            plants[listing.entry.name].append(plant_slug)
    return render(
        "rule.md.j2",
        rule=rule,
        place=PLACES[rule.place],
        library=library,
        words=library.vocabulary,
        plants_of=plants,
        cite=Citations(library.sources),
    )


def place_page(key: str, library: Library) -> str:
    """What the law of one place means for a keeper, with its lists and our plants on them."""
    words = library.vocabulary
    return render(
        "place.md.j2",
        key=key,
        place_name=PLACES[key],
        place=library.places[key],
        rules=rules_of(key, library),
        plants=listed_plants(key, library),
        library=library,
        words=words,
        cite=Citations(library.sources),
    )


def rules_of(key: str, library: Library) -> dict[str, Rule]:
    """The lists of one place."""
    return {slug: rule for slug, rule in library.rules.items() if rule.place == key}


def listed_plants(key: str, library: Library) -> list[tuple[str, list[Listing]]]:
    """Our plants on the lists of one place, with their entries."""
    rules = rules_of(key, library)
    listings_by_plant = ((slug, listings(plant, rules)) for slug, plant in library.plants.items())
    return [(slug, listed) for slug, listed in listings_by_plant if listed]


def rules_page(library: Library) -> str:
    """The index of places and their lists."""
    marked = {slug: animal for slug, animal in library.animals.items() if animal.law}
    return render(
        "rules.md.j2",
        rules=library.rules,
        places=list(library.places),
        words=library.vocabulary,
        animals=marked,
    )


def sources_page(library: Library) -> str:
    """Every source in one list."""
    ordered = sorted(library.sources.items(), key=lambda item: (item[1].by, item[1].year or 0))
    return render("sources.md.j2", sources=ordered)
