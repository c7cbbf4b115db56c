"""The page that sets growth against light: one picture a habit, and a list that says the same."""

from typing import NamedTuple

from markupsafe import Markup

from calculators.core import quantities as q
from scripts.pages.cite import Citations
from scripts.pages.plants.growth_picture import Spot, picture
from scripts.pages.ranges import both_units
from scripts.pages.template import render
from scripts.records.claim import Range
from scripts.records.load import Library
from scripts.records.plant import Plant


class Item(NamedTuple):
    """A plant in the list beneath a picture, under its number there."""

    number: int
    slug: str
    plant: Plant
    light: Range
    doubling: Range
    light_words: Markup
    doubling_words: Markup


class Group(NamedTuple):
    """One habit: its picture, its list, and the plants that a figure is missing for."""

    habit: str
    picture: Markup | None
    items: list[Item]
    missing: list[tuple[str, Plant]]


def growth_light_page(library: Library) -> str:
    """The page as Markdown."""
    return render(
        "growth.md.j2",
        groups=[
            plants_of_habit
            for habit in library.vocabulary["habit"]
            if (plants_of_habit := group(habit, library))
        ],
        words=library.vocabulary,
        cite=Citations(library.sources),
    )


def group(habit: str, library: Library) -> Group | None:
    """The plants of a habit, the fastest first; None where there are none."""
    known, missing = [], []
    for slug, plant in library.plants.items():
        light, doubling = plant.needs.dli_mol, plant.growth.doubling_days
        if plant.habit != habit:
            continue
        if light is None or doubling is None:
            missing.append((slug, plant))
        else:
            known.append((slug, plant, light, doubling))
    if not known and not missing:
        return None
    known.sort(key=lambda figures: (figures[3].low * figures[3].high, figures[0]))
    items = [
        Item(
            number,
            slug,
            plant,
            light,
            doubling,
            both_units(q.DailyLight, light),
            both_units(q.DoublingTime, doubling),
        )
        for number, (slug, plant, light, doubling) in enumerate(known, start=1)
    ]
    spots = [
        Spot(item.number, item.slug, item.plant.name, item.light, item.doubling) for item in items
    ]
    label = library.vocabulary["habit"][habit]["label"]
    return Group(habit, picture(spots, label) if spots else None, items, missing)
