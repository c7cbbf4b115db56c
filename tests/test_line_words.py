"""A line of harm has one word in every picture that draws it."""

import pytest

from calculators.core.run import compute
from calculators.science.animals.reading_lines import LINES

FREE_AMMONIA = LINES["nh3_mg_n_l"]
DRAWN = [
    ("free-ammonia", {"ammonia_mg_l": 2.0, "ph": 8.0}),
    ("ammonia-change", {"ammonia_mg_l": 2.0, "ph": 8.0}),
    ("acclimate", {"bag_ammonia_mg_n_l": 4.0}),
]


@pytest.mark.parametrize(("name", "given"), DRAWN)
def test_free_ammonia_harms_and_can_kill_at_the_tables_lines(name, given):
    pictures = [one for one in compute(name, given).series.values() if one.lines]
    assert pictures
    for picture in pictures:
        assert [(line.label, line.value) for line in picture.lines] == [
            ("harms", FREE_AMMONIA.harmful_high),
            ("can kill", FREE_AMMONIA.deadly_high),
        ]


def test_a_forecasts_lines_of_nitrate_have_the_words_of_a_kept_tanks():
    answer = compute("nitrogen-forecast", {})
    lines = {
        line.label: line.value
        for picture in answer.series.values()
        for line in picture.lines
        if picture.label.startswith("Nitrate")
    }
    nitrate = LINES["nitrate_mg_l"]
    assert lines == {"harms": nitrate.harmful_high, "can kill": nitrate.deadly_high}


def test_a_cooling_tank_meets_the_same_words():
    answer = compute("warmth", {"water_c": 25, "room_c": 5})
    labels = {line.label for picture in answer.series.values() for line in picture.lines}
    assert labels == {"harms", "can kill"}
