"""What goes into a diagnosis beside findings, and what comes out."""

from typing import Annotated, NamedTuple

from calculators.core.in_words import InWords
from calculators.core.quantities import (
    PH,
    CarbonateHardness,
    Concentration,
    GeneralHardness,
    Nitrogen,
    Oxygen,
    Percent,
    Temperature,
)
from calculators.core.quantity import AsRows, Help, Label, RowsPlace, RowsStyle
from calculators.core.result import Note
from calculators.diagnose.follow_up import Day, PrefilledCalculator
from calculators.diagnose.result_in_words import (
    calculators_in_words,
    chance_in_words,
    check_in_words,
    danger_in_words,
    days_in_words,
    first_step_in_words,
    otherwise,
    problem_of_first_step,
    something_else,
)


class Readings(NamedTuple):
    """Test results; what was not measured stays empty."""

    nitrate_mg_l: Annotated[Concentration | None, Label("Nitrate"), Help("As nitrate.")] = None
    phosphate_mg_l: Annotated[Concentration | None, Label("Phosphate")] = None
    ammonia_mg_n_l: Annotated[
        Nitrogen | None, Label("Total ammonia"), Help("As nitrogen: ammonium x 0.78.")
    ] = None
    nitrite_mg_n_l: Annotated[
        Nitrogen | None, Label("Nitrite"), Help("As nitrogen: nitrite x 0.30.")
    ] = None
    ph: PH | None = None
    temperature_c: Temperature | None = None
    gh_dh: GeneralHardness | None = None
    kh_dh: CarbonateHardness | None = None
    oxygen_mg_l: Oxygen | None = None


class RankedCause(NamedTuple):
    """One possible cause."""

    problem: Annotated[str, Label("Problem")]
    probability_percent: Annotated[Percent, Label("Probability")]
    because: Annotated[list[str], Label("Because")]
    against: Annotated[list[str], Label("Against")]
    name: Annotated[str, Label("Name")]
    urgency: Annotated[str, Label("How urgent")]


class NextCheck(NamedTuple):
    """The one thing to look at next."""

    finding: Annotated[str, Label("Finding")]
    question: Annotated[str, Label("Question")]
    why: Annotated[str, Label("Why")]


class Diagnosis(NamedTuple):
    """Possible causes in order, and what to do about the animals first."""

    ranked: Annotated[
        list[RankedCause],
        Label("Possible causes"),
        AsRows(
            RowsStyle.CARDS,
            "name",
            page="problems/{problem}/",
            bar="probability_percent",
            bar_words=chance_in_words,
            lines="because",
            contrary="against",
            place=RowsPlace.LAST,  # what to do first stands before it
        ),
    ]
    first_action: Annotated[str, Label("Do first"), InWords(first_step_in_words, RowsPlace.FIRST)]
    next_check: Annotated[
        NextCheck | None, Label("Look at this next"), InWords(check_in_words, RowsPlace.NEXT)
    ]
    urgent: Annotated[bool, Label("Animals may be in danger"), InWords(danger_in_words)]
    enough: Annotated[bool, Label("Enough to tell")]
    first_action_for: Annotated[
        str | None,
        Label("The problem that the first step is for"),
        InWords(problem_of_first_step, RowsPlace.FIRST),
    ]
    something_else_percent: Annotated[
        Percent, Label("Something that is not in this book"), InWords(something_else)
    ]
    expect: Annotated[
        list[Day],
        Label("What to expect, and by which day"),
        InWords(days_in_words, RowsPlace.LAST),
    ]
    if_not: Annotated[
        str | None, Label("If that does not come"), InWords(otherwise, RowsPlace.LAST)
    ]
    calculators: Annotated[
        list[PrefilledCalculator],
        Label("Calculators with your figures"),
        InWords(calculators_in_words, RowsPlace.LAST),
    ]
    notes: tuple[Note, ...]
