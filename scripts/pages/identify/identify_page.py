"""The page that names a plant: the first question, the drawings, and a list by form that needs no script."""

from typing import NamedTuple, get_args

from markupsafe import Markup

from calculators.core.run import compute
from calculators.identify.naming_at_tank import naming_pieces
from calculators.identify.record_words import recorded
from calculators.identify.trait_table import KnownPlant, plant_book
from calculators.identify.trait_words import FORMS
from calculators.science.law.restricted import places_in_words, restricted_by
from calculators.science.shelf.shelf_tank import PLACE_WORDS, Place
from scripts.drawings.trait_symbols import trait_symbols
from scripts.pages.template import render
from scripts.records.load import Library

ORDER = ("arrangement", "shape", "length_mm", "colour_above")  # what the list says of a plant


class ListedByForm(NamedTuple):
    """A plant of the list: its key, name, looks in words, and where the law restricts it."""

    slug: str
    name: str
    looks: str
    law: str


class FormGroup(NamedTuple):
    """The plants of one form, by how their leaves stand and their shape."""

    key: str
    words: str
    plants: list[ListedByForm]


def by_form(key: str, plant: KnownPlant) -> ListedByForm:
    """One plant of the list."""
    rules = plant_book().rules
    where = [restricted_by(listed, rules[listed.rule]) for listed in plant.law]
    law = f"Restricted in {places_in_words(where)}" if where else ""
    looks = "; ".join(recorded(trait, plant.traits) for trait in ORDER)
    return ListedByForm(key, plant.name, f"Leaves {looks}.", law)


def groups() -> list[FormGroup]:
    """Every plant, by form, then by how its leaves stand and their shape."""
    plants = plant_book().plants
    made = []
    for form, words in FORMS.items():
        keys = [key for key, plant in plants.items() if plant.traits.form == form]
        keys.sort(key=lambda key: (plants[key].traits.arrangement, plants[key].traits.shape, key))
        if keys:
            made.append(FormGroup(form, words, [by_form(key, plants[key]) for key in keys]))
    return made


def identify_page(library: Library) -> str:
    """The page as Markdown. Raises ``BadInput`` where its example does not hold."""
    pieces = naming_pieces(compute("identify", {}, own=True))["pieces"]
    choices = zip(get_args(Place), PLACE_WORDS.words, strict=True)
    return render(
        "identify.md.j2",
        count=len(library.plants),
        symbols=Markup(trait_symbols(library)),
        question=Markup(pieces["ask"]),
        places=list(choices),
        names=sorted({name.name for name in plant_book().labels.values()}),
        groups=groups(),
    )
