"""The forecast held against published experiments: run with their conditions, nothing tuned to a result."""

import pytest

from scripts.pages.calculators.nitrogen_model import model_page
from scripts.records.experiments import (
    Observation,
    compared,
    experiments,
    falling_day,
    held_against,
)

ALL = experiments("nitrogen-forecast")


@pytest.mark.parametrize("experiment", ALL, ids=[one.name for one in ALL])
def test_the_words_say_whether_it_was_met(experiment):
    """So that a change of the model that mends or spoils an experiment changes the words, too."""
    found = held_against("nitrogen-forecast", experiment)
    assert all(one.predicted is not None for one in found)
    word = "Met" if all(one.is_met for one in found) else "Missed"
    assert experiment.says.startswith(word), [(one.predicted, one.error) for one in found]


def test_three_and_more_experiments_with_a_source_that_was_read(library):
    assert len({one.source for one in ALL}) >= 3
    for one in ALL:
        assert library.sources[one.source].seen == (
            "abstract" if one.read == "abstract" else "document"
        )


def test_the_page_shows_observed_predicted_and_error(library):
    page = model_page(library)
    for one in ALL:
        assert one.name in page
        assert one.says.split(":")[0] in page
    assert page.index("{ #experiments }") < page.index("{ #left-out }")


def test_an_error_is_the_distance_to_what_was_observed():
    look = Observation(what="x", observed=[2.0, 4.0], unit="d", output="x")
    assert [compared(look, value).error for value in (1.0, 3.0, 7.0)] == [-1.0, 0.0, 3.0]
    assert compared(look, None).error is None
    assert falling_day([(0, 5.0), (2, 3.0), (4, 1.0)], 2.0) == 3.0
    assert falling_day([(0, 5.0), (2, 3.0)], 2.0) is None


def test_half_or_twice_the_feed_moves_the_cold_filter_little():
    """What its `not_said` claims."""
    cold = next(one for one in ALL if one.source == "biofilter-start-2024")
    fed = [cold.model_copy(update={"given": cold.given | {"feed_g_week": f}}) for f in (0.5, 2, 4)]
    days = [held_against("nitrogen-forecast", one)[0].predicted for one in fed]
    assert max(abs(day - days[1]) for day in days) <= 9
