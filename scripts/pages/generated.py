"""Every generated file of the site's source, by path; knows nothing of the site builder."""

from calculators.core.listing import load_all
from scripts.pages.calculators import calculator_page, calculators_page, description
from scripts.pages.diagnosis import key_page, symptoms_page
from scripts.pages.plants import plant_page, plants_page
from scripts.pages.problems import all_problems_page, problem_page, problems_page
from scripts.pages.rules import rule_page, rules_page, sources_page
from scripts.records.load import Library


def generated(library: Library) -> dict[str, str]:
    """``{path below build/docs: text}`` for all pages and data that come from records and calculators."""
    files = {
        "plants/index.md": plants_page(library),
        "problems/index.md": problems_page(library),
        "problems/all.md": all_problems_page(library),
        "problems/key.md": key_page(library),
        "problems/symptoms.md": symptoms_page(library),
        "calculators/index.md": calculators_page(),
        "rules/index.md": rules_page(library),
        "sources.md": sources_page(library),
    }
    for slug in library.plants:
        files[f"plants/{slug}.md"] = plant_page(slug, library)
    for slug in library.problems:
        files[f"problems/{slug}.md"] = problem_page(slug, library)
    for slug in library.rules:
        files[f"rules/{slug}.md"] = rule_page(slug, library)
    for name, spec in load_all().items():
        files[f"calculators/{name}.md"] = calculator_page(spec, library)
        files[f"assets/calculators/{name}.json"] = description(spec)
    return files
