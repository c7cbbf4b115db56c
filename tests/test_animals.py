import json
import math
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
from scripts.tables.plant_rows import grazers_of
from tests.effort import share_of
from tests.faults_of import record_faults
from tests.plain_yaml import read_yaml

RECORDS = ROOT / "species" / "animals"
PATHS = sorted(RECORDS.glob("*.yml"))
SOME = share_of(PATHS, 4)


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
    assert groups == {"fish", "shrimp", "crayfish", "snail", "clam"}
    assert len(PATHS) >= 60


@pytest.mark.parametrize("path", SOME, ids=lambda path: path.stem)
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
# water as wide as a fifth of its height (0.001). Crayfish: above a river prawn (0.0096 L^0.205), below the
# giant Atya, which has no such claws (0.028, twice). Clams, without the shell: below half a ball of water as
# wide as the shell is long (0.26), above a twentieth of it.
DENSITY = {
    "fish": (0.0041, 0.0245),
    "shrimp": (0.006, 0.028),
    "crayfish": (0.0096, 0.056),
    "snail": (0.001, 0.294),
    "clam": (0.013, 0.26),
}


@pytest.mark.parametrize("path", SOME, ids=lambda path: path.stem)
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


# Pethia conchonius, Atrai River: 1,746 fish with a condition factor of 1.08 to 2.11 (100 g/cm3); the
# shortest, 42 mm, of 1.0 g, and the longest, 81 mm, of 8.7 g (Roy and others 2023).
def test_the_rosy_barb_weighs_what_a_study_weighed():
    weight = Animal.model_validate(read(RECORDS / "pethia-conchonius.yml")).body.length_weight
    for length_mm, mass_g in ((42, 1.0), (81, 8.7)):
        assert weight.mass_g(length_mm) == pytest.approx(mass_g, rel=0.15)
        assert 1.08 <= 100 * weight.mass_g(length_mm) / (length_mm / 10) ** 3 <= 2.11


# Fantail goldfish of 5.16 cm weighed 2.30 g (Roslan and others 2021); the record's equation is of a relative.
def test_goldfish_weigh_what_fantails_of_a_study_weighed():
    weight = Animal.model_validate(read(RECORDS / "carassius-auratus.yml")).body.length_weight
    assert weight.mass_g(51.6) == pytest.approx(2.30, rel=0.15)


# The marbled crayfish: greatest mass 15 g (a growth model from Belarus, 2025); breeds from 1.4 g. The lengths
# are common practice, no source: it breeds from about 40 mm and is grown at 80 to 100.
def test_the_marbled_crayfish_breeds_and_ends_at_the_masses_of_a_study():
    weight = Animal.model_validate(read(RECORDS / "procambarus-virginalis.yml")).body.length_weight
    assert weight.mass_g(35) < 1.4 < weight.mass_g(45)
    assert weight.mass_g(80) < 15 < weight.mass_g(100)


@pytest.mark.parametrize("path", SOME, ids=lambda path: path.stem)
def test_a_fish_of_the_drawn_depth_and_the_recorded_mass_is_as_thick_as_fish_are(path):
    """By hand: a body of four fifths of the length, as an ellipsoid of water, between a disc a seventh as
    thick as deep and one that lies flat, wider than deep."""
    record = Animal.model_validate(read(path))
    if record.group != "fish":
        return
    length_cm = record.body.typical_mm / 10
    depth_cm = length_cm * record.body.shape.depth_percent / 100
    mass_g = record.body.length_weight.mass_g(record.body.typical_mm)
    thickness_cm = mass_g / (math.pi / 6 * 0.8 * length_cm * depth_cm)
    assert 1 / 7 <= thickness_cm / depth_cm <= 1.5


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


@pytest.mark.parametrize("path", SOME, ids=lambda path: path.stem)
def test_plants_that_suit_it_share_its_warmth(path, library):
    record = Animal.model_validate(read(path))
    for slug in record.suits.plants:
        plant = library.plants[slug].needs.temperature_c
        if plant is not None:
            own = record.needs.temperature_c
            shared = min(own.high, plant.high) - max(own.low, plant.low)
            assert shared >= 3, f"{slug}: {plant.low} to {plant.high} °C"


@pytest.mark.parametrize("path", PATHS, ids=lambda path: path.stem)
def test_no_animal_is_recommended_a_plant_whose_own_record_says_that_its_kind_eats_it(
    path, library
):
    record = Animal.model_validate(read(path))
    kinds = set(grazers_of(record, library.vocabulary["grazer"]))
    for slug in record.suits.plants:
        eaters = {kind for eaten in library.plants[slug].eaten_by for kind in eaten.eaters}
        assert not kinds & eaters, slug


def test_kinds_of_plant_eaters_have_their_animals(library):
    """Common practice, no source. The least killifish and the dwarf crayfish do no such harm."""
    words = library.vocabulary["grazer"]
    kinds = {slug: grazers_of(animal, words) for slug, animal in library.animals.items()}
    assert kinds["carassius-auratus"] == ["goldfish"]
    assert kinds["pethia-conchonius"] == kinds["puntigrus-tetrazona"] == ["barbs"]
    assert kinds["poecilia-sphenops"] == kinds["xiphophorus-hellerii"] == ["livebearers"]
    assert kinds["ancistrus"] == ["rasping-catfish"]
    assert kinds["pangio-kuhlii"] == kinds["corydoras-aeneus"] == ["diggers"]
    assert kinds["trichopodus-leerii"] == ["gouramis"]
    assert kinds["procambarus-virginalis"] == ["crayfish"]
    for harmless in ("heterandria-formosa", "cambarellus-patzcuarensis", "puntius-titteya"):
        assert kinds[harmless] == []


def test_every_record_says_never_to_release_it_and_apple_snails_are_banned(library):
    for slug, animal in library.animals.items():
        assert animal.release.text.startswith("Never release it"), slug
    marks = {mark.place: mark for mark in library.animals["pomacea-diffusa"].law}
    # Decision 2012/697/EU, Article 1: the genus shall not be introduced into or spread within the Union.
    assert "banned" in marks["eu"].text
    assert "eu-2012-697" in marks["eu"].sources
    assert {"gb", "us"} <= set(marks)


def test_these_are_never_offered_and_the_law_says_why(library):
    never = {slug for slug, animal in library.animals.items() if not animal.offered}
    assert never == {
        "procambarus-virginalis", "gambusia-holbrooki", "corbicula-fluminea", "lepomis-gibbosus",
    }  # fmt: skip
    for slug in never:
        assert library.animals[slug].law
    # (EU) 2022/1203, recital 2, names both mosquitofish, 2019/1262 the pumpkinseed, 2016/1141 the crayfish.
    for slug in ("procambarus-virginalis", "gambusia-holbrooki", "lepomis-gibbosus"):
        (mark,) = [mark for mark in library.animals[slug].law if mark.place == "eu"]
        assert "Union concern" in mark.text
        assert "eu-2016-1141" in mark.sources


def test_crayfish_say_what_british_law_says(library):
    """Prohibition of Keeping of Live Fish (Crayfish) Order 1996: a licence for all but the redclaw; none is
    given for pets. Second-hand."""
    for slug, animal in library.animals.items():
        if animal.group == "crayfish":
            (mark,) = [mark for mark in animal.law if mark.place == "gb"]
            assert "licence" in mark.text, slug


@pytest.mark.parametrize(
    ("change", "said"),
    share_of(
        [
            ({"suits": ["no-such-plant"]}, "no-such-plant has no record in species/plants/"),
            ({"suits": ["lemna-minor", "lemna-minor"]}, "lemna-minor stands twice"),
            ({"group_of": {"least": 6, "most": 2}}, "most must not be below least"),
            ({"law": "fr"}, "must be one of us, eu, gb, au or nz"),
        ],
        4,
    ),
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
