"""How much of a total-ammonia reading is toxic."""

from typing import Annotated, NamedTuple

from calculators.core.declare import calculator
from calculators.core.leads import Lead
from calculators.core.quantities import (
    PH,
    Nitrogen,
    Percent,
    Pka,
    Ratio,
    Temperature,
)
from calculators.core.quantity import Choices, Help, Label, Possible, Valid
from calculators.core.result import Note, Series
from calculators.free_ammonia.notes import AmmoniaReadings, notes
from calculators.science.animals.line_words import FREE_AMMONIA_LINES
from calculators.science.animals.reading_words import reading_notes
from calculators.science.water.ammonia import (
    Rating,
    acute_limit_mg_n_l,
    ammonium_pka,
    chronic_limit_mg_n_l,
    rate,
    unionised_share,
)
from calculators.science.water.ammonia_reading import (
    BOUND_IS_COUNTED,
    Reading,
    ReportedAs,
    total_nitrogen,
    unit_notes,
)


class FreeAmmonia(NamedTuple):
    """The toxic part of a reading, and the limits beside it."""

    pka: Pka
    unionised_percent: Annotated[Percent, Label("Toxic, un-ionised share")]
    unionised_mg_n_l: Annotated[Nitrogen, Label("Un-ionised ammonia, NH₃")]
    total_mg_n_l: Annotated[Nitrogen, Label("Total ammonia nitrogen")]
    acute_limit_mg_n_l: Annotated[
        Nitrogen, Label("Acute limit, total ammonia nitrogen"), Help("Mean of one hour.")
    ]
    chronic_limit_mg_n_l: Annotated[
        Nitrogen, Label("Chronic limit, total ammonia nitrogen"), Help("Mean of thirty days.")
    ]
    chronic_ratio: Annotated[
        Ratio, Label("Reading against the chronic limit"), Help("1 is at the limit.")
    ]
    rating: Annotated[
        Rating,
        Label("Rating"),
        Choices(
            ("below the working lines", "watch it daily", "act today"),
            levels=("info", "caution", "danger"),
        ),
    ]
    notes: tuple[Note, ...]
    series: dict[str, Series]


@calculator(
    "Free ammonia",
    sources=("emerson-1975", "epa-2013-ammonia", "ciaaw-2021"),
    leads_to=(
        Lead(
            "ammonia-change",
            "How to change water with this ammonia",
            {
                "ammonia_mg_l": "ammonia_mg_l",
                "reported_as": "reported_as",
                "ph": "ph",
                "temperature_c": "temperature_c",
            },
            needs=("ammonia_mg_l",),
        ),
    ),
)
def free_ammonia(
    ammonia_mg_l: Reading = 0.5,
    reported_as: ReportedAs = "unknown",
    ph: Annotated[
        PH,
        Possible(4, 11),
        Valid(6.5, 9.0),
        Help("Measure late in the light period, when it is highest."),
    ] = 7.6,
    temperature_c: Annotated[Temperature, Possible(0, 40), Valid(0, 30)] = 25.0,
) -> FreeAmmonia:
    """Find how much of a total-ammonia reading is the toxic, un-ionised form.

    A kit measures ammonium and ammonia together. Only the un-ionised part, NH₃, passes easily
    through gills; its share grows about tenfold for each unit of pH, and with warmth.

    The share is that of very dilute water. In a tank's harder water the true share is 3 to 9 %
    lower, so the answer errs on the animals' side.

    The limits are the United States' criteria for fresh water with mussels, the acute one in its
    stricter form for trout and salmon. They protect wild communities and are not a promise for a
    given shrimp. The lines for the rating are a working judgement: watch from half the chronic limit or
    0.02 mg/L NH₃ nitrogen, act from the chronic limit or 0.05 mg/L.
    """
    total = total_nitrogen(ammonia_mg_l, reported_as)
    share = unionised_share(ph, temperature_c)
    acute = acute_limit_mg_n_l(ph, temperature_c)
    chronic = chronic_limit_mg_n_l(ph, temperature_c)
    rating = rate(total / chronic, total * share)
    return FreeAmmonia(
        pka=ammonium_pka(temperature_c),
        unionised_percent=100 * share,
        unionised_mg_n_l=total * share,
        total_mg_n_l=total,
        acute_limit_mg_n_l=acute,
        chronic_limit_mg_n_l=chronic,
        chronic_ratio=total / chronic,
        rating=rating,
        notes=(
            *reading_notes(ammonia_is_read=True, ph=ph, temperature_c=temperature_c),
            *notes(rating, total, acute, AmmoniaReadings(ph, temperature_c)),
            *unit_notes(reported_as),
            BOUND_IS_COUNTED,
        ),
        series={"unionised_mg_n_l": against_ph(total, temperature_c)},
    )


def against_ph(total_mg_n_l: float, temperature_c: float) -> Series:
    """How the toxic part of this reading would change with pH."""
    steps = [6.0 + 0.1 * step for step in range(31)]
    return Series(
        label="Un-ionised ammonia of this reading",
        unit="mg N/L",
        x_label="pH",
        x_unit="",
        x=steps,
        y=[total_mg_n_l * unionised_share(ph, temperature_c) for ph in steps],
        lines=FREE_AMMONIA_LINES,
    )
