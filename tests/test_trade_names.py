"""Ambiguous trade names: mistakes are told at their line, and ours say what the law lists say."""

from collections import defaultdict

import yaml

from scripts.pages.plants.trade_names import candidates, pages_of
from tests.faults_of import lines, record_faults
from tests.plain_yaml import read_yaml
from tests.test_records import folder  # noqa: F401  the fixture

PLACES = {
    "us": "United States",
    "eu": "European Union",
    "gb": "Great Britain",
    "au": "Australia",
    "nz": "New Zealand",
}
FLOOR = 14  # records that the book set out to have at least


def messages(folder):  # noqa: F811
    """What the build says of the records alone."""
    return lines(record_faults(folder))


def candidate(**given):
    """A candidate with what every claim needs."""
    return {
        "how_often": "often",
        "text": "Said of it in shops.",
        "source": "common-practice",
        "sure": "reported",
    } | given


SPOILED = [
    ({"may_be": [candidate(plant="lemna-minor"), candidate(plant="lemna-minor")]},
     "may_be.1.plant: lemna-minor stands twice"),
    ({"may_be": [candidate(plant="lemna-minor"), candidate(name="Limnophila sessiliflora")]},
     "may_be.1.name: has a record: write plant: limnophila-sessiliflora"),
    ({"may_be": [candidate(plant="lemna-minor"), candidate(plant="no-such-plant")]},
     "may_be.1.plant: no-such-plant has no record in species/plants/"),
    ({"may_be": [candidate(), candidate(plant="lemna-minor")]},
     "may_be.0: needs plant (its record) or name"),
    ({"may_be": [candidate(plant="lemna-minor", name="Lemna"), candidate(name="X y")]},
     "may_be.0: needs plant (its record) or name"),
    ({"may_be": [candidate(plant="lemna-minor")]}, "may_be: must have at least 2"),
    ({"may_be": [candidate(name="A b"), candidate(name="C d")]},
     "may_be: names no plant that has a record"),
    ({"marks": []}, "marks: must have at least 1"),
    ({"ask": []}, "ask: must have at least 1"),
    ({"name": "Cabomba"}, "name: Cabomba has a page already"),
    ({"sold_in": "shops"}, "sold_in: unknown key"),
    ({"may_be": [candidate(plant="lemna-minor", how_often="80 %"), candidate(name="C d")]},
     "may_be.0.how_often: must be one of mostly, often, sometimes, seldom or not-known"),
]  # fmt: skip


def test_every_mistake_is_told_at_its_line(folder):  # noqa: F811
    good = read_yaml(folder / "names" / "ambulia.yml")
    texts = {}
    for number, (changes, _) in enumerate(SPOILED):
        value = good | {"name": f"Weed {number}", "other_names": []} | changes
        path = folder / "names" / f"weed-{number}.yml"
        path.write_text(yaml.safe_dump(value, sort_keys=False), encoding="utf-8")
        texts[number] = path.read_text(encoding="utf-8").splitlines()
    said = messages(folder)
    for number, (_, part) in enumerate(SPOILED):
        mine = [line for line in said if line.startswith(f"weed-{number}.yml:")]
        assert len(mine) == 1, mine
        assert part in mine[0]
    line = texts[2].index("  plant: no-such-plant") + 1
    assert any(one.startswith(f"weed-2.yml:{line}:") for one in said)


def test_there_are_enough_and_every_word_is_explained(library):
    assert len(library.names) >= FLOOR
    for one in library.names.values():
        assert {may.how_often for may in one.may_be} <= set(library.vocabulary["how_often"])


def test_a_trade_name_of_several_records_has_a_page(library):
    """Found by going through the records, so that a new record cannot slip in a double name."""
    accepted = {plant.name.lower() for plant in library.plants.values()}
    bearers = defaultdict(set)
    for slug, plant in library.plants.items():
        for name in (*plant.trade_names, *(one.name for one in plant.uncertain_names)):
            bearers[name.lower()].add(slug)
    paged = {
        name.lower() for one in library.names.values() for name in (one.name, *one.other_names)
    }
    double = {name for name, slugs in bearers.items() if len(slugs) > 1} - accepted
    assert len(double) >= 10
    assert double <= paged, double - paged


def test_what_matters_names_every_place_where_a_candidate_is_listed(library):
    """A forbidden plant under an allowed name is what the page is for."""
    for key, one in library.names.items():
        listed = {each.rule.place for may in candidates(one, library) for each in may.listed}
        said = {place for place, words in PLACES.items() if words in one.matters.text}
        missing = listed - said
        assert not missing, f"{key}: matters says nothing of {missing}"
        if one.matters.text.startswith(("On none of the lists", "No list", "No law")):
            assert not listed, key


def test_salvinia_names_tell_the_forbidden_from_the_allowed(library):
    """7 CFR 360.200(a), read in the text: four Salvinia are listed, S. minima is not."""
    found = {may.name: may.listed for may in candidates(library.names["salvinia-natans"], library)}
    assert not found["Salvinia minima"]
    assert {one.rule.place for one in found["Salvinia molesta"]} >= {"us", "eu"}
    assert [one.rule.place for one in found["Salvinia auriculata"]] == ["us"]


def test_every_candidate_with_a_record_links_to_the_page(site, library):
    for key, one in library.names.items():
        text = (site / "names" / key / "index.html").read_text(encoding="utf-8")
        for may in one.may_be:
            if may.plant:
                assert f'href="../../plants/{may.plant}/"' in text
                page = (site / "plants" / may.plant / "index.html").read_text(encoding="utf-8")
                assert f"../../names/{key}/" in page
                assert (key, one) in pages_of(may.plant, library)


def test_look_alikes_name_the_record_that_exists(library):
    """A look-alike under an accepted name must lead to its plant."""
    by_name = {plant.name: slug for slug, plant in library.plants.items()}
    for slug, plant in library.plants.items():
        for one in plant.look_alikes:
            if one.name in by_name and by_name[one.name] != slug:
                assert one.plant == by_name[one.name], f"{slug}: {one.name}"


def test_names_have_whole_brackets(library):
    """A comma inside brackets splits a YAML list; this is how it shows."""
    for slug, plant in library.plants.items():
        for name in (*plant.trade_names, *plant.old_names):
            assert name.count("(") == name.count(")"), f"{slug}: {name}"
