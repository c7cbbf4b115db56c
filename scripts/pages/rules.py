"""Pages of law lists and of sources."""

from scripts.pages.law import species
from scripts.pages.template import render
from scripts.records.load import Library


def rule_page(slug: str, library: Library) -> str:
    """One list as Markdown, its names linked to the plants that have a record."""
    by_name = {
        species(name): plant_slug
        for plant_slug, plant in library.plants.items()
        for name in (*plant.old_names, plant.name)
    }
    rule = library.rules[slug]
    return render(
        "rule.md.j2",
        rule=rule,
        library=library,
        words=library.vocabulary,
        plants_of={entry.name: by_name.get(species(entry.name)) for entry in rule.entries},
    )


def rules_page(library: Library) -> str:
    """The index of the lists."""
    marked = {slug: animal for slug, animal in library.animals.items() if animal.law}
    return render("rules.md.j2", rules=library.rules, words=library.vocabulary, animals=marked)


def sources_page(library: Library) -> str:
    """Every source in one list."""
    ordered = sorted(library.sources.items(), key=lambda item: (item[1].by, item[1].year or 0))
    return render("sources.md.j2", sources=ordered)
