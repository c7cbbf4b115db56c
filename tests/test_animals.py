import json
import shutil
import subprocess
import sys
from functools import cache
from zipfile import ZipFile

import pytest
import yaml
from pydantic import ValidationError

from scripts.records.animal import Animal
from scripts.records.claim import COMMON_PRACTICE, Claim
from scripts.setup.paths import ROOT
from tests.faults_of import record_faults
from tests.plain_yaml import read_yaml

RECORDS = ROOT / "species" / "animals"
PATHS = sorted(RECORDS.glob("*.yml"))


def read(path):
    return read_yaml(path)


@cache
def known_sources():
    return read_yaml(ROOT / "species" / "sources.yml").keys()


def claims(value):
    if isinstance(value, Claim):
        yield value
    if hasattr(value, "model_fields_set"):
        for _, part in value:
            yield from claims(part)
    elif isinstance(value, list):
        for part in value:
            yield from claims(part)


def test_there_are_animals_of_each_group():
    groups = {read(path)["group"] for path in PATHS}
    assert groups == {"fish", "shrimp", "snail"}
    assert len(PATHS) >= 25


@pytest.mark.parametrize("path", PATHS, ids=lambda path: path.stem)
def test_record_names_known_sources_and_claims_no_more_than_they_bear(path):
    sources = known_sources()
    record = Animal.model_validate(read(path))
    assert path.stem == record.name.lower().replace(" ", "-")
    found = list(claims(record))
    assert len(found) > 8
    for claim in found:
        assert set(claim.sources) <= {*sources, COMMON_PRACTICE}
        if set(claim.sources) == {COMMON_PRACTICE}:
            assert claim.sure != "well-documented"


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"group": "frog"}, "group"),
        ({"colour": "red"}, "colour"),
        ({"needs": {"temperature_c": {"low": 75, "high": 80, "source": "x", "sure": "reported"}}}, "needs"),
    ],
)  # fmt: skip
def test_a_wrong_record_is_refused(change, field):
    with pytest.raises(ValidationError) as wrong:
        Animal.model_validate(read(PATHS[0]) | change)
    assert wrong.value.errors()[0]["loc"][0] == field


def test_the_table_is_read_from_inside_a_zip(tmp_path):
    archive = tmp_path / "calculators.zip"
    with ZipFile(archive, "w") as packed:
        for path in (ROOT / "calculators").rglob("*"):
            if path.suffix in (".py", ".json"):
                packed.write(path, path.relative_to(ROOT))
    program = (
        f"import sys; sys.path.insert(0, {str(archive)!r})\n"
        "import json, calculators\n"
        "from calculators.core.run import run\n"
        "print(json.dumps([calculators.__file__, run('stocking', {})['outputs']]))"
    )
    ran = subprocess.run(
        [sys.executable, "-I", "-c", program],
        capture_output=True,
        text=True,
        check=True,
        cwd=tmp_path,
    )
    place, outputs = json.loads(ran.stdout)
    assert place.startswith(str(archive))
    assert outputs["biomass_g"] > 0


def masses(record):
    """Length in cm and mass in g at both ends of the recorded lengths."""
    weight, length = record.body.length_weight, record.body.length_mm
    return [(end / 10, weight.mass_g(end)) for end in (length.low, length.high)]


# Mass over length cubed, g/cm3. Fish: small fish whose length and weight others measured run from
# 0.0061 (Esomus danricus) to 0.0245 (the heaviest Trichogaster lalius), see the sources of those names;
# a third is allowed below and none above. Shrimp: between half a river prawn of 4 cm (0.0096 L^0.205,
# Sethi and others 2012) and a giant Atya (30.3 g at 102.7 mm, 0.028). Snails: below a whole apple snail
# with shell and water (63 g at 59.8 mm, 0.294, Pila globosa 2023); above a tenth of a slender cone of
# water as wide as a fifth of its height (0.001).
DENSITY = {"fish": (0.0041, 0.0245), "shrimp": (0.006, 0.028), "snail": (0.001, 0.294)}


@pytest.mark.parametrize("path", PATHS, ids=lambda path: path.stem)
def test_weights_are_believable_from_the_shortest_to_the_longest(path):
    record = Animal.model_validate(read(path))
    low, high = DENSITY[record.group]
    for length_cm, mass_g in masses(record):
        assert low <= mass_g / length_cm**3 <= high


# Laboratory medaka: 20 fish of 26 mm weighed 0.10 to 0.21 g (European Chemicals Agency, dossier 18284).
# The neon and the cherry shrimp: common practice, no source.
@pytest.mark.parametrize(
    ("slug", "length_mm", "low_g", "high_g"),
    [
        ("oryzias-latipes", 26, 0.10, 0.21),
        ("paracheirodon-innesi", 30, 0.2, 0.3),
        ("neocaridina-davidi", 25, 0.1, 0.2),
    ],
)
def test_weights_agree_with_animals_that_others_weighed(slug, length_mm, low_g, high_g):
    weight = Animal.model_validate(read(RECORDS / f"{slug}.yml")).body.length_weight
    assert low_g <= weight.mass_g(length_mm) <= high_g


# Studies that give the weight and not the length: grown zebrafish of 0.43 to 0.55 g (Lucas and Priede
# 1992), great pond snails of 2 to 3 g (Pieczynska 2003). The lengths are common practice, no source.
@pytest.mark.parametrize(
    ("slug", "lightest_g", "heaviest_g", "shortest_mm", "longest_mm"),
    [("danio-rerio", 0.43, 0.55, 30, 45), ("lymnaea-stagnalis", 2, 3, 30, 40)],
)
def test_grown_animals_of_a_study_would_have_a_grown_length(
    slug, lightest_g, heaviest_g, shortest_mm, longest_mm
):
    weight = Animal.model_validate(read(RECORDS / f"{slug}.yml")).body.length_weight
    assert weight.mass_g(shortest_mm) < lightest_g < heaviest_g < weight.mass_g(longest_mm)


def test_the_ramshorn_lies_between_the_two_readings_of_a_study_without_units():
    # Planorbarius corneus, Kolkata: living 0.396 x^2.74, shell 0.067 x^2.99; g and cm, or mg and mm.
    weight = Animal.model_validate(read(RECORDS / "planorbella-duryi.yml")).body.length_weight
    in_cm = 0.396 * 1.5**2.74 - 0.067 * 1.5**2.99
    in_mm = (0.396 * 15**2.74 - 0.067 * 15**2.99) / 1000
    assert in_mm < weight.mass_g(15) < in_cm


# FishBase, estimates by genus and body shape: the range beside each figure.
@pytest.mark.parametrize(
    ("slug", "low", "high"),
    [
        ("hyphessobrycon-amandae", 0.00498, 0.02769),
        ("paracheirodon-innesi", 0.00498, 0.02769),
        ("hemigrammus-erythrozonus", 0.00498, 0.02769),
        ("poecilia-reticulata", 0.00564, 0.03080),
        ("poecilia-wingei", 0.00564, 0.03080),
        ("aphyosemion-australe", 0.00414, 0.02103),
    ],
)
def test_a_lies_in_the_range_that_relatives_allow(slug, low, high):
    assert low <= Animal.model_validate(read(RECORDS / f"{slug}.yml")).body.length_weight.a <= high


def test_the_smaller_livebearer_and_the_dwarfs_weigh_less_than_their_relatives():
    def typical(slug):
        body = Animal.model_validate(read(RECORDS / f"{slug}.yml")).body
        return body.length_weight.mass_g(body.typical_mm)

    for small, large in (
        ("poecilia-wingei", "poecilia-reticulata"),
        ("corydoras-pygmaeus", "corydoras-paleatus"),
        ("danio-margaritatus", "danio-rerio"),
        ("neocaridina-davidi", "caridina-multidentata"),
        ("physella-acuta", "lymnaea-stagnalis"),
    ):
        assert typical(small) < typical(large) / 2


@pytest.mark.parametrize("path", PATHS, ids=lambda path: path.stem)
def test_no_animal_is_recommended_a_plant_that_it_harms(path):
    record = Animal.model_validate(read(path))
    for harm in record.harms:
        clash = set(harm.plants) & set(record.suits.plants)
        assert not clash or harm.does == "nibbles", clash


@pytest.mark.parametrize("path", PATHS, ids=lambda path: path.stem)
def test_plants_that_suit_it_share_its_warmth(path, library):
    record = Animal.model_validate(read(path))
    for slug in record.suits.plants:
        plant = library.plants[slug].needs.temperature_c
        if plant is not None:
            own = record.needs.temperature_c
            shared = min(own.high, plant.high) - max(own.low, plant.low)
            assert shared >= 3, f"{slug}: {plant.low} to {plant.high} °C"


def test_every_record_says_never_to_release_it_and_apple_snails_are_banned(library):
    for slug, animal in library.animals.items():
        assert animal.release.text.startswith("Never release it"), slug
    marks = {mark.place: mark for mark in library.animals["pomacea-diffusa"].law}
    # Decision 2012/697/EU, Article 1: the genus shall not be introduced into or spread within the Union.
    assert "banned" in marks["eu"].text
    assert "eu-2012-697" in marks["eu"].sources
    assert {"gb", "us"} <= set(marks)


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ({"suits": ["no-such-plant"]}, "no-such-plant has no record in species/plants/"),
        ({"suits": ["lemna-minor", "lemna-minor"]}, "lemna-minor stands twice"),
        ({"group_of": {"least": 6, "most": 2}}, "most must not be below least"),
        ({"law": "fr"}, "must be one of us, eu, gb, au or nz"),
    ],
)
def test_dangling_plants_and_impossible_groups_are_told(change, said, tmp_path):
    folder = tmp_path / "species"
    shutil.copytree(ROOT / "species", folder)
    path = folder / "animals" / "lymnaea-stagnalis.yml"
    value = read(path)
    if "suits" in change:
        value["suits"]["plants"] = change["suits"]
    elif "law" in change:
        value["law"][0]["place"] = change["law"]
    else:
        value["group_of"] |= change["group_of"]
    path.write_text(yaml.safe_dump(value), encoding="utf-8")
    assert said in "\n".join(map(str, record_faults(folder)))
