import itertools
import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import kendalltau, mstats, theilslopes

from calculators.core.result import BadInput
from calculators.core.run import compute, run
from calculators.science.trends.kendall import exact_limits, inversion_counts, limits_for
from calculators.science.trends.stretches import Change
from calculators.science.trends.theil_sen import theil_sen
from calculators.trend.next_reading import narrowed_by
from calculators.trend.trend_outlook import holding_change_percent, settles_at


def ask(days, values, changes=(), **more):
    rows = [{"day": day, "value": value} for day, value in zip(days, values, strict=True)]
    cuts = [{"day": day, "percent": percent} for day, percent in changes]
    return run("trend", {"readings": rows, "changes": cuts, **more})


def outputs(*given, **more):
    return ask(*given, **more)["outputs"]


def texts(answer):
    return " ".join(note["text"] for note in answer["notes"])


# Against scipy, which shares no code with ours


@pytest.mark.parametrize("count", [4, 5, 9, 30])
@pytest.mark.parametrize("step", [0.001, 5.0])  # 5: a coarse kit, so many ties
@pytest.mark.parametrize("seed", range(5))
def test_one_stretch_agrees_with_scipys_theilslopes(count, step, seed):
    """The same slope; limits by the exact distribution, next to those of the normal approximation."""
    dice = np.random.default_rng([count, seed])
    days = np.sort(dice.choice(400, count, replace=False)) / 2
    values = np.round((20 + 0.1 * days + dice.normal(0, 4, count)).clip(0) / step) * step
    slope = theil_sen([list(zip(days.tolist(), values.tolist(), strict=True))])
    theirs = theilslopes(values, days, alpha=0.95)
    assert slope.middle == pytest.approx(theirs.slope)
    # Equal readings shrink scipy's variance, not what a coarse kit hides: ours are never narrower.
    assert slope.low <= theirs.low_slope + 1e-9
    assert slope.high >= theirs.high_slope - 1e-9


def test_stretches_agree_with_scipys_seasonal_slope():
    dice = np.random.default_rng(7)
    table = np.cumsum(dice.normal(1, 2, (6, 4)), axis=0)  # rows are days, columns stretches
    stretches = [[(float(day), float(y)) for day, y in enumerate(column)] for column in table.T]
    slope = theil_sen(stretches)
    assert slope.middle == pytest.approx(mstats.sen_seasonal_slopes(table).inter_slope)


# How sure the limits are: the exact distribution of Kendall's score


@pytest.mark.parametrize("count", range(4, 31))
def test_coverage_is_what_scipys_exact_test_leaves(count):
    """An order with as many inversions as are left out is the last that scipy's test rejects at 5 %."""
    left_out, coverage = exact_limits((count,))

    def p_value(inversions):
        order, away = [], inversions
        for rank in range(count):  # each new rank goes as far forward as there are inversions left
            place = min(rank, away)
            order.insert(rank - place, rank)
            away -= place
        return kendalltau(range(count), order, method="exact").pvalue

    assert 1 - coverage == pytest.approx(p_value(left_out), abs=1e-12)
    if count > 4:
        assert p_value(left_out) <= 0.05 < p_value(left_out + 1)


# Smallest S at which a one-sided Mann-Kendall test finds a trend at 95 % and at 99 %: table of Gilbert
# 1987, Statistical Methods for Environmental Pollution Monitoring, as a database's help reprints it.
GILBERT = {
    5: (8, 10), 6: (11, 13), 7: (13, 17), 8: (16, 20), 9: (18, 24), 10: (21, 27),
}  # fmt: skip


@pytest.mark.parametrize(("count", "scores"), GILBERT.items())
def test_the_distribution_gives_a_published_table(count, scores):
    pairs, orders = math.comb(count, 2), math.factorial(count)
    counts = inversion_counts([count])
    for score, level in zip(scores, (0.05, 0.01), strict=True):
        inversions = (pairs - score) // 2
        assert (pairs - score) % 2 == 0
        assert sum(counts[: inversions + 1]) / orders <= level
        assert sum(counts[: inversions + 2]) / orders > level


@pytest.mark.parametrize("sizes", [(2, 2), (3, 2), (2, 3, 3), (4, 2, 3), (5, 3)])
def test_stretches_are_convolved_as_counting_every_order_does(sizes):
    def wrong_way(order):
        return sum(a > b for a, b in itertools.combinations(order, 2))

    counted = [
        sum(map(wrong_way, orders))
        for orders in itertools.product(*(itertools.permutations(range(n)) for n in sizes))
    ]
    expected = np.bincount(counted)[: len(inversion_counts(sizes))]
    assert inversion_counts(sizes) == expected.tolist()


@pytest.mark.parametrize(
    ("sizes", "percent"),
    [
        ([4], 91.67), ([2] * 4, 87.5), ([2] * 5, 93.75), ([3, 3], 94.44),  # 1 - 2 / orders, by hand
        ([5], 98.33), ([2] * 6, 96.875),
        ([3], None), ([2] * 3, None), ([], None), ([1, 1, 1], None),
    ],
)  # fmt: skip
def test_few_pairs_say_their_true_coverage(sizes, percent):
    limits = limits_for(sizes)
    assert (limits and limits.left_out) in (None, 0)
    assert (limits and 100 * limits.coverage) == (percent and pytest.approx(percent, abs=0.005))


@pytest.mark.parametrize(
    ("starts", "count", "percent", "words"),
    [
        ([0], 4, 91.67, "91.7 % sure. For 95 % take one reading more"),
        # a third reading in the last stretch: 1 - 2 / (2 * 2 * 2 * 6), 95.8 %
        ([0, 7, 14, 21], 2, 87.5, "87.5 % sure. For 95 % take one reading more"),
    ],
)
def test_less_than_95_percent_is_said_and_what_it_takes(starts, count, percent, words):
    days = [start + 3.0 * place for start in starts for place in range(count)]
    values = [10 + 0.7 * day + 0.1 * (day % 2) for day in days]
    answer = ask(days, values, [(start - 0.5, 30) for start in starts if start])
    found = answer["outputs"]
    assert found["coverage_percent"] == pytest.approx(percent, abs=0.01)
    assert found["slope_low_week"] < found["slope_week"] < found["slope_high_week"]
    assert words in texts(answer)
    assert "95 % sure" not in texts(answer)
    assert "at 95 %" not in texts(answer)
    assert found["next_reading_ratio"] is None, "limits that are not equally sure do not compare"


def test_five_readings_bear_95_percent_limits_and_no_excuse():
    answer = ask([0, 3, 6, 9, 12], [10, 12, 14.5, 16, 18])
    assert answer["outputs"]["coverage_percent"] == pytest.approx(98.33, abs=0.01)
    assert "98.3 % sure" in texts(answer)
    assert "So few pairs" not in texts(answer)


@pytest.mark.parametrize(("sizes", "step"), [([4], 0), ([2] * 4, 0), ([5], 0), ([4], 5), ([7], 5)])
def test_limits_hold_the_true_slope_as_often_as_they_say(sizes, step):
    """4,000 simulated tanks, with a meter (step 0) and with a kit that rounds to 5 mg/L."""
    dice, hits, tanks = np.random.default_rng(3), 0, 4_000
    for _ in range(tanks):
        stretches = []
        for size in sizes:
            values = 20 + 0.5 * np.arange(size) * 3 + dice.normal(0, 4, size)
            values = np.round(values / step) * step if step else values
            stretches.append([(3.0 * n, float(v)) for n, v in enumerate(values)])
        slope = theil_sen(stretches)
        hits += slope.low <= 0.5 <= slope.high
    said = exact_limits(tuple(sizes)).coverage
    spread = 3 * math.sqrt(said * (1 - said) / tanks)
    assert hits / tanks >= said - spread
    if not step:
        assert hits / tanks <= said + spread


def test_one_reading_more_narrows_as_scipy_recomputes_it():
    """The next reading at nine places of the spread of a prediction, each limit recomputed by scipy."""
    days, values = (
        np.array([0, 3, 7, 10, 14, 17, 21.0]),
        np.array([10, 11, 13, 13.5, 16, 16.2, 18.5]),
    )
    now = theilslopes(values, days)
    level = np.median(values + now.slope * (28 - days))
    away = np.sort(values - now.slope * days - np.median(values - now.slope * days))
    spread = np.sqrt((1 + 1 / 7 + (28 - days.mean()) ** 2 / (7 * days.var())) * 7 / 5)
    widths = []
    for off in spread * away:  # seven readings, so seven places
        then = theilslopes([*values, level + off], [*days, 28])
        widths.append(then.high_slope - then.low_slope)
    expected = np.mean(widths) / (now.high_slope - now.low_slope)
    found = outputs(days.tolist(), values.tolist(), next_after_days=7)
    assert found["next_reading_ratio"] == pytest.approx(expected)
    assert 0 < found["next_reading_ratio"] < 1


@pytest.mark.parametrize(("starts", "count"), [([0], 6), ([0], 12), ([0, 20, 40], 4)])
def test_the_narrowing_that_is_promised_comes_true_on_average(starts, count):
    """Against simulated tanks: a line, normal errors, and the reading that then really comes."""
    dice = np.random.default_rng(5)
    promised, kept = [], []
    for _ in range(250):
        stretches = [
            [(start + 3.0 * n, 10 + 0.9 * n + dice.normal(0, 1)) for n in range(count)]
            for start in starts
        ]
        slope = theil_sen(stretches)
        day, true = stretches[-1][0][0] + 3.0 * count, 10 + 0.9 * count
        more = [*stretches[:-1], [*stretches[-1], (day, true + dice.normal(0, 1))]]
        promised.append(narrowed_by(stretches, slope, 3.0, []))
        kept.append(theil_sen(more).width / slope.width)
    assert np.mean(promised) == pytest.approx(np.mean(kept), abs=0.05)


def test_a_wild_reading_hardly_moves_the_slope():
    days, values = list(range(0, 70, 7)), [10 + day / 7 for day in range(0, 70, 7)]
    wild = [*values[:4], 90, *values[5:]]
    assert outputs(days, wild)["slope_week"] == pytest.approx(outputs(days, values)["slope_week"])


# Water changes


def test_a_water_change_makes_no_slope():
    days = [0, 1, 2, 3, 4, 5, 6, 7]
    flat = [40, 40, 40, 40, 20, 20, 20, 20]
    found = outputs(days, flat, [(3, 50)])
    assert (found["slope_week"], found["verdict"], found["pairs"]) == (0, "steady", 12)
    assert outputs(days, flat)["slope_week"] < 0  # the same readings, taken as one stretch


def test_a_reading_on_the_day_of_a_change_is_before_it():
    answer = ask([0, 3, 6, 7, 8], [10, 13, 16, 17, 8], [(7, 50)])
    assert answer["outputs"]["pairs"] == 6  # four before, one alone after
    assert "day 7" in texts(answer)


def test_a_change_of_nothing_is_no_change():
    assert outputs([0, 1, 2, 3], [1, 2, 3, 4], [(1, 0)])["pairs"] == 6


def test_readings_in_any_order_give_the_same_answer():
    days, values = [0, 4, 7, 8, 11, 14], [10, 12, 15, 12, 14, 16]
    assert outputs(days, values, [(7, 25)]) == outputs(days[::-1], values[::-1], [(7, 25)])


def test_after_a_change_the_next_reading_alone_narrows_nothing():
    assert outputs([0, 1, 2, 3, 4], [1, 2, 3.1, 4, 5], [(4, 30)])["next_reading_ratio"] == 1


# The verdict


@pytest.mark.parametrize(
    ("values", "step", "verdict"),
    [
        ([10, 12, 14, 16, 18, 20], 2, "building"),
        ([20, 18, 16, 14, 12, 10], 2, "falling"),
        ([10, 12, 14, 16, 18, 20], 25, "steady"),  # real, but less than this kit can tell
        ([20, 20, 25, 20, 20, 20], 5, "steady"),
        ([20.1, 19.8, 20.3, 20.0, 19.9, 20.2], 0, "steady"),  # a meter: scatter without trend
        ([5, 5, 5], 5, "too-few-readings"),  # ties do not make three readings many
        ([5, 9, 12], 0, "too-few-readings"),
    ],
)
def test_verdict_takes_the_kits_step_into_account(values, step, verdict):
    days = [7 * number for number in range(len(values))]
    assert outputs(days, values, kit_step=step)["verdict"] == verdict


@pytest.mark.parametrize("count", [0, 1, 2, 3])
def test_too_few_readings_say_how_many_more(count):
    answer = ask(range(count), [10.0 + day for day in range(count)])
    assert answer["outputs"]["verdict"] == "too-few-readings"
    assert answer["outputs"]["slope_low_week"] is None
    more = "one reading" if count == 3 else f"{4 - count} readings"
    assert f"Take {more} more" in texts(answer)


def test_limits_cover_the_true_slope_about_as_often_as_they_claim():
    dice = np.random.default_rng(11)
    hits = 0
    for _ in range(400):
        stretches = [
            [(float(d), 0.5 * d + dice.normal(0, 2)) for d in range(start, start + 5)]
            for start in (0, 10, 20)
        ]
        slope = theil_sen(stretches)
        hits += slope.low <= 0.5 <= slope.high
    assert 0.92 <= hits / 400 <= 0.99


# What follows


def test_days_to_a_limit_and_to_zero_by_hand():
    rising = outputs([0, 1, 2, 3, 4], [10, 12, 14, 16, 18], limit_mg_l=40)
    assert (rising["days_to_limit"], rising["days_to_zero"]) == (11, None)
    falling = outputs([0, 1, 2, 3, 4], [18, 16, 14, 12, 10], limit_mg_l=40)
    assert (falling["days_to_limit"], falling["days_to_zero"]) == (None, 5)
    assert outputs([0, 1, 2, 3, 4], [50, 52, 54, 56, 58], limit_mg_l=40)["days_to_limit"] is None


def test_the_holding_change_holds_when_it_is_simulated():
    level, tap, rise = 20.0, 5.0, 3.0
    share = holding_change_percent(level, tap, rise) / 100
    for _ in range(50):
        level = (1 - share) * level + share * tap + rise
    assert level == pytest.approx(20.0)
    assert holding_change_percent(6.0, 5.0, 3.0) is None


def test_the_settled_level_is_where_simulated_changes_end():
    settled = settles_at(0.5, 5.0, [Change(0, 25), Change(7, 25), Change(14, 25)])
    level = 60.0
    for _ in range(200):
        level = 0.75 * level + 0.25 * 5 + 7 * 0.5
    assert settled == pytest.approx(level)


# Bad input


def test_every_row_with_a_day_that_is_taken_is_named():
    with pytest.raises(BadInput) as bad:
        ask([0, 7, 0, 7], [5, 8, 10, 3])
    keys = [key for key, _ in bad.value.problems]
    assert keys == ["readings[3].day", "readings[4].day"]
    assert "reading 1 has this day already" in bad.value.problems[0][1]


@pytest.mark.parametrize("row", [{"day": 1}, {"day": "1", "value": 2}, {"day": -1, "value": 2}, 5])
def test_a_bad_row_is_refused_by_name(row):
    with pytest.raises(BadInput, match=r"readings\[2\]"):
        run("trend", {"readings": [{"day": 0, "value": 1}, row]})


DAY = st.floats(0, 365, allow_nan=False)


@given(
    st.lists(
        st.tuples(DAY, st.floats(0, 500)), max_size=14, unique_by=lambda pair: round(pair[0], 2)
    ),
    st.lists(st.tuples(DAY, st.floats(0, 100)), max_size=5),
    st.floats(0, 20),
)
def test_any_readings_give_finite_figures_in_order(readings, changes, step):
    found = outputs([d for d, _ in readings], [v for _, v in readings], changes, kit_step=step)
    assert all(math.isfinite(v) for v in found.values() if isinstance(v, float))
    if found["slope_low_week"] is not None:
        assert found["slope_low_week"] <= found["slope_week"] <= found["slope_high_week"]


@pytest.mark.parametrize(
    ("values", "said"),
    [
        ((20, 17, 15, 11), "Falling: by about 7 mg/L a week between water changes, 4.7 to 9.3"),
        ((11, 15, 17, 20), "Building up: by about 7 mg/L a week between water changes, 4.7 to 9.3"),
        ((10, 10, 10, 10), "Steady"),
        ((10, 12), "Too few readings"),
        ((), "Too few readings"),
    ],
)
def test_the_verdict_stands_first_in_plain_words(values, said):
    """Slopes of 20, 17, 15, 11 three days apart: median −1 a day; Theil by hand."""
    readings = [{"day": 3 * place, "value": value} for place, value in enumerate(values)]
    found = compute("trend", {"readings": readings, "changes": []})
    assert found.notes[0].first
    assert found.notes[0].text.startswith(said)
