"""The table of animals: what of their records the calculators need."""

from typing import Any

from scripts.records.animal import Animal
from scripts.records.load import Library


def entry(animal: Animal) -> dict[str, Any]:
    """The fields of one animal that calculators use, by the names they use."""
    feed, warmth = animal.feeding.feed_percent_day, animal.needs.temperature_c
    return {
        "name": animal.name,
        "common": animal.trade_names[0] if animal.trade_names else "",
        "group": animal.group,
        "a": animal.body.length_weight.a,
        "b": animal.body.length_weight.b,
        "feed_low": feed.low,
        "feed_high": feed.high,
        "temperature_low": warmth.low,
        "temperature_high": warmth.high,
        **low_and_high("ph", animal.needs.ph),
        **low_and_high("gh", animal.needs.gh_dh),
        "company": animal.company.text,
        "longest_mm": animal.body.length_mm.high,
        "least": animal.group_of.least,
        "most": animal.group_of.most,
        "law": [law.place for law in animal.law],
        "offered": animal.offered,
    }


def low_and_high(name: str, span: Any) -> dict[str, float]:
    """Both ends of a range by the names that the calculators use; nothing where none is known."""
    return {} if span is None else {f"{name}_low": span.low, f"{name}_high": span.high}


def table(library: Library) -> dict[str, Any]:
    """Every animal by key."""
    return {key: entry(animal) for key, animal in sorted(library.animals.items())}
