"""Records of which the same keys were written share one set that says so; each still says its own keys."""

from scripts.records.claim import Range, Statement
from scripts.records.record import Record, with_shared_sets

CLAIM = {"source": "common-practice", "sure": "reported"}


class Holder(Record):
    """A record with others in it and in a list."""

    size: Range
    said: list[Statement]


def holder(**more):
    size = {"low": 1.0, "high": 2.0, **CLAIM, **more}
    said = [{"text": "One.", **CLAIM}, {"text": "Two.", **CLAIM}]
    return with_shared_sets(Holder.model_validate({"size": size, "said": said}))


def test_the_sets_are_shared_where_they_are_equal_and_nowhere_else():
    one, two, noted = holder(), holder(), holder(note="Measured.")
    one_said, two_said = one.said
    assert one_said.model_fields_set is two_said.model_fields_set
    assert one.size.model_fields_set is two.size.model_fields_set
    assert one.size.model_fields_set == {"low", "high", "source", "sure"}
    assert noted.size.model_fields_set == {"low", "high", "source", "sure", "note"}
    assert one_said.model_fields_set == {"text", "source", "sure"}
    assert one.model_fields_set == {"size", "said"}
