"""Pages of animals: their figures are the calculator's, and they and the plants' pages name each other."""

import json
import re
from urllib.parse import parse_qs, urljoin, urlsplit

import pytest

from calculators.core.run import run
from calculators.science.animals.animal_table import ANIMALS
from scripts.pages.animals.by_kind import plants_by_kind
from scripts.pages.animals.neighbours import neighbours
from scripts.pages.animals.worked_load import worked
from scripts.records.law_matches import listings
from tests.effort import long_run, share_of
from tests.own_records import own_records
from tests.test_site import Page

LIBRARY = own_records()
SOME = share_of([*LIBRARY.animals], 4)


@pytest.fixture(scope="module")
def page(site):
    """Reads a page of the built site by its folder."""
    return lambda address: Page((site / address / "index.html").read_text(encoding="utf-8"))


def text_of(page):
    return " ".join(page.text.split())


def test_the_calculator_and_the_pages_know_the_same_animals():
    assert set(ANIMALS) == set(LIBRARY.animals)


@pytest.mark.parametrize("slug", SOME)
def test_the_worked_figure_is_what_its_link_computes(slug, page):
    animal = LIBRARY.animals[slug]
    shown = page(f"animals/{slug}")
    link = next(one for one in shown.links if "calculators/stocking/?" in one)
    (stock,) = json.loads(parse_qs(urlsplit(link).query)["animals"][0])
    most = animal.group_of.most
    assert stock["kind"] == slug
    assert stock["count"] == (10 if most is None else min(most, 10))
    length = animal.body.length_mm
    assert length.low <= stock["mean_length_mm"] <= length.high
    found = run("stocking", {"animals": [stock]})["outputs"]
    text = text_of(shown)
    feed = float(re.search(r"Dry feed a week\s*([\d.]+) g", text)[1])
    ammonia = float(re.search(r"Ammonia nitrogen a day\s*([\d.]+) mg N", text)[1])
    mass = float(re.search(r"Living mass\s*([\d.]+) g", text)[1])
    for figure, key in ((feed, "feed_g_week"), (ammonia, "ammonia_n_mg_day"), (mass, "biomass_g")):
        assert figure == pytest.approx(found[key], rel=0.05)


def test_ten_neons_by_hand():
    # By hand: ten of 28 mm at 0.01 x 2.8^3.05 g, 2 % of their mass a day, 45 % protein, 0.092 g N a gram.
    figures = worked("paracheirodon-innesi", LIBRARY.animals["paracheirodon-innesi"])
    mass = 10 * 0.01 * 2.8**3.05
    assert float(figures.mass_g) == pytest.approx(mass, rel=0.05)
    assert float(figures.feed_g_week) == pytest.approx(7 * 0.02 * mass, rel=0.05)
    nitrogen = 1000 * 0.02 * mass * 0.45 * 0.092
    assert float(figures.ammonia_n_mg_day) == pytest.approx(nitrogen, rel=0.05)


@pytest.mark.parametrize("slug", SOME)
def test_a_page_says_needs_sensitivity_with_its_first_action_and_never_release(slug, page):
    animal, text = LIBRARY.animals[slug], text_of(page(f"animals/{slug}"))
    for claim, problem in (
        (animal.sensitivity.copper, "copper-poisoning"),
        (animal.sensitivity.ammonia, "ammonia-emergency"),
    ):
        action = " ".join(LIBRARY.problems[problem].first_action.text.split())
        assert text.index(" ".join(claim.text.split())) < text.index(action)
    assert " ".join(animal.release.text.split()) in text
    assert "Water temperature" in text
    for mark in animal.law:
        assert " ".join(mark.text.split()) in text
        assert text.index("The law has a say") < text.index("What it needs")


@long_run()
@pytest.mark.parametrize("slug", SOME)
def test_plants_and_animals_name_each_other(slug, page):
    animal, links = LIBRARY.animals[slug], page(f"animals/{slug}").links
    for plant in {*animal.suits.plants, *(one for harm in animal.harms for one in harm.plants)}:
        assert f"../../plants/{plant}/" in links
        assert f"../../animals/{slug}/" in page(f"plants/{plant}").links


def test_a_plant_names_what_eats_nibbles_and_uproots_it_apart():
    elodea = neighbours("elodea-canadensis", LIBRARY)
    assert [slug for slug, _ in elodea.eats] == ["lymnaea-stagnalis"]
    assert [slug for slug, _ in elodea.nibbles] == ["physella-acuta"]
    assert "tanichthys-albonubes" in dict(elodea.suits)
    assert dict(neighbours("glossostigma-elatinoides", LIBRARY).uproots)
    assert not any(neighbours("houttuynia-cordata", LIBRARY))


@long_run()
def test_a_kind_of_plant_eater_and_the_plants_that_name_it_name_each_other(page):
    goldfish = LIBRARY.animals["carassius-auratus"]
    by_kind = plants_by_kind(goldfish, LIBRARY)
    assert {"nymphaea-lotus", "hygrophila-difformis"} <= set(by_kind.eaten)
    assert "bacopa-monnieri" in by_kind.nipped
    assert not set(by_kind.eaten) & set(by_kind.nipped)
    links = page("animals/carassius-auratus").links
    for plant in (*by_kind.eaten, *by_kind.nipped):
        assert f"../../plants/{plant}/" in links
        assert "../../animals/carassius-auratus/" in page(f"plants/{plant}").links
    assert not plants_by_kind(LIBRARY.animals["danio-rerio"], LIBRARY).eaten


def test_who_is_never_offered_is_warned_of_first_and_has_steps(page, site):
    never = [slug for slug, animal in LIBRARY.animals.items() if not animal.offered]
    assert never
    rows = json.loads((site / "assets" / "search.json").read_text(encoding="utf-8"))
    kinds = {address: kind for address, kind, *_ in rows}
    for slug in never:
        html = (site / "animals" / slug / "index.html").read_text(encoding="utf-8")
        assert html.index("Never offered by this book.") < html.index("<figure")
        steps = html[html.index('id="found"') : html.index('id="needs"')]
        for word in ("Do not swap it", "drain", "authority", "../../rules/eu/"):
            assert word in steps, (slug, word)
        assert kinds[f"animals/{slug}/"].endswith(". Never offered by this book.")
        note = str(
            run("stocking", {"animals": [{"kind": slug, "count": 1, "mean_length_mm": 30}]})[
                "notes"
            ]
        )
        assert "never offered by this book" in note
    calm = run("stocking", {"animals": [{"kind": "danio-rerio", "count": 8, "mean_length_mm": 30}]})
    assert "never offered" not in str(calm["notes"])


@pytest.mark.parametrize("slug", SOME)
def test_a_page_draws_its_animal_in_words_too(slug, page, site):
    html = (site / "animals" / slug / "index.html").read_text(encoding="utf-8")
    animal = LIBRARY.animals[slug]
    assert f'aria-label="{animal.name} at {animal.body.typical_mm} mm' in html
    assert "not the look of a species" in text_of(page(f"animals/{slug}"))


def test_a_restricted_plant_is_never_recommended_without_saying_so(page):
    found = 0
    for slug, animal in LIBRARY.animals.items():
        text = text_of(page(f"animals/{slug}"))
        for plant in animal.suits.plants:
            record = LIBRARY.plants[plant]
            if listings(record, LIBRARY.rules):
                found += 1
                assert f"{record.name} (restricted by law in places)" in text, (slug, plant)
    assert found


def test_the_index_lists_each_once_under_its_group(page, site):
    index = page("animals")
    for slug in LIBRARY.animals:
        assert index.links.count(f"{slug}/") == 1
    assert {"fish", "shrimp", "crayfish", "snail", "clam"} <= set(index.ids)
    for address in ("", "plants", "danger", "rules", "animals/danio-rerio"):
        base = f"https://book.example/{address}/" if address else "https://book.example/"
        paths = {urlsplit(urljoin(base, link)).path for link in page(address).links}
        assert "/animals/" in paths, address


def test_search_knows_every_animal_by_all_its_names(site):
    rows = json.loads((site / "assets" / "search.json").read_text(encoding="utf-8"))
    by_address = {address: (kind, title, names) for address, kind, title, names, *_ in rows}
    for slug, animal in LIBRARY.animals.items():
        kind, title, names = by_address[f"animals/{slug}/"]
        assert (kind.split(".")[0], title) == (animal.group, animal.name)
        uncertain = {one.name for one in animal.uncertain_names}
        assert {*animal.trade_names, *animal.old_names, *uncertain} <= set(names)


def test_the_stocking_form_offers_every_animal_by_its_names(site):
    html = (site / "calculators" / "stocking" / "index.html").read_text(encoding="utf-8")
    for slug, animal in LIBRARY.animals.items():
        option = re.search(rf'<option value="{slug}"[^>]*>([^<]*)</option>', html)
        assert animal.name in option[1]
        assert animal.trade_names[0].split("'")[0] in option[1]
