"""The words that a page explains: those that its sentences use, and no others."""

import pytest
from pydantic import BaseModel

from scripts.pages.animals.animal_page import animal_page
from scripts.pages.plants.plant_page import plant_page
from scripts.pages.problems.problem_page import problem_page
from scripts.pages.terms import terms_used

TERMS = {
    "rhizome": {"label": "rhizome", "means": "A creeping stem."},
    "larvae": {"label": "larva", "plural": "larvae", "means": "Young ones."},
    "dry-matter": {"label": "dry matter", "means": "What is left when dried."},
}


class Invented(BaseModel):
    """A record of one sentence, a key and a list, for the test alone."""

    text: str
    key: str = "rhizome"
    more: list[dict[str, str]] = []


def labels(record):
    return [term["label"] for term in terms_used(record, TERMS)]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Rhizomes must lie free.", ["rhizome"]),
        ("It has larvae, at 8 % dry matter.", ["dry matter", "larva"]),
        ("Nothing to explain here.", []),
        ("A rhizomelike thing.", []),
    ],
)
def test_a_word_is_found_in_sentences_in_any_form_and_whole(text, found):
    assert labels(Invented(text=text)) == found


def test_a_key_is_no_sentence_and_a_list_is_searched():
    assert labels(Invented(text="No word.")) == []
    assert labels(Invented(text="No word.", more=[{"note": "The rhizome lies free."}])) == [
        "rhizome"
    ]


def test_every_word_is_used_on_some_page(library):
    terms = library.vocabulary["term"]
    records = [*library.plants.values(), *library.animals.values(), *library.problems.values()]
    used = {term["label"] for record in records for term in terms_used(record, terms)}
    assert {term["label"] for term in terms.values()} == used


@pytest.mark.parametrize(
    ("page", "slug", "kind"),
    [
        (plant_page, "anubias-barteri", "plants"),
        (animal_page, "neocaridina-davidi", "animals"),
        (problem_page, "ammonia-emergency", "problems"),
    ],
)
def test_a_page_explains_the_words_of_its_record_under_one_tap(page, slug, kind, library):
    written = page(slug, library)
    terms = terms_used(getattr(library, kind)[slug], library.vocabulary["term"])
    assert terms, "this page was chosen for its words"
    part = written[written.index('<details class="fold" id="terms">') :].split("</details>")[0]
    assert part.count("<dt>") == len(terms)
    for term in terms:
        assert f"<dt>{term['label']}</dt>" in part


def test_a_page_without_such_words_has_no_empty_list(library):
    bare = [
        slug
        for slug, plant in library.plants.items()
        if not terms_used(plant, library.vocabulary["term"])
    ]
    for slug in bare:
        assert 'id="terms"' not in plant_page(slug, library)
