"""Every generated file of the site's source, by path; knows nothing of the site builder."""

from collections.abc import Callable
from functools import partial

from scripts.pages.animals.animal_page import animal_page, animals_page
from scripts.pages.calculators.calculator_page import calculator_page, calculators_page, description
from scripts.pages.calculators.nitrogen_model import model_page
from scripts.pages.calculators.suggest import plants as suggested_plants
from scripts.pages.guides import guide_page, guides_page
from scripts.pages.identify.identify_page import identify_page
from scripts.pages.law.law_page import place_page, rule_page, rules_page, sources_page
from scripts.pages.plants.all_plants_table import table_page
from scripts.pages.plants.compare_data import compare_data
from scripts.pages.plants.growth_light import growth_light_page
from scripts.pages.plants.plant_page import plant_page, plants_page
from scripts.pages.plants.thumbnails import ADDRESS as THUMBNAILS
from scripts.pages.plants.thumbnails import thumbnails
from scripts.pages.plants.trade_names import name_page, names_page
from scripts.pages.problems.drawn_signs import ADDRESS as SIGNS
from scripts.pages.problems.drawn_signs import signs_file
from scripts.pages.problems.on_paper import key_page, symptoms_page
from scripts.pages.problems.problem_page import all_problems_page, problem_page, problems_page
from scripts.pages.shelf.shelf_downloads import demo_json, fields_json, schema_json
from scripts.pages.shelf.shelf_names import kits_json, names_json
from scripts.records.calculator_facts import calculator_facts
from scripts.records.load import Library

OVERVIEWS: dict[str, Callable[[Library], str | bytes]] = {
    "plants/index.md": plants_page,
    "animals/index.md": animals_page,
    "plants/table.md": table_page,
    "plants/growth.md": growth_light_page,
    "names/index.md": names_page,
    "identify.md": identify_page,
    "assets/compare.json": compare_data,
    "problems/index.md": problems_page,
    "problems/all.md": all_problems_page,
    "problems/key.md": key_page,
    "problems/symptoms.md": symptoms_page,
    "nitrogen-model.md": model_page,
    "rules/index.md": rules_page,
    "guides/index.md": guides_page,
    "sources.md": sources_page,
    THUMBNAILS: thumbnails,
    SIGNS: signs_file,
    "assets/suggest/plants.json": suggested_plants,
    "assets/shelf/fields.json": fields_json,
    "assets/shelf/demo.json": demo_json,
    "assets/shelf/names.json": names_json,
    "assets/shelf/kits.json": kits_json,
    "shelf/tanks.schema.json": schema_json,
}

# A page for each record: by folder of the site, what makes it, and the library's field.
ONE_A_RECORD: dict[str, tuple[Callable[[str, Library], str], str]] = {
    "plants": (plant_page, "plants"),
    "animals": (animal_page, "animals"),
    "problems": (problem_page, "problems"),
    "names": (name_page, "names"),
    "rules": (rule_page, "rules"),
    "guides": (guide_page, "guides"),
}


def makers(library: Library) -> dict[str, Callable[[], str | bytes]]:
    """What makes each generated file, by path, so that one alone can be made."""
    made: dict[str, Callable[[], str | bytes]] = {
        name: partial(make, library) for name, make in OVERVIEWS.items()
    }
    made["calculators/index.md"] = calculators_page
    for folder, (make, records) in ONE_A_RECORD.items():
        for slug in getattr(library, records):
            made[f"{folder}/{slug}.md"] = partial(make, slug, library)
    for key in library.places:
        made[f"rules/{key}.md"] = partial(place_page, key, library)
    for one in calculator_facts():
        made[f"calculators/{one.name}.md"] = partial(calculator_page, one.name, library)
        made[f"assets/calculators/{one.name}.json"] = partial(description, one.name)
    return made
