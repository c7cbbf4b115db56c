"""The mathematics under the count of a photo, against numpy and by hand."""

import random

import numpy as np
import pytest
from scipy import special

from calculators.surface_cover.channels import bits, picture, pixels_of
from calculators.surface_cover.discs import Disc, common, drawn, joined, span, without
from calculators.surface_cover.homography import square_to
from calculators.surface_cover.leaf_colour import colour_of_leaf
from calculators.surface_cover.otsu import otsu
from calculators.surface_cover.water_outline import NoOutline, area, around, outline, spans
from scripts.pages.calculators.eye_guide import COVERS, HIGH, WIDE, leaves
from tests.surface_pictures import map_between

SQUARE = [(0, 0), (1, 0), (1, 1), (0, 1)]
QUADS = [
    [(30, 10), (80, 14), (97, 90), (4, 86)],
    [(45, 4), (93, 38), (60, 96), (6, 52)],
    [(0, 0), (100, 0), (100, 50), (0, 50)],
    [(10, 10), (60, 20), (70, 90), (5, 60)],
]  # fmt: skip


@pytest.mark.parametrize("quad", QUADS)
def test_the_map_is_the_one_that_solving_the_equations_gives(quad):
    solved = map_between(SQUARE, quad)
    ours = np.array(square_to(quad))
    assert ours / ours[2, 2] == pytest.approx(solved, abs=1e-9)
    back = np.array(square_to(quad).inverse())
    assert back / back[2, 2] == pytest.approx(
        np.linalg.inv(solved) / np.linalg.inv(solved)[2, 2], abs=1e-9
    )
    assert square_to(quad).determinant() == pytest.approx(np.linalg.det(np.array(square_to(quad))))


@pytest.mark.parametrize("quad", QUADS)
def test_the_stretch_is_the_change_of_a_small_area(quad):
    to_square = square_to(quad).inverse()
    for x, y in ((30, 30), (50, 45)):
        step = 1e-4
        around_it = [(x, y), (x + step, y), (x + step, y + step), (x, y + step)]
        small = abs(area([to_square.at(*point) for point in around_it])) / step**2
        assert to_square.stretch(x, y) == pytest.approx(small, rel=1e-3)


@pytest.mark.parametrize("quad", QUADS)
def test_the_stretch_over_the_whole_surface_adds_up_to_all_of_it(quad):
    edge = outline(quad)
    total = 0.0
    for row in range(400):
        for piece in spans(edge.points, (row + 0.5) / 4):
            first, last = pixels_of((piece[0] * 4, piece[1] * 4), 400)
            total += sum(
                edge.to_square.stretch((x + 0.5) / 4, (row + 0.5) / 4) / 16
                for x in range(first, last)
            )
    assert total == pytest.approx(1, abs=0.01)


def between_class(histogram, place):
    """Otsu's criterion by its definition: w0 w1 (m1 - m0)^2, of the shares and means of two classes."""
    bins = np.arange(len(histogram))
    low, high = histogram[: place + 1], histogram[place + 1 :]
    if not low.sum() or not high.sum():
        return -1.0
    means = (
        (low * bins[: place + 1]).sum() / low.sum(),
        (high * bins[place + 1 :]).sum() / high.sum(),
    )
    return low.sum() * high.sum() / histogram.sum() ** 2 * (means[1] - means[0]) ** 2


@pytest.mark.parametrize("seed", range(12))
def test_otsu_finds_the_best_of_all_thresholds(seed):
    dice = np.random.default_rng(seed)
    heaps = [
        dice.normal(dice.uniform(20, 230), dice.uniform(2, 30), dice.integers(50, 4000))
        for _ in "ab"
    ]
    values = np.clip(np.concatenate(heaps), 0, 255).round().astype(int)
    histogram = np.bincount(values, minlength=256)
    scores = [between_class(histogram, place) for place in range(255)]
    split = otsu(histogram.tolist())
    assert scores[split.last_low] == pytest.approx(max(scores), rel=1e-9)
    assert split.separability == pytest.approx(max(scores) / values.var(), rel=1e-9)
    assert split.mean_low == pytest.approx(values[values <= split.last_low].mean())
    assert split.mean_high == pytest.approx(values[values > split.last_low].mean())


def test_one_bell_shaped_heap_has_the_separability_that_theory_gives():
    """Halving a normal distribution at its mean leaves 2/pi of its variance between the halves."""
    quantiles = special.ndtri((np.arange(200_000) + 0.5) / 200_000)
    histogram = np.bincount(
        np.clip(128 + 20 * quantiles, 0, 255).round().astype(int), minlength=256
    )
    assert otsu(histogram.tolist()).separability == pytest.approx(2 / np.pi, abs=0.003)


@pytest.mark.parametrize("histogram", [[0, 0, 7, 0], [5], [0, 0]])
def test_one_value_has_no_two_classes(histogram):
    assert otsu(histogram) is None


def test_excess_green_is_the_published_index_but_for_the_constant_in_its_divisor():
    red, green, blue = 60, 120, 40
    total = red + green + blue
    index = (2 * green - red - blue) / total  # Woebbecke and others 1995
    assert colour_of_leaf((red, green, blue)).green == pytest.approx(index * total / (total + 160))
    assert colour_of_leaf((red, green, blue)).excess == index * total


def test_points_in_any_order_make_one_outline_that_never_crosses_itself():
    points = [(0, 0), (10, 1), (11, 9), (-1, 8)]
    for seed in range(10):
        mixed = random.Random(seed).sample(points, 4)
        assert around(mixed) == points
    assert area(points) > 0


@pytest.mark.parametrize(
    "points", [[(0, 0), (9, 0), (3, 1), (0, 9)], [(0, 0), (5, 5), (9, 9), (2, 2)]]
)
def test_no_rectangle_is_refused(points):
    with pytest.raises(NoOutline):
        outline(points)


@pytest.mark.parametrize("quad", QUADS)
def test_a_disc_of_the_surface_is_cut_by_a_row_where_its_drawn_edge_says(quad):
    to_square = square_to(quad).inverse()
    disc = Disc(40, 17, 9, 80, 35)
    edge = drawn(disc, square_to(quad))
    top, bottom = min(y for _, y in edge), max(y for _, y in edge)
    for share in (0.2, 0.5, 0.8):
        y = top + share * (bottom - top)
        [(left, right)] = span(disc, to_square, y)
        for x in (left, right):
            u, v = to_square.at(x, y)
            assert np.hypot(80 * u - 40, 35 * v - 17) == pytest.approx(9)
        [(near, far)] = spans(edge, y)  # 48 straight pieces instead of the curve
        assert (near, far) == pytest.approx((left, right), abs=0.15 * (bottom - top) / 10)
    assert span(disc, to_square, bottom + 1) == []


def test_pieces_of_a_row_are_joined_cut_and_taken_away():
    assert joined([(5, 6), (0, 2), (1, 3)]) == [(0, 3), (5, 6)]
    assert common([(0, 4), (6, 9)], [(3, 7)]) == [(3, 4), (6, 7)]
    assert without([(0, 10)], [(2, 3), (9, 12)]) == [(0, 2), (3, 9)]
    assert pixels_of((0.4, 2.6), 10) == (0, 3)
    assert pixels_of((0.6, 2.4), 10) == (1, 2)
    assert pixels_of((-5, 99), 10) == (0, 10)


def test_octets_become_colours_row_by_row_and_marks_become_bits():
    shown = picture(2, 1, bytes((0, 100, 255, 3, 4, 7)))
    assert shown.colours == [(2, 102, 254), (2, 6, 6)]
    assert bits(bytes((1, 0, 0, 0, 0, 0, 0, 1, 1))) == "gYA="  # 10000001 1(0000000)


@pytest.mark.parametrize("cover", COVERS)
def test_the_guide_for_the_eye_shows_the_cover_that_it_says(cover):
    x, y = np.meshgrid(np.arange(0.1, WIDE, 0.2), np.arange(0.1, HIGH, 0.2))
    covered = np.zeros(x.shape, bool)
    for middle, down, radius in leaves(cover):
        covered |= (x - middle) ** 2 + (y - down) ** 2 < radius**2
    assert 100 * covered.mean() == pytest.approx(cover, abs=1)
