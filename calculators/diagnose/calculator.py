"""What is wrong, how sure that is, and what to look at next."""

from typing import Annotated, Any

from calculators.core.declare import calculator
from calculators.core.form_hints import Part
from calculators.core.quantities import (
    Concentration,
    Cover,
    Days,
    FeedMass,
    HoursADay,
    Nitrogen,
    Volume,
)
from calculators.core.quantity import Help, Keys, Label, Possible
from calculators.diagnose.case import check_findings, contradictions, figures_of
from calculators.diagnose.case_read import NewWater, read_case
from calculators.diagnose.cause_posterior import posterior
from calculators.diagnose.first_step import FirstStepEvidence, to_do_first
from calculators.diagnose.follow_up import expected, filled
from calculators.diagnose.hand_on import LEADS
from calculators.diagnose.next_check import best_check, check_of_animals
from calculators.diagnose.outputs import Diagnosis, NextCheck, Readings
from calculators.diagnose.problem_table import CAUSES, FINDINGS, PLANTS, WHERE
from calculators.diagnose.ranking import ranked
from calculators.diagnose.triage import (
    animals_come_first,
    is_enough,
    is_urgent,
    warnings,
    worth_asking_about,
)
from calculators.diagnose.words import disagreement, why_check
from calculators.science.animals.reading_lines import LINE_SOURCES
from calculators.science.evidence.weighing import SOMETHING_ELSE
from calculators.science.rounding import RESULT_DIGITS
from calculators.science.water.new_water import TapGh, TapKh, TapPh


def findings_by_place() -> dict[str, Any]:
    """Every finding's key, label and question, grouped by where one looks; for ``--describe``."""
    return {
        "findings": [
            {
                "where": where,
                "label": label,
                "findings": [
                    {
                        "key": key,
                        "question": finding.question,
                        "label": finding.label,
                        "from_input": finding.input,
                    }
                    for key, finding in FINDINGS.items()
                    if finding.where == where
                ],
            }
            for where, label in WHERE.items()
        ]
    }


Signs = Annotated[
    list[str] | None, Keys(tuple(FINDINGS), tuple(finding.label for finding in FINDINGS.values()))
]


CARE = Part("About the tank and its care", closed=True)
TAP = Part("About your new water", closed=True)


@calculator(
    "Diagnosis",
    sources=("epa-2013-ammonia", *LINE_SOURCES),
    leads_to=LEADS,
    describe_more=findings_by_place,
    contradictions=contradictions,
)
def diagnose(
    plant: Annotated[
        str | None,
        Label("Plant"),
        Keys(tuple(PLANTS), tuple(plant.name for plant in PLANTS.values())),
        Help("The plant that looks wrong, if it has a record."),
    ] = None,
    findings: Annotated[Signs, Label("What you see"), Help("Keys, with commas between.")] = None,
    absent: Annotated[
        Signs, Label("What you looked for and did not find"), Help("Keys, with commas between.")
    ] = None,
    readings: Annotated[Readings | None, Label("Readings")] = None,
    light_hours: Annotated[HoursADay | None, Label("Light, hours a day"), CARE] = None,
    feed_g_week: Annotated[FeedMass | None, Label("Dry food a week"), CARE] = None,
    volume_l: Annotated[Volume | None, CARE] = None,
    cover_percent: Annotated[Cover | None, CARE] = None,
    days_since_planting: Annotated[Days | None, Label("Days since planting"), CARE] = None,
    tank_age_days: Annotated[Days | None, Label("Days since the soil was flooded"), CARE] = None,
    tap_ph: Annotated[
        TapPh,
        Help("It says nothing of the cause. It decides how water may be changed."),
        TAP,
    ] = None,
    tap_kh_dh: Annotated[TapKh, TAP] = None,
    tap_gh_dh: Annotated[TapGh, TAP] = None,
    tap_nitrate_mg_l: Annotated[
        Concentration | None, Label("Nitrate in the new water"), Possible(0, 1_000), TAP
    ] = None,
    tap_ammonia_mg_n_l: Annotated[
        Nitrogen | None,
        Label("Ammonia of the new water, as nitrogen"),
        Possible(0, 50),
        Help("Test the tap; chloramine that a conditioner splits leaves ammonia."),
        TAP,
    ] = None,
) -> Diagnosis:
    """Rank what may be wrong, with reasons, and name the next thing to look at.

    Bayes' rule over the problem records. Each problem has a weight by how common it is. Each
    question (a finding, or a reading with its bands) has a probability b for each answer when the
    trouble is something else. A problem multiplies the odds of an answer by K, from 16 (speaks
    strongly for) down to 0.01 (all but rules out): p = K b / (sum of K b over all answers). An
    answer that is there counts p / b; one that was looked for and is not there counts (1 - p) /
    (1 - b). So one figure gives both, and a sign that is not there tells most where the problem
    nearly always shows it. What nobody looked at counts nothing.

    Findings are not independent: the strongest for a problem counts in full, each further one with
    the power of 0.8. Something that stands in no record keeps a share of its
    own, and never less than 5 %. The classes are our judgement, not measurements: take the
    percentages as an order, not as odds to bet on.

    Next comes the question that is expected to tell most about the cause (mutual information over
    each leading cause and all the rest as one).
    Animals come first: a reading that kills is urgent by itself, with its own first step. A
    problem that endangers them goes before a likelier one about leaves, and
    where a sign says that they are in danger, the next question is about that: how they are, where nobody
    has said it yet.
    """
    signs, not_there, values = findings or [], absent or [], readings or Readings()
    check_findings(signs, not_there)
    figures = figures_of(
        plant, values._asdict(), light_hours, feed_g_week, volume_l, cover_percent,
        days_since_planting, tank_age_days,
    )  # fmt: skip
    tap = NewWater(tap_ph, tap_kh_dh, tap_gh_dh, tap_nitrate_mg_l, tap_ammonia_mg_n_l)
    case = read_case(signs, not_there, figures, tap)
    named = PLANTS[plant].troubles if plant else ()
    chances = posterior(case, named)
    urgent = is_urgent(case, chances, named, values._asdict())
    enough = is_enough(case, chances)
    action, action_for = to_do_first(
        FirstStepEvidence(case, chances, named, values._asdict(), urgent, enough)
    )
    worth = worth_asking_about(case, chances)
    check = check_of_animals(case, worth) or best_check(case, worth)
    expected_for = action_for if enough or urgent else None
    return Diagnosis(
        ranked=ranked(case, chances, plant),
        next_check=check
        and NextCheck(
            check.finding,
            FINDINGS[check.finding].question,
            why_check(check, animals_come_first(case)),
        ),
        first_action=action,
        urgent=urgent,
        enough=enough,
        first_action_for=action_for,
        something_else_percent=round(100 * chances[SOMETHING_ELSE], RESULT_DIGITS),
        expect=expected(expected_for),
        if_not=CAUSES[expected_for].ask if expected_for else None,
        calculators=filled(
            expected_for,
            {
                "readings": values._asdict(),
                "volume_l": volume_l,
                "cover_percent": cover_percent,
                "feed_g_week": feed_g_week,
                "light_hours": light_hours,
            },
        ),
        notes=(*warnings(case, values._asdict(), urgent, enough), *disagreement(case)),
    )
