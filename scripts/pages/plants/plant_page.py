"""Pages of plants."""

from typing import NamedTuple

from markupsafe import Markup

from calculators.core import quantities as q
from calculators.core.numbers import show_plain
from calculators.core.quantities import INCH_CM
from scripts.drawings.not_to_scale import remark
from scripts.drawings.size import TANK_HEIGHT_CM
from scripts.pages.animals.neighbours import neighbours
from scripts.pages.cite import Citations
from scripts.pages.plants.all_plants_table import light_class
from scripts.pages.plants.drawn import close_up, close_up_words, from_above, in_tank
from scripts.pages.plants.same_scale import with_view
from scripts.pages.plants.trade_names import pages_of
from scripts.pages.ranges import SCALES, Bar, bar, both_units
from scripts.pages.template import book_query, render
from scripts.pages.terms import terms_used
from scripts.records.claim import Range
from scripts.records.law_matches import listed_look_alikes, listings
from scripts.records.load import Library
from scripts.records.plant import Plant


def plant_page(slug: str, library: Library) -> str:
    """One plant as Markdown."""
    plant = library.plants[slug]
    return render(
        "plant.md.j2",
        plant=plant,
        words=library.vocabulary,
        bars=bars(plant),
        light=light_class(plant.needs.dli_mol) if plant.needs.dli_mol else "",
        places=list(library.places),
        listed_places=list(dict.fromkeys(one.rule.place for one in listings(plant, library.rules))),
        spans=spans(plant),
        trimmings_query=trimmings_query(plant),
        unknown=unknown(plant),
        pictures=pictures(slug, plant),
        tank=f"{TANK_HEIGHT_CM:g} cm ({TANK_HEIGHT_CM / INCH_CM:.0f} in)",
        remark=remark(plant, TANK_HEIGHT_CM),
        close_up=close_up_words(slug, plant),
        slug=slug,
        muddled=pages_of(slug, library),
        compare_with=compared(slug, library),
        cite=Citations(library.sources),
        listed=listings(plant, library.rules),
        alike=listed_look_alikes(plant, library.rules),
        rules=library.rules,
        problems=library.problems,
        plants=library.plants,
        neighbours=neighbours(slug, library),
        terms=terms_used(plant, library.vocabulary["term"]),
    )


def compared(slug: str, library: Library) -> list[str]:
    """The look-alikes that have a record, each once: first choice for a comparison."""
    others = dict.fromkeys(alike.plant for alike in library.plants[slug].look_alikes)
    return [other for other in others if other and other in library.plants and other != slug]


class Pictures(NamedTuple):
    """The drawings of one plant; ``above`` is for floating plants only."""

    tank: Markup | None
    above: Markup | None
    near: Markup | None


def pictures(slug: str, plant: Plant) -> Pictures:
    """The drawings that the record's traits allow."""
    tank = in_tank(slug, plant)
    others = (from_above(slug, plant), close_up(slug, plant))
    return Pictures(
        with_view(tank) if tank is not None else None,
        *(Markup(svg) if svg is not None else None for svg in others),
    )


def bars(plant: Plant) -> list[Bar]:
    """The needs and the height as bars; what is not known has none."""
    plant_bars = []
    for scale in SCALES:
        claim = getattr(plant.size if scale.key == "height_cm" else plant.needs, scale.key)
        if claim is not None:
            plant_bars.append(bar(scale, claim, hangs=plant.habit == "floater"))
    return plant_bars


def spans(plant: Plant) -> dict[str, Markup]:
    """The ranges that stand in sentences, in both systems of units."""
    claims = {
        "tissue_n": (q.TissueNitrogen, getattr(plant.nitrogen, "tissue_n_percent", None)),
        "dry_matter": (q.DryMatter, getattr(plant.nitrogen, "dry_matter_percent", None)),
        "doubling": (q.DoublingTime, plant.growth.doubling_days),
        "mat": (q.DryMassPerArea, plant.growth.mat_dry_g_m2),
        "layer": (q.DryMassPerArea, plant.growth.layer_dry_g_m2),
        "trim_every": (q.Interval, plant.growth.trim_every_days),
        "trim_minutes": (q.Minutes, plant.growth.trim_minutes),
        "spread": (q.Length, plant.size.spread_cm),
        "light": (q.DailyLight, plant.needs.dli_mol),
        "height": (q.Height, plant.size.height_cm),
    }
    return {
        name: both_units(quantity, claim)
        for name, (quantity, claim) in claims.items()
        if claim is not None
    }


def trimmings_query(plant: Plant) -> Markup:
    """The address part that opens the trimmings calculator with this plant's middle figures."""
    middle = {
        key: show_plain(claim.middle, 3)
        for key in ("dry_matter_percent", "tissue_n_percent")
        if (claim := getattr(plant.nitrogen, key, None)) is not None
    }
    return book_query(middle)


def unknown(plant: Plant) -> list[str]:
    """What nobody we found knows, said by name."""
    figures = {"height": plant.size.height_cm, "spread": plant.size.spread_cm}
    if plant.offered:
        figures |= growing_figures(plant)
    return [name for name, claim in figures.items() if claim is None]


def growing_figures(plant: Plant) -> dict[str, Range | None]:
    """What a keeper who grows the plant would know."""
    nitrogen = plant.nitrogen
    return {
        "light": plant.needs.dli_mol,
        "temperature": plant.needs.temperature_c,
        "pH": plant.needs.ph,
        "general hardness": plant.needs.gh_dh,
        "doubling time": plant.growth.doubling_days,
        "trimming interval": plant.growth.trim_every_days,
        "minutes a trim takes": plant.growth.trim_minutes,
        "tissue nitrogen": getattr(nitrogen, "tissue_n_percent", None),
        "dry matter": getattr(nitrogen, "dry_matter_percent", None),
    }


def plants_page(library: Library) -> str:
    """The index of all plants, by habit."""
    by_habit = {
        habit: [(slug, plant) for slug, plant in library.plants.items() if plant.habit == habit]
        for habit in library.vocabulary["habit"]
    }
    return render(
        "plants.md.j2",
        by_habit={habit: plants for habit, plants in by_habit.items() if plants},
        words=library.vocabulary,
        listed={slug: listings(plant, library.rules) for slug, plant in library.plants.items()},
        count=len(library.plants),
    )
