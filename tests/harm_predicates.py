"""Named contradictions between answers: each gives the sentences that are at fault, or nothing.

An answer is the contract's plain data. ``case`` maps each reading to its value; ``deadly`` are the
readings of the case that kill.
"""

import re
from typing import NamedTuple


def words(pattern):
    """A pattern of whole words in any case."""
    return re.compile(pattern, re.IGNORECASE)


LARGE = words(r"\bchange (a third|half|a quarter|\d\d %|a third to half)")
CONDITION = words(r"\b(if|where|when|unless|until|before any|at most|no more than)\b")
FORBIDS = words(r"do not change (the )?water|before any change|change none")
NEGATED = words(r"\b(do not|put in nothing|raise nothing|never|no acid|can|would|turns)\b")
RAISES_PH = words(r"raise (the )?(ph|kh)|harder (tap )?water|\bsoda\b|\blime\b")
CALM = words(
    r"\bsafe\b|^steady|no change is needed(?! for it\b)|nothing is urgent|nothing needs doing"
)
NOTHING_YET = words(r"change nothing yet")
FEEDS = words(r"feed more|raise the food")
WARMS, COOLS = words(r"^warm (by|it|the|slowly)\b"), words(r"^cool (by|it|the|slowly)\b")
DARK = words(r"light off|lamp off|shorten the light")
LIMIT = words(r"°C .*an hour|slowly")


class Case(NamedTuple):
    """What was read, which of it kills, and every answer by its calculator."""

    readings: dict
    deadly: list
    answers: dict


def sentences(answer):
    """Every sentence of an answer's words: its first action, its notes, and how it is rated."""
    outputs = answer["outputs"]
    texts = [outputs.get("first_action") or "", *(note["text"] for note in answer["notes"])]
    return [
        part.strip() for text in texts for part in re.split(r"(?<=[.;]) ", text) if part.strip()
    ]


def said(case, *calculators):
    """All sentences of some answers, or of all."""
    names = calculators or case.answers
    return [one for name in names if name in case.answers for one in sentences(case.answers[name])]


def orders(sentence):
    """Whether a sentence orders a large change of water with no condition to it."""
    return (
        bool(LARGE.search(sentence))
        and not CONDITION.search(sentence)
        and not NEGATED.search(sentence)
    )


def orders_a_change_and_forbids_it(case):
    """One sentence orders a large change of water, another forbids any."""
    ordered = [one for one in said(case) if orders(one)]
    forbidden = [
        one for one in said(case) if FORBIDS.search(one) and not CONDITION.search(one.split(":")[0])
    ]
    return [*ordered, *forbidden] if ordered and forbidden else []


def orders_a_large_change_in_acid_water(case):
    """A large change with no condition where ammonium is stored in acid water, or pH itself kills."""
    acid = case.readings.get("ph", 7) < 6.5 and case.readings.get("ammonia_mg_n_l", 0) > 0.05
    if not acid and case.readings.get("ph", 7) > 4.5:
        return []
    return [
        one for one in said(case, "diagnose", "free-ammonia", "nitrogen-forecast") if orders(one)
    ]


def says_change_nothing_though_it_kills(case):
    return [one for one in said(case) if case.deadly and NOTHING_YET.search(one)]


def is_calm_though_it_kills(case):
    """“Safe”, “steady” or “no change is needed” of an answer that took a reading that kills."""
    return [
        one for one in said(case) if case.deadly and CALM.search(one) and not one.startswith("If ")
    ]


def raises_ph_with_ammonia(case):
    if case.readings.get("ammonia_mg_n_l", 0) <= 0.05:
        return []
    return [
        one for one in said(case)
        if RAISES_PH.search(one) and not NEGATED.search(one) and not CONDITION.search(one)
        and not one.startswith(("Look for", "With harder water do not"))
    ]  # fmt: skip


def warms_and_cools(case):
    both = [[one for one in said(case) if words.search(one)] for words in (WARMS, COOLS)]
    return [*both[0], *both[1]] if all(both) else []


def warms_or_cools_with_no_limit(case):
    """Warming or cooling is ordered, and not by how much an hour."""
    ordered = [one for one in said(case, "diagnose") if WARMS.search(one) or COOLS.search(one)]
    return [one for one in ordered if not LIMIT.search(one)]


def darkens_where_oxygen_kills(case):
    return [
        one for one in said(case, "diagnose") if "oxygen_mg_l" in case.deadly and DARK.search(one)
    ]


def feeds_where_water_kills(case):
    kills = {"ammonia_mg_n_l", "nitrite_mg_n_l", "nitrate_mg_l", "oxygen_mg_l"} & set(case.deadly)
    return [one for one in said(case) if kills and FEEDS.search(one) and not CONDITION.search(one)]


def is_not_urgent_though_it_kills(case):
    answer = case.answers.get("diagnose")
    calm = case.deadly and answer and not answer["outputs"]["urgent"]
    return [f"not urgent: {case.deadly}"] if calm else []


PREDICATES = [
    orders_a_change_and_forbids_it, orders_a_large_change_in_acid_water,
    says_change_nothing_though_it_kills, is_calm_though_it_kills, raises_ph_with_ammonia,
    warms_and_cools, warms_or_cools_with_no_limit, darkens_where_oxygen_kills,
    feeds_where_water_kills, is_not_urgent_though_it_kills,
]  # fmt: skip
