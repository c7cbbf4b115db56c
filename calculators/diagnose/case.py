"""The inputs of a diagnosis as figures by the keys that the findings are derived from."""

from collections.abc import Collection, Mapping
from typing import Any

from calculators.core.result import Refusal, Refused
from calculators.core.unknown_words import keys_in
from calculators.diagnose.problem_table import FINDINGS, PLANTS, question_of

LITRES = 100  # food is compared for each 100 L


def figures_of(
    plant: str | None,
    readings: Mapping[str, float | None],
    light_hours: float | None,
    feed_g_week: float | None,
    volume_l: float | None,
    cover_percent: float | None,
    days_since_planting: float | None,
    tank_age_days: float | None,
) -> dict[str, Any]:
    """Everything that is known, by input; food for each 100 L only where the volume is known."""
    feed = None if feed_g_week is None or volume_l is None else feed_g_week / volume_l * LITRES
    figures: dict[str, Any] = {f"readings.{key}": value for key, value in readings.items()}
    figures |= {
        "light_hours": light_hours,
        "feed_g_week_100_l": feed,
        "cover_percent": cover_percent,
        "days_since_planting": days_since_planting,
        "tank_age_days": tank_age_days,
    }
    if plant:
        kind = PLANTS[plant]
        figures |= {
            "plant.habit": kind.habit,
            "plant.genus": kind.genus,
            "plant.nitrogen_role": kind.nitrogen_role,
            # "either" does not say in which form this one was bought
            "plant.bought_as": None if kind.bought_as == "either" else kind.bought_as,
        }
    return {key: value for key, value in figures.items() if value is not None}


def check_findings(present: Collection[str], absent: Collection[str]) -> None:
    """Refuse a finding that is both there and not there, and two answers to one question.

    Raises ``Refused`` with each of them.
    """
    wrong = do_not_agree(present, absent)
    if wrong:
        raise Refused(*wrong)


def contradictions(given: Mapping[str, Any]) -> list[Refusal]:
    """What contradicts in inputs as they were given, some of which may be unreadable; a refusal for each."""
    return do_not_agree(*(keys_in(given.get(key)) for key in ("findings", "absent")))


def do_not_agree(present: Collection[str], absent: Collection[str]) -> list[Refusal]:
    """A finding that is both there and not there, and two answers to one question."""
    wrong = [
        Refusal("absent", f"{key} is given as present too")
        for key in FINDINGS
        if key in present and key in absent
    ]
    answers: dict[str, list[str]] = {}
    for key in FINDINGS:
        if key in present:
            answers.setdefault(question_of(key), []).append(key)
    wrong += [
        Refusal("findings", f"{' and '.join(keys)} cannot be true together")
        for keys in answers.values()
        if len(keys) > 1
    ]
    return wrong
