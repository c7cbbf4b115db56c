"""Pages of ambiguous trade names: which plants a label may mean, and how to tell them apart."""

from typing import NamedTuple

from markupsafe import Markup

from scripts.pages.cite import Citations
from scripts.pages.plants.drawn import in_tank
from scripts.pages.plants.same_scale import cut
from scripts.pages.plants.side_by_side import Cell, ComparedPlant, ComparisonRow, differ
from scripts.pages.plants.side_rows import ROWS
from scripts.pages.template import render
from scripts.records.law_matches import Listing, listings, listings_of
from scripts.records.load import Library
from scripts.records.trade_name import Candidate, TradeName

GROUPS = ("The law", "How to tell them apart")  # what a buyer needs; the rest is one link away
MOST_COMPARED = 4  # plants that the comparison's page takes


class PossiblePlant(NamedTuple):
    """A candidate with what the records say of it."""

    candidate: Candidate
    name: str
    listed: list[Listing]


def name_page(slug: str, library: Library) -> str:
    """One ambiguous name as Markdown."""
    record = library.names[slug]
    cite = Citations(library.sources)
    slugs = [candidate.plant for candidate in record.may_be if candidate.plant]
    return render(
        "name.md.j2",
        record=record,
        may_be=candidates(record, library),
        words=library.vocabulary,
        cite=cite,
        slugs=slugs,
        plants=library.plants,
        pictures=[picture(plant, library) for plant in slugs],
        rows=side_by_side(slugs, library, cite),
        compare=Markup(",".join(slugs[:MOST_COMPARED])),
    )


def candidates(record: TradeName, library: Library) -> list[PossiblePlant]:
    """The candidates, each with the law lists that name it."""
    described = []
    for candidate in record.may_be:
        if candidate.plant:
            plant = library.plants[candidate.plant]
            described.append(PossiblePlant(candidate, plant.name, listings(plant, library.rules)))
        else:
            name = str(candidate.name)
            described.append(PossiblePlant(candidate, name, listings_of(name, library.rules)))
    return described


def picture(slug: str, library: Library) -> Markup | None:
    """The plant in the tank, cut to the tank's width so that all are to one scale."""
    made = in_tank(slug, library.plants[slug])
    return None if made is None else cut(made)


def side_by_side(
    slugs: list[str], library: Library, cite: Citations
) -> list[tuple[ComparisonRow, list[Cell], bool]]:
    """The rows that help at the counter, and whether each tells the plants apart."""
    compared = [
        ComparedPlant(slug, library.plants[slug], cite, library.vocabulary, library.rules)
        for slug in slugs
    ]
    rows = [row for row in ROWS if row.group in GROUPS]
    made = [(row, [row.cell(plant_shown) for plant_shown in compared]) for row in rows]
    return [(row, cells, differ(cells)) for row, cells in made]


def names_page(library: Library) -> str:
    """The index of the names."""
    ordered = sorted(library.names.items(), key=lambda item: item[1].name.lower())
    return render(
        "names.md.j2",
        names=[(slug, trade_name, candidates(trade_name, library)) for slug, trade_name in ordered],
        words=library.vocabulary,
    )


def pages_of(slug: str, library: Library) -> list[tuple[str, TradeName]]:
    """The ambiguous names under which a plant may be sold."""
    return [
        (key, record)
        for key, record in library.names.items()
        if any(candidate.plant == slug for candidate in record.may_be)
    ]
