"""Every generated page of the site's source and what such pages load, by path; knows nothing of the site
builder.

What makes a page is named and imported when it makes one: a build of one changed record needs few of them,
and all take a tenth of a second to import.
"""

from collections.abc import Callable
from functools import partial
from pkgutil import resolve_name

from scripts.records.calculator_facts import calculator_facts
from scripts.records.load import Library

# What makes each, as ``module:function`` below this package; the function takes the library.
OVERVIEWS = {
    "plants/index.md": "plants.plant_page:plants_page",
    "animals/index.md": "animals.animal_page:animals_page",
    "plants/table.md": "plants.all_plants_table:table_page",
    "plants/growth.md": "plants.growth_light:growth_light_page",
    "names/index.md": "plants.trade_names:names_page",
    "identify.md": "identify.identify_page:identify_page",
    "assets/compare.json": "plants.compare_data:compare_data",
    "problems/index.md": "problems.problem_page:problems_page",
    "problems/all.md": "problems.problem_page:all_problems_page",
    "problems/key.md": "problems.on_paper:key_page",
    "problems/symptoms.md": "problems.on_paper:symptoms_page",
    "nitrogen-model.md": "calculators.nitrogen_model:model_page",
    "rules/index.md": "law.law_page:rules_page",
    "guides/index.md": "guides:guides_page",
    "sources.md": "law.law_page:sources_page",
    "assets/thumbnails.svg": "plants.thumbnails:thumbnails",
    "assets/signs.svg": "problems.drawn_signs:signs_file",
    "assets/suggest/plants.json": "calculators.suggest:plants",
    "assets/shelf/fields.json": "shelf.shelf_downloads:fields_json",
    "assets/shelf/demo.json": "shelf.shelf_downloads:demo_json",
    "assets/shelf/names.json": "shelf.shelf_names:names_json",
    "assets/shelf/kits.json": "shelf.shelf_names:kits_json",
    "shelf/tanks.schema.json": "shelf.shelf_downloads:schema_json",
}

# A page for each record: by folder of the site, which is the library's field too, what makes it of the
# record's key and the library.
ONE_A_RECORD = {
    "plants": "plants.plant_page:plant_page",
    "animals": "animals.animal_page:animal_page",
    "problems": "problems.problem_page:problem_page",
    "names": "plants.trade_names:name_page",
    "rules": "law.law_page:rule_page",
    "guides": "guides:guide_page",
}


def makers(library: Library) -> dict[str, Callable[[], str | bytes]]:
    """What makes each generated file, by path, so that one alone can be made."""
    made = {name: made_by(place, library) for name, place in OVERVIEWS.items()}
    made["calculators/index.md"] = made_by("calculators.calculator_page:calculators_page")
    for folder, place in ONE_A_RECORD.items():
        for slug in getattr(library, folder):
            made[f"{folder}/{slug}.md"] = made_by(place, slug, library)
    for key in library.places:
        made[f"rules/{key}.md"] = made_by("law.law_page:place_page", key, library)
    for one in calculator_facts():
        page, about = f"calculators/{one.name}.md", f"assets/calculators/{one.name}.json"
        made[page] = made_by("calculators.calculator_page:calculator_page", one.name, library)
        made[about] = made_by("calculators.calculator_page:description", one.name)
    return made


def import_all() -> None:
    """Import what makes the pages of records, for somebody who waits for one later."""
    for place in (*OVERVIEWS.values(), *ONE_A_RECORD.values()):
        resolve_name(f"{__package__}.{place}")


def made_by(place: str, *given: str | Library) -> Callable[[], str | bytes]:
    """What a function of this package, ``module:function``, makes of what it is given."""
    return partial(imported_and_called, f"{__package__}.{place}", *given)


def imported_and_called(place: str, *given: str | Library) -> str | bytes:
    """What the function makes. Raises what it raises."""
    made: str | bytes = resolve_name(place)(*given)
    return made
