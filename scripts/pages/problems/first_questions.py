"""The diagnosis at the tank: the drawing, the signs of each place, and the first questions of each.

What stands in the page can be used before Python has loaded; from then on Python asks.
"""

import json
from collections.abc import Iterator
from typing import NamedTuple

from markupsafe import Markup

from calculators.core.data import table_bytes
from calculators.core.fields import InputField
from calculators.core.run import find
from calculators.diagnose.case_read import NewWater, read_case
from calculators.diagnose.cause_posterior import OF_PLANT, posterior
from calculators.diagnose.diagnosis_at_tank import fields_of
from calculators.diagnose.next_check import answer_bits, columns, leading
from calculators.diagnose.problem_table import CAUSES, FINDINGS, QUESTIONS, question_of
from calculators.diagnose.questions import Question, next_question, question
from calculators.diagnose.triage import complained_of
from scripts.drawings.places import places_drawing
from scripts.pages.calculators.form_fields import field_html
from scripts.records.load import Library
from scripts.setup.kept import kept

AHEAD = 2  # questions written into the page behind each sign
NEVER_SIGNS = (OF_PLANT, "readings.", "light_hours", "feed_g_week_100_l")
READINGS = (
    "days_since_planting", "tank_age_days", "volume_l", "feed_g_week", "cover_percent", "light_hours",
    "readings.ammonia_mg_n_l", "readings.nitrite_mg_n_l", "readings.nitrate_mg_l", "readings.ph",
    "readings.temperature_c", "readings.gh_dh", "readings.kh_dh", "readings.oxygen_mg_l",
    "readings.phosphate_mg_l", *NewWater._fields,
)  # fmt: skip


class SignToTap(NamedTuple):
    """A sign to tap, and what is asked after it as long as Python is not there.

    ``rivals`` are the other answers to the same question: two bands of one figure cannot both be true.
    """

    key: str
    label: str
    then: tuple[str, ...]
    rivals: tuple[str, ...]


class PlaceSigns(NamedTuple):
    """One place in the tank with its signs, those first that tell most."""

    where: str
    label: str
    means: str
    signs: tuple[SignToTap, ...]


def places(library: Library) -> list[PlaceSigns]:
    """Every place in the order of the vocabulary, animals first."""
    words = library.vocabulary["looks"]
    order = sorted(words, key=lambda where: where != "animals")
    made = [
        PlaceSigns(where, words[where]["label"], words[where]["means"], signs(where))
        for where in order
    ]
    return [place for place in made if place.signs]


def signs(where: str) -> tuple[SignToTap, ...]:
    """The signs of a place, those first that tell most; sought anew where the problems' table changed."""
    ingredients = f"{where}\0{table_bytes('diagnosis').decode()}"
    rows = json.loads(kept("first-questions", ingredients, lambda: json.dumps(signs_now(where))))
    return tuple(
        SignToTap(key, label, tuple(then), tuple(rivals)) for key, label, then, rivals in rows
    )


def signs_now(where: str) -> tuple[SignToTap, ...]:
    """The same; readings are fields of the page, the kind of plant its own field."""
    case = read_case((), (), {})
    chances = complained_of(case, posterior(case, ()), where)
    keys = [key for key, finding in FINDINGS.items() if finding.where == where and is_sign(key)]
    leaders = leading(chances)
    bits = {key: answer_bits(columns(question_of(key), chances, leaders), (key,)) for key in keys}
    ordered = sorted(keys, key=lambda key: (not FINDINGS[key].danger, -bits[key], key))
    return tuple(
        SignToTap(key, FINDINGS[key].label, tuple(questions_after(key)), rivals_of(key))
        for key in ordered
    )


def rivals_of(key: str) -> tuple[str, ...]:
    """The other bands of the figure that a finding is about."""
    return tuple(other for other in QUESTIONS[question_of(key)] if other != key)


def is_sign(key: str) -> bool:
    """Whether a finding is something to point at; of figures only those that say much by themselves."""
    strengths = {cause.rows[key].strength for cause in CAUSES.values() if key in cause.rows}
    if FINDINGS[key].input:
        return "strong-for" in strengths and not question_of(key).startswith(NEVER_SIGNS)
    return bool(strengths & {"strong-for", "for"})


def questions_after(key: str) -> Iterator[str]:
    """The next questions after a sign, each as if those before could not be answered."""
    case = read_case((key,), (), {})
    where, passed = FINDINGS[key].where, frozenset[str]()
    chances = complained_of(case, posterior(case, ()), where)
    for _ in range(AHEAD):
        finding = next_question(case, chances, where, passed)
        if finding is None:
            return
        yield question_of(finding)
        passed |= {finding}


def first_questions(shown: list[PlaceSigns]) -> list[tuple[str, Question]]:
    """The questions that stand ready in the page, each once, by name."""
    fields = fields_of(find("diagnose"))
    names = {name: None for place in shown for sign in place.signs for name in sign.then}
    return [(name, question(next(iter(QUESTIONS[name])), fields)) for name in names]


def reading_fields() -> Markup:
    """The few figures that the page takes, as the calculator's form writes them."""
    known = fields_of(find("diagnose"))
    return Markup("".join(field_html(under_key(key, known[key]), None, "") for key in READINGS))


def under_key(key: str, field: InputField) -> InputField:
    """A field under its dotted key."""
    return field.renamed(key)


def plant_names(library: Library) -> list[tuple[str, str]]:
    """Every name a plant may be typed by, with its key; accepted names first."""
    accepted = [(plant.name, slug) for slug, plant in library.offered().items()]
    known = {name.lower() for name, _ in accepted}
    others = [
        (name, slug)
        for slug, plant in library.offered().items()
        for name in plant.trade_names
        if name.lower() not in known
    ]
    names = [name for name, _ in others]
    return accepted + sorted(pair for pair in others if names.count(pair[0]) == 1)


def drawing(library: Library) -> Markup:
    """The drawing; with no script each place leads to its part of the index of symptoms."""
    words = library.vocabulary["looks"]
    labels = {where: word["label"] for where, word in words.items()}
    return Markup(places_drawing(labels, "symptoms/#"))
