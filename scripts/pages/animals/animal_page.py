"""Pages of animals."""

from typing import NamedTuple

from markupsafe import Markup

from calculators.core import quantities as q
from scripts.drawings.animals.picture import picture, small_picture
from scripts.pages.animals.by_kind import plants_by_kind
from scripts.pages.animals.worked_load import worked
from scripts.pages.cite import Citations
from scripts.pages.ranges import SCALES, Bar, BarScale, bar, both_units, figure_in_both, span
from scripts.pages.template import render
from scripts.pages.terms import terms_used
from scripts.records.animal import Animal
from scripts.records.claim import Statement
from scripts.records.law_matches import listings
from scripts.records.load import Library
from scripts.records.problem import Problem

WATER = ("temperature_c", "ph", "gh_dh")
LENGTHS = (
    BarScale("length_mm", q.BodyLength, 0, 90, (0, 30, 60, 90)),
    BarScale("length_mm", q.BodyLength, 0, 300, (0, 100, 200, 300)),
)


def animal_page(slug: str, library: Library) -> str:
    """One animal as Markdown."""
    animal = library.animals[slug]
    return render(
        "animal.md.j2",
        animal=animal,
        words=library.vocabulary,
        bars=bars(animal),
        unknown=unknown(animal),
        mass=mass_words(animal),
        feed_rate=both_units(q.FeedRate, animal.feeding.feed_percent_day),
        worked=worked(slug, animal),
        cite=Citations(library.sources),
        alarms=alarms(animal, library),
        plants=library.plants,
        restricted=restricted(library),
        by_kind=plants_by_kind(animal, library),
        drawing=Markup(picture(slug, animal, shape_words(animal, library))),
        drawn_at=figure_in_both(q.BodyLength, animal.body.typical_mm),
        places=list(library.vocabulary["place"]),
        terms=terms_used(animal, library.vocabulary["term"]),
    )


def shape_words(animal: Animal, library: Library) -> str:
    """What kind of body it has."""
    return str(library.vocabulary["body_form"][animal.body.shape.form]["label"])


def bars(animal: Animal) -> list[Bar]:
    """Warmth, pH and hardness on the plants' scales, and the length; what is not known has none."""
    water_bars = [
        bar(scale, claim)
        for scale in SCALES
        if scale.key in WATER and (claim := getattr(animal.needs, scale.key)) is not None
    ]
    length = animal.body.length_mm
    scale = next((one for one in LENGTHS if length.high <= one.high), LENGTHS[-1])
    return [*water_bars, bar(scale, length)]


def unknown(animal: Animal) -> list[str]:
    """What nobody we found knows, said by name."""
    figures = {"pH": animal.needs.ph, "general hardness": animal.needs.gh_dh}
    return [name for name, claim in figures.items() if claim is None]


def mass_words(animal: Animal) -> Markup:
    """Its mass at the shortest and the greatest recorded length, g."""
    weight, length = animal.body.length_weight, animal.body.length_mm
    low, high = (weight.mass_g(end) for end in (length.low, length.high))
    return Markup("{} g at {}").format(span(low, high, 2), both_units(q.BodyLength, length))


class Alarm(NamedTuple):
    """A danger, the claim about it, when to act, and the problem that has the first safe action."""

    label: str
    claim: Statement
    when: str
    problem: str
    record: Problem


DANGERS = (
    ("Copper", "copper", "If copper got in", "copper-poisoning"),
    ("Ammonia", "ammonia", "If ammonia shows", "ammonia-emergency"),
    ("Air", "oxygen", "If air runs short", "dawn-low-oxygen"),
)


def alarms(animal: Animal, library: Library) -> list[Alarm]:
    """What harms the animal, each with what to do first; the first action is the problem's own."""
    return [
        Alarm(label, claim, when, problem, library.problems[problem])
        for label, key, when, problem in DANGERS
        if (claim := getattr(animal.sensitivity, key)) is not None
    ]


def restricted(library: Library) -> set[str]:
    """The plants that a law list names, so that no page recommends one without saying so."""
    return {slug for slug, plant in library.plants.items() if listings(plant, library.rules)}


def shown_name(animal: Animal) -> str:
    """The name that keepers know it by."""
    return animal.trade_names[0] if animal.trade_names else animal.name


def animals_page(library: Library) -> str:
    """The index of all animals, by group."""
    ordered = sorted(library.animals.items(), key=lambda item: shown_name(item[1]).lower())
    by_group = {
        group: [(slug, animal) for slug, animal in ordered if animal.group == group]
        for group in library.vocabulary["animal_group"]
    }
    return render(
        "animals.md.j2",
        by_group={group: animals for group, animals in by_group.items() if animals},
        shown_name=shown_name,
        small={slug: Markup(small_picture(slug, animal)) for slug, animal in ordered},
        words=library.vocabulary,
        count=len(library.animals),
    )
