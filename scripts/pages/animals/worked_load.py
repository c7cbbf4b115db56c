"""What ten of an animal eat and give off, worked out by the stocking calculator itself."""

import json
from typing import NamedTuple

from markupsafe import Markup

from calculators.core import quantities as q
from calculators.core.listing import load_all
from calculators.core.run import run
from scripts.pages.ranges import figure_in_both, span
from scripts.pages.template import book_query
from scripts.records.animal import Animal

CALCULATOR = "stocking"
USUAL_COUNT = 10  # the number that every animal is compared by
LOAD_DIGITS = 2  # the estimates behind the figures are right within a factor of two


class Worked(NamedTuple):
    """A stock, its figures in words, and the address part that opens the calculator with it."""

    number: int
    length: Markup
    mass_g: str
    feed_g_week: str
    feed_span_g_week: str
    ammonia_n_mg_day: str
    protein_percent: str
    query: Markup


def worked(slug: str, animal: Animal) -> Worked:
    """The figures of ten of them, or of as many as may be kept, at a middling length."""
    most = animal.group_of.most
    number = USUAL_COUNT if most is None else min(most, USUAL_COUNT)
    stock = [{"kind": slug, "count": number, "mean_length_mm": animal.body.typical_mm}]
    outputs = run(CALCULATOR, {"animals": stock})["outputs"]
    return Worked(
        number=number,
        length=figure_in_both(q.BodyLength, animal.body.typical_mm),
        mass_g=shown(outputs["biomass_g"]),
        feed_g_week=shown(outputs["feed_g_week"]),
        feed_span_g_week=span(outputs["feed_low_g_week"], outputs["feed_high_g_week"], LOAD_DIGITS),
        ammonia_n_mg_day=shown(outputs["ammonia_n_mg_day"]),
        protein_percent=shown(default("protein_percent")),
        query=book_query({"animals": json.dumps(stock, separators=(",", ":"))}),
    )


def shown(value: float) -> str:
    """A figure as the page shows it. The ``value`` is in its own unit, which stands beside it."""
    return span(value, value, LOAD_DIGITS)


def default(key: str) -> float:
    """A default of the calculator, so that the page names what it reckoned with.

    In the metric unit of the input.
    """
    fields = {field.key: field.default for field in load_all()[CALCULATOR].inputs}
    return float(fields[key])
