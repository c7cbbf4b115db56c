"""Every generated file of the site's source, by path; knows nothing of the site builder."""

from calculators.core.listing import load_all
from scripts.pages.animals import animal_page, animals_page
from scripts.pages.calculators import calculator_page, calculators_page, description
from scripts.pages.compare_data import compare_data
from scripts.pages.diagnosis import key_page, symptoms_page
from scripts.pages.growth_light import growth_light_page
from scripts.pages.guides import guide_page, guides_page
from scripts.pages.names import name_page, names_page
from scripts.pages.nitrogen_model import model_page
from scripts.pages.plant_table import table_page
from scripts.pages.plants import plant_page, plants_page
from scripts.pages.problems import all_problems_page, problem_page, problems_page
from scripts.pages.rules import place_page, rule_page, rules_page, sources_page
from scripts.pages.suggest import plants as suggested_plants
from scripts.records.load import Library


def generated(library: Library) -> dict[str, str]:
    """``{path below build/docs: text}`` for all pages and data that come from records and calculators."""
    files = {
        "plants/index.md": plants_page(library),
        "animals/index.md": animals_page(library),
        "plants/table.md": table_page(library),
        "plants/growth.md": growth_light_page(library),
        "names/index.md": names_page(library),
        "assets/compare.json": compare_data(library),
        "problems/index.md": problems_page(library),
        "problems/all.md": all_problems_page(library),
        "problems/key.md": key_page(library),
        "problems/symptoms.md": symptoms_page(library),
        "calculators/index.md": calculators_page(),
        "nitrogen-model.md": model_page(library),
        "rules/index.md": rules_page(library),
        "guides/index.md": guides_page(library),
        "sources.md": sources_page(library),
        "assets/suggest/plants.json": suggested_plants(library),
    }
    for slug in library.plants:
        files[f"plants/{slug}.md"] = plant_page(slug, library)
    for slug in library.animals:
        files[f"animals/{slug}.md"] = animal_page(slug, library)
    for slug in library.problems:
        files[f"problems/{slug}.md"] = problem_page(slug, library)
    for slug in library.names:
        files[f"names/{slug}.md"] = name_page(slug, library)
    for slug in library.rules:
        files[f"rules/{slug}.md"] = rule_page(slug, library)
    for slug in library.guides:
        files[f"guides/{slug}.md"] = guide_page(slug, library)
    for key in library.places:
        files[f"rules/{key}.md"] = place_page(key, library)
    for name, spec in load_all().items():
        files[f"calculators/{name}.md"] = calculator_page(spec, library)
        files[f"assets/calculators/{name}.json"] = description(spec)
    return files
