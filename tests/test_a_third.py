"""The litres and buckets of a third, as the page of animals in danger has them for each size of tank."""

import re
from itertools import pairwise

import pytest

from calculators.core.quantities import US_GALLON_L
from scripts.setup.paths import DOCS

OPTION = re.compile(r"^\| ((\d+) L \([^|]*\)) \| ([^|]+) \| ([^|]+) \|$", re.MULTILINE)
ROWS = OPTION.findall((DOCS / "danger.md").read_text(encoding="utf-8"))
BUCKET = {"L": 10, "gal": 5}


def total(words, unit):
    """How much the words come to: the sum of buckets and rest, which the words name first, too."""
    amounts = [float(one) for one in re.findall(rf"(\d+(?:\.\d+)?) {unit}", words)]
    buckets = re.search(r"(\d+) buckets? of", words)
    if not buckets:
        assert len(amounts) == 1
        return amounts[0]
    said, size, *rest = amounts
    assert size == BUCKET[unit]
    assert said == pytest.approx(int(buckets[1]) * size + sum(rest))
    return said


@pytest.mark.parametrize("row", ROWS, ids=[row[1] for row in ROWS])
def test_a_third_is_a_third_in_litres_and_in_gallons(row):
    _, litres, metric, us = row
    third = int(litres) / 3
    assert total(metric, "L") == pytest.approx(third, abs=0.5)
    assert total(us, "gal") * US_GALLON_L == pytest.approx(third, rel=0.07)


@pytest.mark.parametrize("row", ROWS, ids=[row[1] for row in ROWS])
def test_a_size_has_both_its_names(row):
    litres, gallons = re.fullmatch(r"(\d+) L \(([\d.]+) gal\)", row[0]).groups()
    assert litres == row[1]
    assert float(gallons) * US_GALLON_L == pytest.approx(int(litres), rel=0.06)


def test_sizes_stand_so_close_that_the_nearest_is_near():
    sizes = [int(row[1]) for row in ROWS]
    assert sizes == sorted(sizes)
    assert len(sizes) > 20
    assert all(high / low <= 1.26 for low, high in pairwise(sizes))
