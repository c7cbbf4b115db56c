"""The law lists: what the laws say stands in them, and our plants find themselves on them.

The expected names are typed from the texts named beside them, not from our files.
"""

import json
from datetime import date

import pytest

from scripts.pages.law.law_page import place_page
from scripts.records.law_matches import listed_look_alikes, listings
from scripts.records.rule import ListedName, Rule
from scripts.site.build import old_laws

# Cornell's copy of 7 CFR 360.200(a), aquatic and wetland weeds: read whole.
US = """Azolla pinnata, Caulerpa taxifolia, Eichhornia azurea, Hydrilla verticillata, Hygrophila
polysperma, Ipomoea aquatica, Lagarosiphon major, Limnophila sessiliflora, Melaleuca quinquenervia,
Monochoria hastata, Monochoria vaginalis, Ottelia alismoides, Sagittaria sagittifolia, Salvinia
auriculata, Salvinia biloba, Salvinia herzogii, Salvinia molesta, Solanum tampicense, Sparganium
erectum"""
# EPPO Reporting Service 2017 for (EU) 2017/1263; annexes and recitals of (EU) 2016/1141, 2019/1262,
# 2022/1203 and 2025/1422 as noted in the sources: read.
EU = """Cabomba caroliniana, Eichhornia crassipes, Hydrocotyle ranunculoides, Lagarosiphon major,
Ludwigia grandiflora, Ludwigia peploides, Myriophyllum aquaticum, Alternanthera philoxeroides, Elodea
nuttallii, Myriophyllum heterophyllum, Gymnocoronis spilanthoides, Salvinia molesta, Pistia
stratiotes, Crassula helmsii"""
# First rows of the table in the government's guidance for England and Wales: read.
GB_SPECIAL = "Lysichiton americanus, Lagarosiphon major, Hydrocotyle ranunculoides"
# SI 2014/538, table: read whole.
ENGLAND_SALE = """Azolla filiculoides, Myriophyllum aquaticum, Hydrocotyle ranunculoides, Ludwigia
peploides, Ludwigia grandiflora, Ludwigia uruguayensis, Crassula helmsii"""
# SSI 2005/308, article 2, water plants: read whole.
SCHEDULE_9 = """Cabomba caroliniana, Eichhornia crassipes, Pistia stratiotes, Salvinia molesta, Azolla
filiculoides, Myriophyllum aquaticum, Hydrocotyle ranunculoides, Crassula helmsii, Lagarosiphon major"""
# Pages of Auckland Council that name the accord, and the ministry's page on hornwort: read, second-hand.
NZ = """Egeria densa, Vallisneria australis, Ceratophyllum demersum, Gymnocoronis spilanthoides,
Nymphoides geminata, Houttuynia cordata"""
# State government report of 2009 on aquatic weeds of national significance, strategic plans of 2012: read.
AU = """Alternanthera philoxeroides, Cabomba caroliniana, Salvinia molesta, Sagittaria platyphylla,
Eichhornia crassipes"""

EXPECTED = {
    "us-federal-noxious-weeds": US,
    "eu-union-list": EU,
    "gb-special-concern": GB_SPECIAL,
    "gb-england-sale-ban": ENGLAND_SALE,
    "gb-schedule-9": SCHEDULE_9,
    "nz-pest-plant-accord": NZ,
    "au-wons": AU,
}
WHOLE = {"us-federal-noxious-weeds": {"Alternanthera sessilis"}, "gb-england-sale-ban": set()}

# Our plants by place. Worked out by hand from the lists above and from the accepted and old names.
LISTED = {
    "alternanthera-philoxeroides": {"au", "eu", "gb", "nz", "us"},
    "azolla-filiculoides": {"gb"},
    "azolla-pinnata": {"us"},
    "cabomba-caroliniana": {"au", "eu", "gb", "us"},
    "ceratophyllum-demersum": {"nz"},
    "cabomba-aquatica": {"us"},  # where a state names the genus
    "cabomba-furcata": {"us"},
    "ceratopteris-thalictroides": {"us"},
    "crassula-helmsii": {"eu", "gb", "us"},
    "egeria-densa": {"au", "nz", "us"},
    "elodea-canadensis": {"au", "gb"},  # as a species of Elodea, Schedule 9
    "elodea-nuttallii": {"eu", "gb"},
    "gymnocoronis-spilanthoides": {"au", "eu", "gb", "nz"},
    "houttuynia-cordata": {"nz"},
    "hydrilla-verticillata": {"nz", "us"},
    "hydrocharis-laevigata": {"au", "us"},
    "hydrocharis-morsus-ranae": {"us"},
    "hydrocotyle-ranunculoides": {"au", "eu", "gb"},
    "hygrophila-costata": {"au"},
    "hygrophila-polysperma": {"au", "us"},
    "lagarosiphon-major": {"au", "eu", "gb", "nz", "us"},
    "limnophila-sessiliflora": {"us"},
    "ipomoea-aquatica": {"us"},
    "ludwigia-grandiflora": {"eu", "gb"},
    "ludwigia-peploides": {"eu", "gb", "nz", "us"},
    "myriophyllum-aquaticum": {"au", "eu", "gb", "nz", "us"},
    "myriophyllum-heterophyllum": {"eu", "gb", "us"},
    "nymphoides-hydrophylla": {"us"},  # in two states, as N. cristata
    "ottelia-alismoides": {"us"},
    "myriophyllum-mattogrossense": {"us"},  # where a state names the genus
    "myriophyllum-spicatum": {"us"},
    "pistia-stratiotes": {"au", "eu", "gb", "nz", "us"},
    "pontederia-crassipes": {"au", "eu", "gb", "nz", "us"},  # as Eichhornia crassipes
    "sagittaria-platyphylla": {"au", "nz", "us"},
    "sagittaria-sagittifolia": {"nz", "us"},
    "salvinia-auriculata": {"us"},
    "salvinia-molesta": {"au", "eu", "gb", "nz", "us"},
    "vallisneria-americana": {"nz"},  # sold as V. gigantea
    "utricularia-gibba": {"nz"},
    "vallisneria-australis": {"nz"},
    "vallisneria-nana": {"nz"},  # once named V. gigantea
    "vallisneria-spiralis": {"nz"},
}


def names(text):
    return {" ".join(name.split()) for name in text.split(",")}


@pytest.mark.parametrize("slug", EXPECTED)
def test_every_name_of_the_law_is_on_our_list(slug, library):
    ours = {entry.name for entry in library.rules[slug].entries}
    assert names(EXPECTED[slug]) <= ours


@pytest.mark.parametrize("slug", WHOLE)
def test_a_list_that_was_read_whole_holds_no_other_name(slug, library):
    ours = {entry.name for entry in library.rules[slug].entries}
    assert ours - names(EXPECTED[slug]) == WHOLE[slug]


def test_our_plants_stand_on_the_lists_of_exactly_these_places(library):
    found = {
        slug: {one.rule.place for one in listed}
        for slug, plant in library.plants.items()
        if (listed := listings(plant, library.rules))
    }
    for slug, places in LISTED.items():
        assert found.pop(slug, set()) == places, slug
    assert not found, "a plant is on a list that nobody has checked"


def test_what_is_said_to_be_read_was_read(library):
    for slug, rule in library.rules.items():
        assert date(2026, 11, 1) <= rule.read_on <= date.today()
        assert len({entry.name for entry in rule.entries}) == len(rule.entries), slug
        for entry in rule.entries:
            source = library.sources[entry.source or rule.source]
            if entry.basis == "read-in-text":
                assert source.seen == "document", (slug, entry.name)


def test_every_list_says_what_it_forbids_and_in_words(library):
    for slug, rule in library.rules.items():
        assert set(rule.forbids) <= set(library.vocabulary["act"]), slug
        assert rule.forbids or rule.holds_in == "parts"
    assert set(library.rules["eu-union-list"].forbids) >= {"keep", "sell", "release"}
    assert library.rules["gb-england-sale-ban"].forbids == ["sell"]
    assert "keep" not in library.rules["nz-pest-plant-accord"].forbids


def test_what_holds_in_parts_of_a_place_names_the_parts_and_nothing_else_does(library):
    assert {slug for slug, rule in library.rules.items() if rule.holds_in == "parts"} == {
        "au-states",
        "us-states",
    }
    for slug, rule in library.rules.items():
        for entry in rule.entries:
            assert bool(entry.states) == (rule.holds_in == "parts"), (slug, entry.name)


# As the texts themselves say: SI 2014/538 in force 6 April 2014; SSI 2005/308; the consolidated text of
# 2016/1141 of 15 August 2019; the accord of 2012; (EU) 2025/1422 from 7 August 2025.
@pytest.mark.parametrize(
    ("slug", "as_of"),
    [
        ("gb-england-sale-ban", "2014-04-06"),
        ("gb-schedule-9", "2005"),
        ("gb-special-concern", "2019-08-15"),
        ("nz-pest-plant-accord", "2012"),
        ("eu-union-list", "2025-08-07"),
        ("us-federal-noxious-weeds", None),
    ],
)
def test_a_list_carries_the_date_of_the_text_that_was_read_and_its_page_says_it(
    slug, as_of, library, site
):
    assert library.rules[slug].text_as_of == as_of
    page = (site / "rules" / slug / "index.html").read_text(encoding="utf-8")
    day = f'the text stands as of <time datetime="{as_of}">{as_of}</time>'
    assert (day if as_of else "bears no date") in page
    assert ("Look for later changes" in page) == (as_of is not None and as_of < "2025-11-25")
    assert "is final" in page


@pytest.mark.parametrize(
    ("as_of", "day", "old"),
    [
        ("2025-08-07", date(2026, 8, 7), False),
        ("2025-08-07", date(2026, 8, 8), True),
        ("2025-02", date(2026, 2, 28), False),
        ("2025-02", date(2026, 3, 1), True),
        ("2024", date(2025, 12, 31), False),
        ("2024", date(2026, 1, 1), True),
        (None, date(2026, 1, 1), True),
    ],
)
def test_a_text_is_old_a_year_after_the_last_day_that_its_date_may_mean(as_of, day, old, library):
    rule = library.rules["gb-england-sale-ban"].model_copy(update={"text_as_of": as_of})
    assert rule.is_old(day) is old


def test_the_build_says_which_texts_are_old(library):
    (words,) = old_laws(library)
    assert "over a year old or undated" in words
    assert "gb-england-sale-ban" in words


def test_an_entry_from_memory_says_so_in_words_on_every_page_that_tells_it(site):
    """Lagarosiphon major on New Zealand's accord, and Pistia stratiotes there: from memory."""
    for page in ("rules/nz-pest-plant-accord", "rules/nz", "plants/pistia-stratiotes"):
        assert "from memory" in (site / page / "index.html").read_text(encoding="utf-8"), page
    compared = json.loads((site / "assets" / "compare.json").read_text(encoding="utf-8"))
    at = [key for _, key, _ in compared["rows"]].index("law")
    assert "(from memory)" in compared["plants"]["pistia-stratiotes"]["cells"][at]


def test_each_place_of_a_list_has_its_page_and_only_those(library):
    places = {rule.place for rule in library.rules.values()}
    assert places == set(library.places) == set(library.vocabulary["place"])
    for key in places:
        page = place_page(key, library)
        for part in (
            "Lists change.",
            "final",
            "## If you have one",
            "## Cuttings",
            "read on <time",
        ):
            assert part in page, (key, part)
        for slug, rule in library.rules.items():
            assert (f"({slug}.md)" in page) == (rule.place == key)


def test_a_lists_page_names_every_entry_with_how_we_know(site, library):
    for slug, rule in library.rules.items():
        page = (site / "rules" / slug / "index.html").read_text(encoding="utf-8")
        names_part = page[page.index('id="names"') :].split("</ul>")[0]
        assert names_part.count("<li>") == len(rule.entries), slug
        assert rule.read_on.isoformat() in page
        for entry in rule.entries:
            assert entry.name in names_part, (slug, entry.name)


def test_a_plants_page_tells_the_law_of_each_place(site):
    page = (site / "plants" / "azolla-filiculoides" / "index.html").read_text(encoding="utf-8")
    banner = page[page.index('class="banner law"') :].split("</p>")[0]
    assert banner.count("Great Britain") == 1, "two lists of one place are one place"
    assert 'href="../../rules/gb/"' in page
    assert "Azolla pinnata" in page[page.index('id="law"') :], "a listed look-alike is told"
    assert "Cuttings." in page


class TestMatching:
    """How a plant finds itself on a list: a list invented for the test."""

    def rule(self, *entries):
        return {
            "list": Rule(
                title="Test",
                place="gb",
                instrument="None",
                effect="None",
                short_effect="None",
                source="none",
                read_on=date(2026, 1, 1),
                complete=True,
                entries=[ListedName(name=name, basis="memory") for name in entries],
            )
        }

    def test_a_genus_is_matched_by_the_accepted_name_alone(self, library):
        elodea = self.rule("Elodea")
        assert listings(library.plants["elodea-canadensis"], elodea)
        assert "Elodea densa (Planch.) Casp." in library.plants["egeria-densa"].old_names
        assert not listings(library.plants["egeria-densa"], elodea)

    def test_an_old_name_is_matched_and_told(self, library):
        (found,) = listings(library.plants["egeria-densa"], self.rule("Elodea densa"))
        assert found.through.startswith("Elodea densa")
        assert not found.doubtful

    def test_a_misapplied_name_is_told_as_doubtful(self, library):
        rule = self.rule("Vallisneria gigantea")
        (found,) = listings(library.plants["vallisneria-americana"], rule)
        assert found.doubtful
        assert found.through == "Vallisneria gigantea"

    def test_a_look_alike_of_a_listed_genus_is_found(self, library):
        """Schedule 9 names Elodea with all its species; Egeria densa is another genus."""
        alike = {
            one.name: {listing.slug for listing in one.listed}
            for one in listed_look_alikes(library.plants["egeria-densa"], library.rules)
        }
        assert "gb-schedule-9" in alike["Elodea canadensis"]
        assert {"gb-schedule-9", "eu-union-list"} <= alike["Elodea nuttallii"]

    def test_the_small_salvinia_warns_of_the_listed_large_one(self, library):
        alike = {
            one.name: {listing.slug for listing in one.listed}
            for one in listed_look_alikes(library.plants["salvinia-minima"], library.rules)
        }
        assert {"eu-union-list", "au-wons", "nz-pest-plant-accord"} <= alike["Salvinia molesta"]

    def test_a_listed_look_alike_is_found_and_the_plants_own_entry_is_not(self, library):
        rule = self.rule("Salvinia molesta", "Salvinia auriculata")
        found = listed_look_alikes(library.plants["salvinia-auriculata"], rule)
        assert [one.name for one in found] == ["Salvinia molesta"]
