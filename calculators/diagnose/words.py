"""Because and against, in words."""

import math
from collections.abc import Collection

from calculators.core.numbers import show_number
from calculators.core.result import Note
from calculators.core.wording import joined, upper
from calculators.diagnose.case_read import Case
from calculators.diagnose.cause_posterior import Term, terms
from calculators.diagnose.likelihood import ODDS
from calculators.diagnose.next_check import Check
from calculators.diagnose.problem_table import CAUSES, FINDINGS, PLANTS, QUESTIONS, EvidenceRow
from calculators.science.animals.reading_steps import TESTS, asked_for
from calculators.science.animals.reading_words import WARMTH_STEP

WORTH_SAYING = math.log(1.08)  # a weaker likelihood ratio is no reason
MOST_REASONS = 8
ANIMALS_FIRST = "Animals first"
AIR_FIRST = f"{ANIMALS_FIRST}. Add air and stop feeding."
ASK_A_VET = "Ask a vet who treats fish or invertebrates if they are not better within hours."
WHAT_KILLS_SOON = ("ammonia_mg_n_l", "nitrite_mg_n_l", "ph", "temperature_c")
TOXIC = ("ammonia_mg_n_l", "nitrite_mg_n_l")
CHANGE_FIRST = "Change a third of the water now with dechlorinated water of the same temperature."
CHECK_THE_HEATER = (
    " The water is cold: check the heater too, unplugged before your hands go in, and warm slowly, by no "
    f"more than {WARMTH_STEP} an hour."
)


def then_test(known: Collection[str]) -> str:
    """The tests that are still to take where animals suffer, and whom to ask; readings ``known`` by key."""
    tests = asked_for(WHAT_KILLS_SOON, known).replace("Test ", "Then test ").replace(" now.", ".")
    return f"{tests} {ASK_A_VET}".strip()


def look_too(known: Collection[str]) -> str:
    """What to look at beside a reading that harms; readings that are ``known``, by key, are not asked for."""
    unread = [TESTS[one] for one in TOXIC if one not in known]
    tests = f", test {joined(unread)}," if unread else ","
    return f"Look at the animals{tests} then answer the next check."


def look_first(known: Collection[str]) -> str:
    """What to do where too little is known; readings that are ``known``, by key, are not asked for."""
    before = "" if TOXIC[0] in known else ", and test ammonia before you change water"
    return (
        f"Change nothing yet. {look_too(known)} If any animal gasps, lies down or races about, add air "
        f"first{before}."
    )


def reasons(cause: str, case: Case, plant: str | None) -> tuple[list[str], list[str]]:
    """What speaks for a cause and against it, the strongest first."""
    ordered = sorted(terms(cause, case), key=lambda term: -abs(term.log_ratio))
    telling = [term for term in ordered if abs(term.log_ratio) >= WORTH_SAYING]
    because = [sentence(cause, term) for term in telling if term.log_ratio > 0][:MOST_REASONS]
    against = [sentence(cause, term) for term in telling if term.log_ratio < 0][:MOST_REASONS]
    if plant and cause in PLANTS[plant].troubles:
        because.append(f"{PLANTS[plant].name} is known for it: its record names this trouble.")
    return because, against


def sentence(cause: str, term: Term) -> str:
    """One reason: what was found, and why it speaks for the cause or against it."""
    rows = CAUSES[cause].rows
    if term.present:
        sign = upper(FINDINGS[term.present].label) + shown(term.value)
        if term.present in rows:
            return f"{sign}: {rows[term.present].why}."
        return f"{sign}: this cause {mostly(cause, term.question)}."
    explained = [key for key in sorted(term.absent) if key in rows]
    keys = explained or sorted(term.absent)
    row = rows.get(keys[0])
    if term.value is not None:
        return f"The reading{shown(term.value)} lies between: this cause {mostly(cause, term.question)}."
    return f"Not there: {FINDINGS[keys[0]].label}. {tells(row, term.log_ratio)}"


def tells(row: EvidenceRow | None, log_ratio: float) -> str:
    """What the absence of a finding says."""
    if row is None:
        return "It would say something else." if log_ratio > 0 else "It is often there."
    if log_ratio > 0:
        return f"It would speak against this: {row.why}."
    often = "nearly always" if row.hallmark else "often"
    return f"This cause {often} shows it: {row.why}."


def mostly(cause: str, question: str) -> str:
    """The answers that a cause makes likelier, or those it makes less likely."""
    rows = {
        key: CAUSES[cause].rows[key] for key in QUESTIONS[question] if key in CAUSES[cause].rows
    }
    likely = [FINDINGS[key].label for key, row in rows.items() if ODDS[row.strength] > 1]
    if likely:
        return f"mostly comes with {' or '.join(likely)}"
    unlikely = [FINDINGS[key].label for key, row in rows.items() if ODDS[row.strength] < 1]
    return f"seldom comes with {' or '.join(unlikely)}"


def shown(value: float | None) -> str:
    """A reading behind its finding; ``value`` is in its metric unit, which is not written."""
    return "" if value is None else f" ({show_number(value)})"


def why_check(check: Check, danger: bool) -> str:
    """Why a finding is worth looking for; in danger the chances are among what endangers animals."""
    among = "what endangers animals" if danger else "the leading causes"
    return (
        f"It tells {among} apart best: “{CAUSES[check.cause].name}” would stand at about "
        f"{percent(check.if_there)} % with it and {percent(check.if_not)} % without it"
        f"{', among those' if danger else ''}."
    )


def percent(chance: float) -> str:
    """A probability as a whole percentage."""
    return show_number(round(100 * chance), 3)


def disagreement(case: Case) -> list[Note]:
    """Findings that a figure contradicts, where the figure was used, and findings that do not agree."""
    sentences = []
    if case.disagree:
        labels = "; ".join(FINDINGS[key].label for key in case.disagree)
        sentences.append(f"A figure you gave says otherwise, and the figure was used: {labels}.")
    sentences += [
        f"These do not go together; look again: {FINDINGS[finding].label}; {FINDINGS[other].label}."
        for finding, other in case.at_odds()
    ]
    return [Note("caution", text) for text in sentences]
