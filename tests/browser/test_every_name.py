"""Every name of every plant, whole and with one slip, leads to its plant."""

import random

from scripts.pages.plants.trade_names import pages_of
from tests.effort import long_run, share_of

TOP = 3
WORTH_A_SLIP = 6  # letters; a slip in a shorter name makes another word
LETTERS = "abcdefghijklmnopqrstuvwxyz"

SEARCH = """async ([root, queries]) => {
  const finder = await import(new URL("assets/finder.js", root).href);
  await finder.openIndex(new URL(root));
  return queries.map((query) => finder.search(query).slice(0, 3).map((one) => one.address));
}"""


def names_of(plant):
    """Accepted, trade and old names, and those used by mistake."""
    return [plant.name, *plant.trade_names, *plant.old_names]


def whole(name):
    """The name as it is."""
    return [name]


def slips(name):
    """The name with a letter wrong, missing, doubled, or two swapped; the same in each run."""
    chance = random.Random(name)
    places = [at for at in range(1, len(name) - 1) if name[at].isalpha() and name[at + 1].isalpha()]
    wrong, missing, doubled, swapped = (chance.choice(places) for _ in range(4))
    return [
        name[:wrong] + chance.choice(LETTERS) + name[wrong + 1 :],
        name[:missing] + name[missing + 1 :],
        name[:doubled] + name[doubled] + name[doubled:],
        name[:swapped] + name[swapped + 1] + name[swapped] + name[swapped + 2 :],
    ]


def answers(page, address, queries):
    """The first addresses that the site's own search gives for each query."""
    page.goto("search/")
    return page.evaluate(SEARCH, [address, queries])


def wanted(slug, library):
    """The plant's page, or that of an ambiguous name which leads to it."""
    return {f"plants/{slug}/", *(f"names/{key}/" for key, _ in pages_of(slug, library))}


def misses(page, address, library, change):
    """Each name that does not bring its plant into the first three."""
    cases = [
        (query, name, slug)
        for slug, plant in library.plants.items()
        for name in names_of(plant)
        if change is whole or len(name) >= WORTH_A_SLIP
        for query in change(name)
    ]
    assert len(cases) > 500
    cases = share_of(cases, 9)
    found = answers(page, address, [query for query, _, _ in cases])
    return [
        f"{query} ({name}): {first}"
        for (query, name, slug), first in zip(cases, found, strict=True)
        if not wanted(slug, library) & set(first[:TOP])
    ]


def test_every_name_finds_its_plant(page, address, library):
    assert misses(page, address, library, whole) == []


@long_run()
def test_every_name_finds_its_plant_with_one_slip(page, address, library):
    assert misses(page, address, library, slips) == []


@long_run()
def test_every_ambiguous_name_finds_its_page_or_leads_there(page, address, library):
    """Whole: in the first three, or a plant of exactly that name stands there and links to it."""
    cases = [
        (name, key) for key, one in library.names.items() for name in (one.name, *one.other_names)
    ]
    found = answers(page, address, [name for name, _ in cases])
    plants = {
        key: {f"plants/{one.plant}/" for one in record.may_be if one.plant}
        for key, record in library.names.items()
    }
    lost = [
        f"{name}: {first}"
        for (name, key), first in zip(cases, found, strict=True)
        if not ({f"names/{key}/"} | plants[key]) & set(first)
    ]
    assert lost == []


@long_run()
def test_the_search_says_above_its_list_that_a_name_is_ambiguous(page, library):
    for query, key in (
        ("ambulia", "ambulia"),
        ("foxtial", "milfoil"),
        ("water fern", "floating-fern"),
    ):
        page.goto(f"search/?q={query}")
        page.locator("#lead a").tap()
        page.wait_for_url(f"**/names/{key}/")
