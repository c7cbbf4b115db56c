"""Plants that the book never plants: no list offers them, and a keeper who meets one is warned first."""

import json

import pytest
import yaml

from calculators.core.run import find, run
from calculators.core.wording import PLACES
from calculators.diagnose.problem_table import PLANTS as DIAGNOSED
from calculators.floaters.floater_table import PLANTS as FLOATERS
from calculators.pick.plant_table import book
from scripts.pages.calculators.suggest import plants as suggested
from scripts.pages.plants.compare_data import compare_data
from scripts.pages.search import entries
from scripts.pages.shelf.shelf_names import names_json
from scripts.records.load import read_records
from scripts.setup.paths import SPECIES

# Banned in many places and still swapped: the lists of species/rules name every one of them.
BANNED = {
    "alternanthera-philoxeroides", "azolla-pinnata", "cabomba-aquatica", "cabomba-furcata",
    "crassula-helmsii", "elodea-nuttallii", "gymnocoronis-spilanthoides", "hydrilla-verticillata",
    "hydrocharis-morsus-ranae", "hydrocotyle-ranunculoides", "lagarosiphon-major",
    "ludwigia-grandiflora", "ludwigia-peploides", "myriophyllum-aquaticum",
    "myriophyllum-heterophyllum", "myriophyllum-spicatum", "pontederia-crassipes",
    "salvinia-molesta", "salvinia-natans", "utricularia-gibba",
}  # fmt: skip
WARNING = "Never planted from this book."


@pytest.fixture(scope="module")
def never(library):
    return library.plants.keys() - library.offered().keys()


def test_these_are_never_offered(never):
    assert never == BANNED


@pytest.mark.parametrize("place", [*PLACES, "other", None])
def test_none_is_ranked_put_in_a_set_or_named_in_place_of_another_anywhere(place, never):
    outputs = run("pick", {"place": place, "count": 40, "animals": None})
    words = json.dumps(outputs, default=str)
    for slug in never:
        assert slug not in words
    set_for = run("pick", {"place": place, "habits": ["stem", "floater"], "demand_mg_n_day": 4})
    rows = [*set_for["outputs"]["ranked"], *(set_for["outputs"]["together"] or [])]
    assert rows
    assert not {row["plant"] for row in rows} & never


def test_no_list_to_choose_from_holds_one(library, never):
    names = {library.plants[slug].name for slug in never}
    assert not book().plants.keys() & never
    assert not FLOATERS.keys() & never
    assert not DIAGNOSED.keys() & never
    assert not json.loads(suggested(library))["names"].keys() & names
    for calculator in ("floaters", "diagnose"):
        (field,) = [one for one in find(calculator).inputs if one.key == "plant"]
        assert field.choices
        assert not set(field.choices) & never
    for animal in library.animals.values():
        assert not set(animal.suits.plants) & never


def test_the_shelf_and_the_comparison_know_one_by_name_and_warn(library, never):
    shelf = json.loads(names_json(library))
    assert set(shelf["never"]["keys"]) == never
    assert never <= {row[0] for row in shelf["plants"]}
    compared = json.loads(compare_data(library))["plants"]
    assert {slug for slug, plant in compared.items() if plant["never"]} == never


def test_each_has_its_page_with_the_warning_before_the_picture(site, never):
    assert never
    for slug in never:
        page = (site / "plants" / slug / "index.html").read_text(encoding="utf-8")
        assert WARNING in page, slug
        assert page.index(WARNING) < page.index("<figure"), slug
        assert page.index(WARNING) < page.index("How to know it"), slug
        assert 'id="found"' in page
        for left_out in ('id="planting"', 'id="trimming"', 'id="needs"', "problems/?plant="):
            assert left_out not in page, (slug, left_out)


def test_search_finds_each_with_the_warning_first(library, never):
    found = {entry.address: entry for entry in entries(library, {})}
    for slug in never:
        assert found[f"plants/{slug}/"].kind.endswith(WARNING)
    assert not found["plants/rotala-rotundifolia/"].kind.endswith(WARNING)


def test_a_find_is_neither_planted_nor_let_out(site, never):
    """The usual caution: what not to do with it, and whom to ask, stand on every page, before the rest."""
    for slug in never:
        page = (site / "plants" / slug / "index.html").read_text(encoding="utf-8")
        steps = page[page.index('id="found"') : page.index('id="names"')]
        for word in ("Do not plant it", "drain", "pond", "compost", "ask your authority"):
            assert word in steps, (slug, word)
        assert 'href="../../rules/nz/"' in steps


def test_only_such_a_plant_may_leave_out_how_it_is_grown(tmp_path):
    plant = yaml.safe_load((SPECIES / "plants" / "lemna-minor.yml").read_text(encoding="utf-8"))
    del plant["care"]
    (tmp_path / "plants").mkdir()
    path = tmp_path / "plants" / "lemna-minor.yml"
    path.write_text(yaml.safe_dump(plant, allow_unicode=True), encoding="utf-8")
    said = " ".join(str(fault) for fault in read_records(tmp_path).faults)
    assert "nitrogen" not in said
    assert "care must be there, unless never_offered says why" in said
